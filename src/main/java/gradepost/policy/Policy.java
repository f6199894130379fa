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
 * @param degraded what it says of trains whose brake is not whole; empty where it says nothing, and
 *     in the policy of one run
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
    Practice practice,
    Optional<DegradedRules> degraded) {

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
        Practice.USUAL,
        Optional.empty());
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
        other,
        degraded);
  }

  /** The rules for a train whose brake is whole. */
  public Policy ordinary() {
    return with(stopping, restriction, run, purposes);
  }

  /** The rules for a train that is braked in another way. */
  public Policy with(DegradedRules.AutomaticTechnique other) {
    Map<String, String> otherPurposes = new LinkedHashMap<>(purposes);
    otherPurposes.put("stopping", other.purposeOfStopping());
    otherPurposes.put("restriction", other.purposeOfRestriction());
    return with(
        other.stopping(), other.restriction(), run.checkedWith(other.check()), otherPurposes);
  }

  /** For one run, which needs no clause. */
  private Policy with(
      Technique otherStopping,
      Technique otherRestriction,
      RunRules otherRun,
      Map<String, String> otherPurposes) {
    return new Policy(
        name,
        adhesion,
        noticing,
        safeSide,
        margins,
        otherStopping,
        otherRestriction,
        terminal,
        otherRun,
        scatter,
        otherPurposes,
        signOff,
        cant,
        practice,
        Optional.empty());
  }

  /** The state of the rail that the plan is made for. */
  public AdhesionCase plannedAdhesion() {
    return adhesion.get(0);
  }
}
