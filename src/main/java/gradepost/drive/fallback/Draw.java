package gradepost.drive.fallback;

import gradepost.drive.brake.PlannerSettings;
import gradepost.motion.NoEnd;
import gradepost.motion.TrainBrake;
import gradepost.policy.Scatter;
import gradepost.task.Target;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/**
 * What makes one run differ from the planned one.
 *
 * @param force brake force, of the planned one. A mass that differs by a factor is a brake that
 *     differs by its inverse: gradient and the greater part of running resistance go with the mass
 * @param fill time in which the cylinders fill, of the planned one
 * @param lateS how late the brake goes on
 * @param fasterMps how much faster the train comes to the braking point
 * @param rail number of its class of adhesion
 */
record Draw(double force, double fill, double lateS, double fasterMps, int rail) {
  /**
   * The runs drawn for a target, in their order. Seeded by where it is, so that the same input
   * gives the same runs, and an approach that only gets another number, or another braking point,
   * keeps its own.
   */
  static List<Draw> of(Scatter scatter, PlannerSettings.Fallback settings, Target target) {
    SplittableRandom random = new SplittableRandom(settings.seed() + Math.round(target.atM()));
    List<Draw> draws = new ArrayList<>();
    for (int i = 0; i < scatter.samples(); i++) {
      double force =
          (1 + scatter.blocks() * normal(random, settings))
              / (1 + scatter.mass() * normal(random, settings));
      double fill = 1 + scatter.buildUp() * normal(random, settings);
      double late = Math.abs(scatter.reaction().seconds() * normal(random, settings));
      double faster = scatter.speed().metresPerSecond() * normal(random, settings);
      int rail =
          (int) Math.round((normal(random, settings) + 3) / 6 * (settings.adhesionClasses() - 1));
      // Neither −0 nor, where adhesion does not scatter, another class is another run.
      draws.add(new Draw(force, fill, late, faster + 0.0, scatter.adhesion() == 0 ? 0 : rail));
    }
    return draws;
  }

  /** The brake of such a train. */
  TrainBrake of(TrainBrake planned) {
    double[] gain = planned.gainNPerPa().clone();
    for (int i = 0; i < gain.length; i++) {
      gain[i] *= force;
    }
    return planned.with(gain, planned.applyPaPerS() / Math.max(fill, 0.2));
  }

  /** Standard normal by Marsaglia's polar method, cut at three deviations. */
  private static double normal(SplittableRandom random, PlannerSettings.Fallback settings) {
    for (int draw = 0; draw < settings.draws(); draw++) {
      double u = 2 * random.nextDouble() - 1;
      double v = 2 * random.nextDouble() - 1;
      double square = u * u + v * v;
      if (square > 0 && square < 1) {
        double n = u * Math.sqrt(-2 * Math.log(square) / square);
        if (Math.abs(n) <= 3) {
          return n;
        }
      }
    }
    throw new NoEnd("no sample within three standard deviations in " + settings.draws() + " draws");
  }
}
