package gradepost.source.pack;

import gradepost.route.Accepted;
import gradepost.route.Route;
import gradepost.route.audit.AuditFinding;
import gradepost.route.audit.AuditText;
import gradepost.route.audit.CantLimits;
import gradepost.route.audit.RouteAudit;
import gradepost.yaml.Problem;
import gradepost.yaml.Problems;
import gradepost.yaml.Reader;
import gradepost.yaml.Severity;
import gradepost.yaml.SourcePosition;
import gradepost.yaml.UnitsUsed;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
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
    return new Problem(
        spot,
        finding.rule().isNote() ? Severity.NOTE : Severity.WARNING,
        finding.what(),
        finding.bound(),
        finding.maybe(),
        finding.rule().code());
  }

  private static Problem problem(UnitsUsed.Mixed mixed) {
    AuditText text = AuditText.UNITS_MIXED;
    Map<String, String> values =
        Map.of(
            "key", mixed.key(), "odd", mixed.odd(), "usual", mixed.usual(), "place", mixed.place());
    return new Problem(
        mixed.spot(),
        Severity.WARNING,
        text.what(values),
        text.bound(values),
        text.maybe(values),
        text.rule().code());
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
    AuditText text = AuditText.ACCEPTED_UNFOUND;
    Map<String, String> values = Map.of("rule", accepted.rule());
    return new Problem(
        spot,
        Severity.WARNING,
        text.what(values),
        text.bound(values),
        words.size() == 1 ? words.get(0) : "",
        text.rule().code());
  }

  private Audit() {}
}
