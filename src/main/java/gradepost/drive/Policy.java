package gradepost.drive;

import gradepost.units.Length;
import gradepost.units.Span;
import gradepost.units.Speed;
import java.util.List;
import java.util.Map;

/**
 * The operator's own rules, as values.
 *
 * @param adhesion the cases, the planned one first
 * @param noticing from asking a brake that gives nothing to asking the next one
 * @param terminal ceilings on a terminal platform road; empty where the operator sets none
 * @param purposes what each value is for, by its key, in words for the reading notes
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
    Map<String, String> purposes) {
  public Policy {
    adhesion = List.copyOf(adhesion);
    terminal = List.copyOf(terminal);
    purposes = Map.copyOf(purposes);
    if (adhesion.isEmpty()) {
      throw new IllegalArgumentException("a policy has an adhesion case at least");
    }
  }

  public AdhesionCase plannedAdhesion() {
    return adhesion.get(0);
  }

  /** The same rules without what only spares energy and handle movements. */
  Policy fastest() {
    Speed unit = Speed.ofKmh(1);
    RunRules fast =
        new RunRules(
            unit,
            Speed.ofKmh(3),
            new Span(0),
            new Span(0),
            unit,
            Speed.ofKmh(3),
            run.checkPressure(),
            run.timeAllowance(),
            new Length(0));
    return new Policy(
        name,
        adhesion,
        noticing,
        safeSide,
        margins,
        stopping,
        restriction,
        terminal,
        fast,
        purposes);
  }
}
