package gradepost.policy;

import gradepost.route.audit.CantLimits;
import gradepost.units.Span;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The operator's own rules, as values.
 *
 * @param adhesion the cases, the planned one first
 * @param noticing from asking a brake that gives nothing to asking the next one
 * @param terminal ceilings on a terminal platform road; empty where the operator sets none
 * @param scatter what braking is drawn from to show its spread; empty where no spread is wanted
 * @param purposes what each value is for, by its key, in words for the reading notes
 * @param signOff empty where the operator gives no rules for sign-off papers
 * @param cant what is allowed of cant on the routes
 * @param practice how a driver is taken to use power and brake where no rule says it
 */
public record Policy(
    String name,
    List<AdhesionCase> adhesion,
    Span noticing,
    SafeSide safeSide,
    Margins margins,
    Technique stopping,
    Technique restriction,
    List<TerminalStep> terminal,
    RunRules run,
    Optional<Scatter> scatter,
    Map<String, String> purposes,
    Optional<SignOffRules> signOff,
    CantLimits cant,
    Practice practice) {

  /** A policy without rules for sign-off papers, with the usual practice and limits of cant. */
  public Policy(
      String name,
      List<AdhesionCase> adhesion,
      Span noticing,
      SafeSide safeSide,
      Margins margins,
      Technique stopping,
      Technique restriction,
      List<TerminalStep> terminal,
      RunRules run,
      Optional<Scatter> scatter,
      Map<String, String> purposes) {
    this(
        name,
        adhesion,
        noticing,
        safeSide,
        margins,
        stopping,
        restriction,
        terminal,
        run,
        scatter,
        purposes,
        Optional.empty(),
        CantLimits.USUAL,
        Practice.USUAL);
  }

  public Policy {
    adhesion = List.copyOf(adhesion);
    terminal = List.copyOf(terminal);
    purposes = Collections.unmodifiableMap(new LinkedHashMap<>(purposes));
    if (adhesion.isEmpty()) {
      throw new IllegalArgumentException("a policy has an adhesion case at least");
    }
  }

  /** The same with another practice. */
  public Policy with(Practice other) {
    return new Policy(
        name,
        adhesion,
        noticing,
        safeSide,
        margins,
        stopping,
        restriction,
        terminal,
        run,
        scatter,
        purposes,
        signOff,
        cant,
        other);
  }

  /** The state of the rail that the plan is made for. */
  public AdhesionCase plannedAdhesion() {
    return adhesion.get(0);
  }
}
