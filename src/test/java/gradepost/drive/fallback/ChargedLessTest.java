package gradepost.drive.fallback;

import static gradepost.drive.EvenLine.CRUSH_T;
import static gradepost.drive.EvenLine.SEATED_T;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.Arrangements;
import gradepost.drive.EvenLine;
import gradepost.drive.Mill;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.grid.Places;
import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import gradepost.stock.BrakeSystem;
import gradepost.task.Assignment;
import gradepost.task.Target;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Validation, with a pencil: full service has no more than what the reservoirs hold after the
 * planned run. A pipe of 70 psi, of which 50 in the cylinders take 20; 1 psi comes back in a
 * second, and what is held equalises at 2.5 / 3.5 of it (Howard 1913).
 */
class ChargedLessTest {
  private static final double STAND_M = 4000;

  @Test
  void fullServiceSoonAfterAReleaseHasLessToGive() {
    Assignment a = EvenLine.of(0, Mill.policy(), Arrangements.onePipe());
    TrainModels models = new TrainModels(a);
    BrakeSystem service = a.stock().service();
    Target stand = new Target.Signal("S 1", STAND_M);
    Stepper planned = models.plannedStepper();
    Stepper worst = models.worstStepper(a.policy().plannedAdhesion());
    LastPlaces last = new LastPlaces(a, models, new Places(a));

    planned.place(0, 1000, 24);
    double charged = last.full(stand, planned, worst, service).shortM();
    assertThat(charged).isCloseTo(STAND_M - 1000 - needs(24, 50), within(0.01));

    planned.brake(models.service(), EvenLine.pascals(50));
    planned.advance(new StopConditions().time(6));
    planned.brake(models.service(), 0);
    planned.advance(new StopConditions().time(6 + 12));
    double mps = planned.speedMps();
    double holds = (50 + 12) * 2.5 / 3.5;
    double less = last.full(stand, planned, worst, service).shortM();
    assertThat(less).isCloseTo(STAND_M - planned.atM() - needs(mps, holds), within(0.01));
  }

  /** Crush load, 2 mph faster, nine tenths of the force, by 12 psi a second. */
  private static double needs(double mps, double psi) {
    double full = 0.85 * SEATED_T / CRUSH_T * 0.9 * (psi - 4) / 46;
    return new EvenLine.Along(List.of(10.0, 30.0, 50.0, 70.0), psi - 4, 12, full)
        .distanceM(mps + 2 * 0.44704, 0);
  }
}
