package gradepost.drive;

import gradepost.drive.leg.ApproachSolution;
import gradepost.plan.Application;
import gradepost.plan.BrakeTest;
import gradepost.plan.CaseResult;
import gradepost.plan.Finding;
import gradepost.plan.Spread;
import gradepost.policy.WarningPractice;
import gradepost.route.BigDrop;
import gradepost.task.Assignment;
import gradepost.task.Stops;
import gradepost.task.Target;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** What the driver or the clerk must know about one approach. */
final class Findings {
  static List<Finding> of(
      Assignment assignment, ApproachSolution piece, List<Application> applications) {
    List<Finding> findings = new ArrayList<>();
    findings.addAll(
        piece
            .target()
            .match(
                stop -> stop(assignment, stop),
                lower -> reduction(assignment, lower, piece.brakingM()),
                step -> List.of(),
                signal -> List.of()));
    applications.stream()
        .findFirst()
        .flatMap(Application::atBuffersMps)
        .ifPresent(speed -> findings.add(new Finding.AtBuffers(speed)));
    Set<String> without = new HashSet<>();
    applications.stream()
        .flatMap(a -> a.cases().stream())
        .filter(c -> c.plannedM().isEmpty() && without.add(c.adhesion().name()))
        .map(c -> new Finding.NoBrakingPoint(c.adhesion().name(), c.service()))
        .forEach(findings::add);
    return findings;
  }

  /**
   * Whether too many are late at a board; at a stop half of them run past the mark a little. And
   * whether the brake does not hold in some.
   */
  static List<Finding> oftenLate(WarningPractice practice, Target target, Spread spread) {
    List<Finding> findings = new ArrayList<>();
    if (!target.standsThere() && spread.pastShare() > practice.late()) {
      findings.add(new Finding.OftenLate(spread.pastShare(), spread.shortM10().map(m -> -m)));
    }
    if (spread.notHeldShare() > 0) {
      findings.add(new Finding.SometimesNotHeld(spread.notHeldShare()));
    }
    return findings;
  }

  /**
   * For the running brake tests between two places for which the run has no room.
   *
   * @param fromM the target before, distance run
   * @param toM the target
   * @param withinMps how far from its speed a test may be made
   */
  static List<Finding> brakeTests(
      List<BrakeTest> tests, double fromM, double toM, double withinMps) {
    List<Finding> findings = new ArrayList<>();
    for (BrakeTest test : tests) {
      if (test.atM() > fromM && test.atM() <= toM) {
        test.noRoom()
            .ifPresent(
                why -> {
                  double mps = test.place().speed().metresPerSecond();
                  double bound =
                      mps + (why.reason() == BrakeTest.NoRoom.Reason.FAST ? withinMps : -withinMps);
                  findings.add(new Finding.NoRoomForTest(test.atM(), bound, why));
                  findings.add(new Finding.TestInstead(why.instead()));
                });
      }
    }
    return findings;
  }

  /**
   * For the tests that the run makes: a rail on which the brake has to go on before they are over.
   */
  static List<Finding> testsOnOtherRails(
      List<BrakeTest> tests, double fromM, double toM, List<Application> applications) {
    List<Finding> findings = new ArrayList<>();
    for (BrakeTest test : tests) {
      if (test.made() && test.atM() > fromM && test.atM() <= toM) {
        for (Application application : applications) {
          for (CaseResult rail : application.cases()) {
            rail.plannedM()
                .filter(at -> at < test.endM() && application.brakingPointM() > test.atM())
                .ifPresent(
                    at ->
                        findings.add(
                            new Finding.TestOnRail(rail.adhesion().name(), test.atM(), at)));
          }
        }
      }
    }
    return findings;
  }

  private static List<Finding> reduction(
      Assignment assignment, Target.Reduction reduction, Optional<Double> plannedM) {
    List<Finding> findings = new ArrayList<>();
    if (isBig(reduction)) {
      findings.add(new Finding.BigDrop(reduction.fromMps(), reduction.speedMps()));
    }
    if (reduction.kind() == Target.Reduction.Kind.JUNCTION && signalled(assignment, reduction)) {
      return findings;
    }
    if (reduction.warningM().isEmpty()) {
      findings.add(new Finding.NoBoard());
    } else if (plannedM.isPresent() && reduction.warningM().get() > plannedM.get() + 0.01) {
      findings.add(new Finding.BoardTooLate(reduction.warningM().get(), plannedM.get()));
    }
    return findings;
  }

  /** Whether the speed drops by so much that it is flagged. */
  static boolean isBig(Target.Reduction reduction) {
    return BigDrop.is(reduction.fromMps(), reduction.speedMps());
  }

  /** Whether a junction signal on the way announces the route. */
  private static boolean signalled(Assignment assignment, Target.Reduction junction) {
    double withinM = assignment.policy().practice().warning().announcedWithin().metres();
    return assignment.route().signals().stream()
        .filter(s -> s.direction() == assignment.direction())
        .filter(s -> assignment.lines().contains(s.line()) && !s.routes().isEmpty())
        .mapToDouble(s -> junction.atM() - assignment.path().metresAt(s.location()))
        .anyMatch(before -> before >= 0 && before < withinM);
  }

  private static List<Finding> stop(Assignment assignment, Target.Stop stop) {
    List<Finding> findings = new ArrayList<>();
    double platform = stop.platformEndM() - stop.platformStartM();
    double train = assignment.formation().lengthM();
    if (platform < train - 0.01) {
      findings.add(
          new Finding.PlatformTooShort(platform, train, stop.call().platform().doorInstruction()));
    }
    if (Stops.mark(assignment, stop.call().platform()).isEmpty()) {
      findings.add(new Finding.NoStopMark(assignment.formation().cars()));
    }
    double margin = assignment.policy().margins().beforeBuffers().metres();
    stop.buffersM()
        .map(b -> b - stop.atM())
        .filter(d -> d < margin - 0.01)
        .ifPresent(d -> findings.add(new Finding.NearBuffers(d, margin)));
    return findings;
  }

  private Findings() {}
}
