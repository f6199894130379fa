package gradepost.source.pack;

import gradepost.route.Accepted;
import gradepost.route.Route;
import gradepost.route.audit.AuditFinding;
import gradepost.route.audit.AuditRule;
import gradepost.route.audit.CantLimits;
import gradepost.route.audit.RouteAudit;
import gradepost.yaml.Problem;
import gradepost.yaml.Problems;
import gradepost.yaml.Reader;
import gradepost.yaml.Severity;
import gradepost.yaml.SourcePosition;
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
    found.addAll(in.unitsUsed().mixed(in.file(), AuditRule.UNITS_MIXED.code()));
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
    return new Problem(
        spot,
        Severity.WARNING,
        "%s is accepted here, and nothing is found of which these are the words"
            .formatted(accepted.rule()),
        "a finding that stands, word for word",
        words.size() == 1 ? words.get(0) : "",
        AuditRule.ACCEPTED_UNFOUND.code());
  }

  private Audit() {}
}
