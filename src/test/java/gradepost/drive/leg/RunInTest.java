package gradepost.drive.leg;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.drive.Mill;
import gradepost.drive.brake.Braking;
import gradepost.drive.brake.PointLimits;
import gradepost.drive.brake.RunStates;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.grid.ControlProfile;
import gradepost.drive.grid.DriverRules;
import gradepost.drive.grid.DrivingStrategy;
import gradepost.motion.Stepper;
import gradepost.route.place.Direction;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.Target;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Property: a braking tried for a stop is no good where it is too fast at a speed on the way. */
class RunInTest {
  private static final double STOP_M = 1000;
  private static final double FROM_M = 450;
  private static final double MPS = 15;

  private final Assignment mill = Mill.assignment(Direction.FORWARD, "4-car");
  private final TrainModels bench = new TrainModels(mill);
  private final Stepper stepper = bench.plannedStepper();

  @Test
  void aLowerSpeedOnTheWayCounts() {
    assertThat(margin(List.of())).isPositive();
    assertThat(margin(List.of(board(FROM_M + 5, MPS + 1)))).isPositive();
    assertThat(margin(List.of(board(FROM_M + 5, MPS - 2)))).isNegative();
  }

  /** How far short of the stop a braking from there ends, with these boards on the way. */
  private double margin(List<Target> before) {
    Stepper start = bench.plannedStepper();
    start.place(0, FROM_M, MPS);
    RunStates line = new RunStates();
    line.add(start.save());
    DriverRules rules =
        new DriverRules(
            mill,
            bench,
            Ceiling.of(mill),
            FROM_M,
            new DrivingStrategy(mill.policy().run(), 0, ControlProfile.NONE, PointLimits.NONE));
    Target stop = new Target.Signal("S 1", STOP_M);
    return new CoastThenBrake(mill, bench, rules, stepper)
        .margin(line, FROM_M, STOP_M, before, Braking.of(mill, bench, stop));
  }

  private static Target board(double atM, double mps) {
    return new Target.Reduction(
        "board",
        Target.Reduction.Kind.PERMANENT,
        "board",
        atM,
        mps,
        MPS,
        Optional.empty(),
        Optional.empty());
  }
}
