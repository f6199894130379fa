package gradepost.drive.leg;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.Changed;
import gradepost.drive.EvenLine;
import gradepost.drive.brake.RunStates;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.grid.DriverRules;
import gradepost.drive.grid.DrivingStrategy;
import gradepost.drive.grid.Places;
import gradepost.motion.Stepper;
import gradepost.route.Landmark;
import gradepost.route.place.Applies;
import gradepost.route.place.Hand;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.CeilingStep;
import gradepost.task.Target;
import gradepost.units.Length;
import java.util.List;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

/**
 * Validation, with a pencil: where power comes off and the brake goes on in print, on {@link
 * EvenLine} with its print grid at 1.312 m and every 10 m.
 *
 * <p>From a stand at 300 m the notches pull 44, 96 and 100 kN for 3 s each: at 9 s the train is at
 * 315.8 m and 4.17 m/s, and gains 0.579 m/s² from there.
 */
class PrintableFitTest {
  private static final Target TARGET = new Target.Signal("S 1", 1200);

  private Stepper stepper = new TrainModels(EvenLine.of(0)).plannedStepper();

  /** A run, where it begins, and how it is printed. */
  private record Made(PrintableFit fitting, LegStart start, NextBraking choice) {
    PrintableFit.Fit fit() {
      return fitting.fit(choice, start, TARGET);
    }

    List<FreeRun.Step> steps(PrintableFit.Fit fit) {
      return fitting.run(choice, start, fit);
    }
  }

  private Made made(double fromM, double mps, double offM, double brakingM, double... landmarksM) {
    Assignment even = EvenLine.of(0);
    List<Landmark> landmarks =
        DoubleStream.of(landmarksM)
            .mapToObj(
                m ->
                    new Landmark(
                        "hut",
                        EvenLine.at(m),
                        Applies.EVERYWHERE,
                        Hand.LEFT,
                        true,
                        new Length(200)))
            .toList();
    Assignment line = Changed.route(even, "landmarks", landmarks);
    TrainModels models = new TrainModels(line);
    stepper = models.plannedStepper();
    DriverRules rules =
        new DriverRules(
            line,
            models,
            new Ceiling(List.of(new CeilingStep(0, 6000, 20, "line"))),
            fromM,
            DrivingStrategy.of(line.policy().run()));
    stepper.place(0, fromM, mps);
    RunStates before = new RunStates();
    before.add(stepper.save());
    SpeedsSeen seen = new SpeedsSeen();
    seen.from(mps);
    LegStart start = new LegStart(stepper.save(), 30, 0, before, 0, seen, false, false);
    double never = Double.POSITIVE_INFINITY;
    FreeRun free = new FreeRun(rules, line, models, stepper, 6000, never, 0, never, never);
    free.start(seen);
    free.run(1500);
    RunStates run = new RunStates();
    run.addAll(before);
    free.steps().forEach(step -> run.add(step.after()));
    CoastThenBrake runIn = new CoastThenBrake(line, models, rules, stepper);
    return new Made(
        new PrintableFit(line.policy().practice(), rules, new Places(line), runIn, stepper),
        start,
        new NextBraking(0, 1200, offM, brakingM, false, false, false, free, run));
  }

  private static void assertFit(PrintableFit.Fit fit, double offM, double brakingM) {
    assertThat(fit.powered()).isTrue();
    assertThat(fit.shutOffM()).isCloseTo(offM, within(1e-6));
    assertThat(fit.upToM()).isCloseTo(offM, within(1e-6));
    assertThat(fit.brakingM()).isCloseTo(brakingM, within(1e-6));
  }

  /** Power comes off as much sooner as the brake goes on, and at a place of the grid. */
  @Test
  void withoutALandmarkBothAreOnTheGrid() {
    assertFit(made(300, 0, 400, 600).fit(), 391.312, 591.312);
    assertFit(made(300, 0, 402, 601.312).fit(), 401.312, 601.312);
  }

  /** At 400 m it is at 10.7 m/s; four fifths of that it is at from 364 m on. */
  @Test
  void aLandmarkIsTakenWhereItCostsLittleSpeed() {
    assertFit(made(300, 0, 400, 600, 575).fit(), 371.312, 575);
    assertFit(made(300, 0, 400, 600, 561.5).fit(), 391.312, 591.312);
  }

  /** At 331 m it has had its last notch for 3 s, at 351 m for 6. */
  @Test
  void aNotchIsNotTakenJustBeforePowerComesOff() {
    Made soon = made(300, 0, 331.312, 531.312);
    assertThat(soon.steps(soon.fit())).hasSize(3);
    assertThat(soon.steps(soon.fitting().toTheUnit(soon.choice(), soon.start(), TARGET)))
        .as("with every notch")
        .hasSize(4);
    Made later = made(300, 0, 351.312, 531.312);
    assertThat(later.steps(later.fit())).hasSize(4);
    assertThat(stepper.atM()).isCloseTo(351.312, within(1e-6));
    assertThat(stepper.notch()).isEqualTo(3);
  }

  @Test
  void toTheUnitItIsWholeMetresBeforeTheTarget() {
    Made made = made(300, 0, 400.5, 600.5, 575);
    assertFit(made.fitting().toTheUnit(made.choice(), made.start(), TARGET), 400, 600);
  }

  /** Power is taken at 1001.312 m, and would come off there: at 13.9 m/s it is done without. */
  @Test
  void powerForNoTimeIsSparedByATrainThatIsFastEnough() {
    PrintableFit.Fit fast = made(995, 50 / 3.6, 1005, 1100).fit();
    assertThat(fast.powered()).isFalse();
    assertThat(fast.dropFromM()).isCloseTo(1001.311, within(1e-6));
    assertThat(fast.upToM()).isEqualTo(fast.brakingM());
    Made slow = made(995, 42 / 3.6, 1005, 1100);
    assertFit(slow.fit(), 1001.312, 1091.312);
    assertThat(slow.fit().dropFromM()).isEqualTo(Double.POSITIVE_INFINITY);
  }

  /** It coasts: where power came off before is no matter of the braking. */
  @Test
  void aTrainThatCoastsIsToldTheBrakingAlone() {
    Made made = made(800, 65 / 3.6, 1000, 1000, 970);
    PrintableFit.Fit fit = made.fit();
    assertThat(fit.powered()).isFalse();
    assertThat(fit.brakingM()).isEqualTo(970);
    assertThat(fit.upToM()).isEqualTo(970);
    assertThat(made.steps(fit)).isEmpty();
    assertThat(stepper.atM()).isEqualTo(970);
  }
}
