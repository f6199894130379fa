package gradepost.drive;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.drive.brake.RunStates;
import gradepost.drive.leg.ApproachSolution;
import gradepost.plan.Finding;
import gradepost.plan.Trace;
import gradepost.route.Path;
import gradepost.route.Signal;
import gradepost.route.place.Direction;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.Target;
import gradepost.units.Speed;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Signs and rules of the road, through ceiling, plan and findings. */
class RulesOfTheRoadTest {
  private static final double CURVE_MPS = Speed.ofMph(25).metresPerSecond();

  /**
   * British practice, read in secondary sources: a restriction is obeyed by the front at its board
   * and until the rear has cleared its end.
   */
  @Test
  void aRestrictionBeginsForTheFrontAndEndsForTheRear() {
    for (String formation : new String[] {"4-car", "8-car"}) {
      Assignment assignment = Mill.assignment(Direction.FORWARD, formation);
      Path path = assignment.path();
      double from = path.metresAt(Mill.at(1, 65));
      double to = path.metresAt(Mill.at(2, 12)) + assignment.formation().lengthM();
      Ceiling ceiling = Ceiling.of(assignment);
      assertThat(ceiling.speedAt(from - 0.1)).isGreaterThan(CURVE_MPS);
      assertThat(ceiling.speedAt(from + 0.1)).isEqualTo(CURVE_MPS);
      assertThat(ceiling.speedAt(to - 0.1)).isEqualTo(CURVE_MPS);
      assertThat(ceiling.speedAt(to + 0.1)).isGreaterThan(CURVE_MPS);
    }
  }

  /** Property: no part of the train is on a restriction faster than it allows. */
  @Test
  void noPartOfTheTrainIsTooFastOnARestriction() {
    for (Direction direction : Direction.values()) {
      Assignment assignment = Mill.assignment(direction, "8-car");
      Path path = assignment.path();
      double a = path.metresAt(Mill.at(1, 65));
      double b = path.metresAt(Mill.at(2, 12));
      double length = assignment.formation().lengthM();
      List<Trace.Point> on =
          Planner.plan(assignment).trace().points().stream()
              .filter(p -> p.atM() > Math.min(a, b) && p.atM() - length < Math.max(a, b))
              .toList();
      assertThat(on).hasSizeGreaterThan(10);
      assertThat(on).allMatch(p -> p.speedMps() <= CURVE_MPS + 0.01);
    }
  }

  /**
   * US (FRA Safety Advisory 2015-03) and British triggers, read: a drop of more than 20 mph, or by
   * a third or more, is flagged.
   */
  @ParameterizedTest
  @CsvSource({
    "60, 40, true",
    "60, 41, false",
    "80, 60, false",
    "80, 59, true",
    "30, 20, true",
    "30, 21, false"
  })
  void aBigDropIsFlagged(double fromMph, double toMph, boolean flagged) {
    Target drop =
        new Target.Reduction(
            "drop",
            Target.Reduction.Kind.PERMANENT,
            "drop",
            3000,
            Speed.ofMph(toMph).metresPerSecond(),
            Speed.ofMph(fromMph).metresPerSecond(),
            Optional.empty(),
            Optional.empty());
    ApproachSolution piece =
        new ApproachSolution(
            drop,
            0,
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            0,
            Optional.empty(),
            new RunStates(),
            List.of(),
            3000,
            true);
    Assignment mill = Mill.assignment(Direction.FORWARD, "4-car");
    List<Finding> findings = Findings.of(mill, piece, List.of());
    assertThat(findings.stream().anyMatch(Finding.BigDrop.class::isInstance)).isEqualTo(flagged);
  }

  /** Common practice: an AWS magnet lies about 180 m (200 yd) before its signal. */
  @Test
  void theMagnetsOfTheDemoRoutesLieWhereTheyUsuallyDo() {
    int magnets = 0;
    for (Assignment assignment : DemoPlans.tried()) {
      for (Signal signal : assignment.route().signals()) {
        if (signal.aws().isPresent() && signal.direction() == assignment.direction()) {
          Path path = assignment.path();
          double before = path.metresAt(signal.location()) - path.metresAt(signal.aws().get());
          assertThat(before).as(signal.id()).isBetween(170.0, 200.0);
          magnets++;
        }
      }
    }
    assertThat(magnets).isPositive();
  }
}
