package gradepost.drive.brake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.EvenLine;
import gradepost.drive.PencilBraking;
import gradepost.motion.Stepper;
import gradepost.policy.BrakePractice;
import gradepost.task.Assignment;
import org.junit.jupiter.api.Test;

/**
 * Validation, with a pencil: the lightest main application that still stops short of the aim; see
 * {@link EvenLine}.
 */
class SolverTest {
  private static final double MPS = 20;
  private final Assignment assignment = EvenLine.of(0);
  private final TrainModels models = new TrainModels(assignment);
  private final Stepper stepper = models.plannedStepper();

  private Braking nominal() {
    return new Braking(
        models.service(),
        0,
        1e5,
        3,
        0,
        2e5,
        new double[] {5, 2},
        new double[] {1.2e5, 0.6e5},
        BrakePractice.USUAL.lastEaseAlone(),
        false);
  }

  private static PencilBraking pencil(Braking b) {
    PencilBraking p = new PencilBraking(MPS).after(b.firstPa(), b.firstHeldS());
    if (b.mainPa() > b.firstPa()) {
      p.downTo(b.mainPa(), b.easeAtMps()[0]);
    }
    if (b.easePa()[0] < b.mainPa()) {
      p.downTo(b.easePa()[0], b.easeAtMps()[1]);
    }
    return p.downTo(b.easePa()[1], 0);
  }

  private Braking solved(double aimM, boolean stop) {
    stepper.place(0, 1000, MPS);
    return new Solver(assignment, models.settings().brake())
        .forPlace(nominal(), stepper, stepper.save(), aimM, stop);
  }

  private static double needs(double mainPa) {
    return new PencilBraking(MPS)
        .after(1e5, 3)
        .downTo(mainPa, 5)
        .downTo(1.2e5, 2)
        .downTo(0.6e5, 0)
        .distanceM();
  }

  /** On the gauge, up to three tenths of a bar more than the policy says. */
  @Test
  void theMainApplicationIsTheLightestThatHolds() {
    for (double bar : new double[] {1.5, 1.9, 2.3}) {
      double justM = 1000 + needs(bar * 1e5) + 0.1;
      assertThat(solved(justM, true).mainPa()).isCloseTo(bar * 1e5, within(1e-3));
      assertThat(solved(justM - 0.2, false).mainPa())
          .isCloseTo(Math.min(bar + 0.1, bar == 2.3 ? 2.0 : 9) * 1e5, within(1e-3));
    }
  }

  /** Between two pressures the eases make the stop good: within the tolerance, and never past. */
  @Test
  void aStopIsWithinItsToleranceAndNotPastTheMark() {
    double tolerance = assignment.policy().margins().stopTolerance().metres();
    assertThat(tolerance).isEqualTo(5);
    for (double aimM = 1460; aimM < 1700; aimM += 13) {
      double shortM = aimM - 1000 - pencil(solved(aimM, true)).distanceM();
      assertThat(shortM).as("to %s", aimM).isBetween(-1e-3, tolerance);
    }
  }

  /** Nothing holds so near: what was to be solved comes back, and is judged by others. */
  @Test
  void whereNothingHoldsTheTechniqueIsAsItWas() {
    Braking same = solved(1000 + needs(2.3e5) - 1, false);
    assertThat(same.mainPa()).isEqualTo(2e5);
    assertThat(same.firstHeldS()).isEqualTo(3);
  }
}
