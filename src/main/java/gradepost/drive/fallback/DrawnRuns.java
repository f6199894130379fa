package gradepost.drive.fallback;

import gradepost.drive.brake.TrainModels;
import gradepost.motion.Snapshot;
import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import gradepost.motion.TrainBrake;
import gradepost.plan.Instruction;
import gradepost.policy.AdhesionCase;
import gradepost.policy.Scatter;
import gradepost.stock.law.AdhesionLaw;
import gradepost.stock.law.ShareOf;
import gradepost.task.Assignment;
import gradepost.task.Target;
import java.util.List;
import java.util.OptionalDouble;

/**
 * One braking by trains that differ from the planned one. Each run begins as the planned one comes
 * to the braking point, with the brake that is on there.
 */
final class DrawnRuns {
  private final Target target;
  private final Snapshot planned;
  private final TrainBrake service;
  private final double endOfTrackM;
  private final Stepper[] steppers;
  private final OpenLoopBraking printed;
  private final CorrectedBraking driver;
  private final StopConditions until = new StopConditions();

  /**
   * @param planned the planned run at its braking point, a brake that checked the speed still on
   * @param told from the instruction that begins it
   */
  DrawnRuns(
      Assignment assignment,
      TrainModels bench,
      Scatter scatter,
      Target target,
      Snapshot planned,
      List<Instruction> told) {
    this.target = target;
    this.planned = planned;
    this.service = bench.service(target);
    this.endOfTrackM = assignment.path().lengthM();
    this.steppers = steppers(bench, assignment.policy().plannedAdhesion(), scatter);
    this.printed = new OpenLoopBraking(target.speedMps(), told);
    this.driver =
        new CorrectedBraking(assignment, bench, target, told, course(bench.plannedStepper()));
  }

  private Course course(Stepper stepper) {
    Course course = new Course();
    stepper.restore(planned);
    stepper.record((t, s, v, p, n) -> course.add(s, v));
    course.add(planned.atM(), planned.speedMps());
    printed.metM(stepper, service);
    stepper.record(null);
    return course;
  }

  /** Carried out as printed: how far short of its target it ends, m; negative past it. */
  double uncorrectedShortM(Draw draw) {
    TrainBrake brake = draw.of(service);
    return shortM(printed.metM(begun(draw, brake), brake));
  }

  /**
   * How a corrected run ends.
   *
   * @param shortM of its target, m; negative past it, infinite where it is never met on the track
   *     that is known
   */
  record Met(double shortM, boolean full) {}

  /** Corrected by the driver. */
  Met corrected(Draw draw) {
    TrainBrake brake = draw.of(service);
    CorrectedBraking.End end = driver.run(begun(draw, brake), brake);
    return new Met(shortM(end.metM()), end.full());
  }

  private double shortM(OptionalDouble metM) {
    return metM.isEmpty() || metM.getAsDouble() > endOfTrackM
        ? Double.NEGATIVE_INFINITY
        : target.atM() - metM.getAsDouble();
  }

  /** Where the driver puts the brake on. */
  private Stepper begun(Draw draw, TrainBrake brake) {
    Stepper stepper = steppers[draw.rail()];
    stepper.restore(planned);
    stepper.move(planned.atM(), Math.max(planned.speedMps() + draw.fasterMps(), 0.1));
    if (planned.demandPa() > 0) {
      stepper.brake(brake, planned.demandPa());
    }
    stepper.advance(until.clear().time(planned.timeS() + draw.lateS()));
    return stepper;
  }

  /** One for each class of adhesion, from three deviations below to three above. */
  private static Stepper[] steppers(TrainModels bench, AdhesionCase dry, Scatter scatter) {
    int classes = bench.settings().fallback().adhesionClasses();
    Stepper[] steppers = new Stepper[classes];
    for (int i = 0; i < classes; i++) {
      double off = (i / (classes - 1.0) * 6 - 3) * scatter.adhesion();
      AdhesionLaw law = off < 0 ? new ShareOf(dry.law(), Math.max(1 + off, 0.05)) : dry.law();
      steppers[i] = bench.plannedStepper(law, dry.sites());
    }
    return steppers;
  }
}
