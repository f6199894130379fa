package gradepost.drive.grid;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.Mill;
import gradepost.drive.brake.BrakeCurve;
import gradepost.drive.brake.Braking;
import gradepost.drive.brake.TrainModels;
import gradepost.route.place.Direction;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.Stops;
import gradepost.task.Target;
import gradepost.task.Targets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Property: on a step of the grid the square of the speed is linear in the distance. */
class LegStepsTest {
  private final Assignment mill = Mill.assignment(Direction.FORWARD, "4-car");

  @Test
  void aTrainThatCoastsToItsBrakingPointLosesSpeedEvenlyInTime() {
    LegGrid grid = grid();
    LegSteps steps = new LegSteps(mill, grid);
    List<Double> apart = new ArrayList<>();
    for (int k = 0; k + 1 < grid.places(); k++) {
      for (double v = 8; v < grid.mostMps[k]; v += 0.3) {
        double length = grid.lengthM(k);
        double then = grid.after(k, v, length, -1, 0);
        List<LegSteps.Move> moves = steps.brakings(k, v, 0);
        if (moves.size() != 1 || Double.isNaN(then)) {
          continue;
        }
        LegSteps.Move move = moves.get(0);
        BrakeCurve brake = curve(grid, move);
        double before = brake.placeM(v) - grid.placeM[k];
        double share = before / (before - brake.placeM(then) + grid.placeM[k + 1]);
        double speed = Math.sqrt(v * v + share * (then * then - v * v));
        double spareM = Math.max(0, brake.placeM(speed) - grid.placeM[k] - share * length);
        if (before > 0 && move.mps() == brake.endMps(speed)) {
          double coastedS = 2 * share * length / (v + speed);
          assertThat(move.seconds())
              .isCloseTo(coastedS + brake.seconds(speed) + spareM / speed, within(1e-9));
          apart.add(Math.abs(speed - v - share * (then - v)));
        }
      }
    }
    // By a straight line over the distance the speed would be another one.
    assertThat(apart).hasSizeGreaterThan(10).anyMatch(mps -> mps > 1e-3);
  }

  private static BrakeCurve curve(LegGrid grid, LegSteps.Move move) {
    return grid.curves.stream()
        .filter(LegGrid.Curve::must)
        .filter(c -> c.place() == move.place())
        .findFirst()
        .orElseThrow()
        .brake();
  }

  private LegGrid grid() {
    TrainModels models = new TrainModels(mill);
    Ceiling ceiling = Ceiling.of(mill);
    double startM = Stops.markM(mill, mill.calls().get(0));
    List<Target> all = Targets.of(mill, ceiling);
    int stop = 0;
    while (!all.get(stop).isStop()) {
      stop++;
    }
    DriverRules rules =
        new DriverRules(mill, models, ceiling, startM, DrivingStrategy.of(mill.policy().run()));
    return new LegGrid(
        mill, models, rules, all.subList(0, stop + 1), startM, t -> Braking.of(mill, models, t));
  }
}
