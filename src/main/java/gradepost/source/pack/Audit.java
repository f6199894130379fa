package gradepost.source.pack;

import gradepost.route.Accepted;
import gradepost.route.Route;
import gradepost.route.audit.AuditFinding;
import gradepost.route.audit.AuditRule;
import gradepost.route.audit.AuditText;
import gradepost.route.audit.CantLimits;
import gradepost.route.audit.RouteAudit;
import gradepost.text.Mistake;
import gradepost.yaml.Problem;
import gradepost.yaml.Problems;
import gradepost.yaml.Reader;
import gradepost.yaml.Severity;
import gradepost.yaml.SourcePosition;
import gradepost.yaml.UnitsUsed;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** Puts findings at their places in the files, and leaves out those that somebody accepts. */
public final class Audit {

  /**
   * What is found in a route by itself.
   *
   * @param in the reader of the route, which knows the place of every key
   */
  public static Problems of(Route route, CantLimits limits, Reader in) {
    List<Problem> found = new ArrayList<>();
    for (AuditFinding finding : RouteAudit.of(route, limits)) {
      found.add(problem(finding, in.spot(finding.element(), finding.key())));
    }
    in.unitsUsed().mixed(in.file()).forEach(mixed -> found.add(problem(mixed)));
    return new Problems(open(found, route.accepted(), in::spot));
  }

  static Problem problem(AuditFinding finding, SourcePosition spot) {
    return problem(finding.mistake(), spot);
  }

  private static Problem problem(Mistake finding, SourcePosition spot) {
    AuditRule rule = AuditRule.of(finding);
    return new Problem(
        spot, rule.isNote() ? Severity.NOTE : Severity.WARNING, finding, rule.code());
  }

  private static Problem problem(UnitsUsed.Mixed mixed) {
    SourcePosition usual = mixed.usualSpot();
    return problem(
        AuditText.UNITS_MIXED.with(
            mixed.key(), mixed.odd(), mixed.usual(), usual.line(), usual.column()),
        mixed.spot());
  }

  /** What nobody accepts, and a warning for every acceptance of what is not found. */
  static List<Problem> open(
      List<Problem> found, List<Accepted> accepted, Function<Accepted, SourcePosition> spot) {
    IdentityHashMap<Accepted, Boolean> met = new IdentityHashMap<>();
    List<Problem> open = new ArrayList<>();
    for (Problem problem : found) {
      Optional<Accepted> by = accepted.stream().filter(a -> accepts(a, problem)).findFirst();
      by.ifPresentOrElse(a -> met.put(a, true), () -> open.add(problem));
    }
    for (Accepted each : accepted) {
      if (!met.containsKey(each)) {
        open.add(unfound(each, open, spot.apply(each)));
      }
    }
    return open;
  }

  private static boolean accepts(Accepted accepted, Problem problem) {
    return accepted.rule().equals(problem.rule()) && accepted.finding().equals(problem.what());
  }

  private static Problem unfound(Accepted accepted, List<Problem> open, SourcePosition spot) {
    List<String> words =
        open.stream().filter(p -> p.rule().equals(accepted.rule())).map(Problem::what).toList();
    Optional<String> meant = words.size() == 1 ? Optional.of(words.get(0)) : Optional.empty();
    return problem(AuditText.ACCEPTED_UNFOUND.with(accepted.rule(), meant), spot);
  }

  private Audit() {}
}
