package gradepost.drive.brake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.EvenLine;
import gradepost.drive.FrozenPlans;
import gradepost.motion.Snapshot;
import gradepost.motion.Stepper;
import gradepost.policy.BrakePractice;
import gradepost.task.Assignment;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Property: a braking tried in a tree comes out as one that is run by itself, for less work. */
class RunTreeTest {
  private static final double SAME = 1e-9;

  @Test
  void brakingsComeOutAsThoseRunByThemselves() {
    same(EvenLine.of(0));
    same(EvenLine.of(-15));
    same(FrozenPlans.assignments().get(0));
  }

  @Test
  void whatTheyBeginWithIsRunOnce() {
    TrainModels models = new TrainModels(EvenLine.of(0));
    double alone = metres(models, false);
    double shared = metres(models, true);
    assertThat(shared).isLessThan(0.5 * alone);
  }

  private static double metres(TrainModels models, boolean shared) {
    double before = models.odometer().metres();
    Stepper stepper = models.plannedStepper();
    Snapshot start = start(stepper, 18);
    RunTree tree = new RunTree(stepper, start);
    for (Braking braking : brakings(models)) {
      if (shared) {
        braking.run(stepper, tree);
      } else {
        stepper.restore(start);
        braking.run(stepper);
      }
    }
    return models.odometer().metres() - before;
  }

  private static void same(Assignment assignment) {
    TrainModels models = new TrainModels(assignment);
    for (double mps : new double[] {4, 11, 18}) {
      Stepper stepper = models.plannedStepper();
      Stepper alone = models.plannedStepper();
      Snapshot start = start(stepper, mps);
      RunTree tree = new RunTree(stepper, start);
      for (Braking braking : brakings(models)) {
        alone.restore(start);
        Braking.Outcome by = braking.run(alone);
        Braking.Outcome is = braking.run(stepper, tree);
        assertThat(is.held()).isEqualTo(by.held());
        assertThat(is.endM()).isCloseTo(by.endM(), within(SAME));
        assertThat(is.endMps()).isCloseTo(by.endMps(), within(SAME));
        assertThat(is.endS()).isCloseTo(by.endS(), within(SAME));
        assertThat(stepper.atM()).isEqualTo(is.endM());
        assertThat(stepper.demandPa()).isEqualTo(alone.demandPa());
      }
    }
  }

  private static Snapshot start(Stepper stepper, double mps) {
    stepper.place(0, 1000, mps);
    return stepper.save();
  }

  /** In an order that goes on past what is known and comes back before it. */
  private static List<Braking> brakings(TrainModels models) {
    List<Braking> all = new ArrayList<>();
    double[] to = {1.2e5, 0.6e5};
    for (double main : new double[] {2.2e5, 1.6e5, 1.9e5}) {
      for (double first : new double[] {5, 6, 4, 5.5}) {
        for (double held : new double[] {3, 1, 4}) {
          all.add(braking(models, held, main, new double[] {first, 2}, to));
        }
      }
      all.add(braking(models, 3, main, new double[] {5, 2}, new double[] {1.4e5, 0.6e5}));
      all.add(braking(models, 3, main, new double[] {5, 2.4}, to));
      all.add(braking(models, 3, main, new double[] {7, 1.6}, to));
    }
    return all;
  }

  private static Braking braking(
      TrainModels models, double heldS, double mainPa, double[] atMps, double[] toPa) {
    return new Braking(
        models.service(),
        0,
        1e5,
        heldS,
        0,
        mainPa,
        atMps,
        toPa,
        BrakePractice.USUAL.lastEaseAlone(),
        false);
  }
}
