package gradepost.drive.fallback;

import gradepost.drive.brake.PlannerSettings;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.check.InstructionRun;
import gradepost.drive.check.ToldInstructions;
import gradepost.motion.NoEnd;
import gradepost.motion.Snapshot;
import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import gradepost.motion.TrainBrake;
import gradepost.plan.Spread;
import gradepost.policy.AdhesionCase;
import gradepost.policy.Scatter;
import gradepost.stock.law.AdhesionLaw;
import gradepost.stock.law.ShareOf;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.Stops;
import gradepost.task.Target;
import gradepost.task.Targets;
import gradepost.told.InstructionSet;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.Collectors;

/**
 * Draws runs of one braking by the policy's scatter. Seeded by where the target is, so that the
 * same input gives the same figures, and an approach that only gets another number keeps its own. A
 * mass that differs by a factor is a brake that differs by its inverse: gradient and the greater
 * part of running resistance go with the mass. Each run begins as the planned one comes to the
 * braking point, with the brake that is on there.
 */
public final class Spreads {
  private final Assignment assignment;
  private final TrainModels bench;
  private final PlannerSettings.Fallback settings;

  /** For a train and its track. */
  public Spreads(Assignment assignment, TrainModels bench) {
    this.assignment = assignment;
    this.bench = bench;
    this.settings = bench.settings().fallback();
  }

  /**
   * One for each sheet; empty where the policy sets no scatter, or no brake is needed. On all
   * cores: each sheet draws by a seed of its own, so that the order does not matter.
   *
   * @throws IllegalArgumentException for a sheet whose target this run does not have
   */
  public List<Optional<Spread>> of(Ceiling ceiling, InstructionSet told) {
    ToldInstructions instructions =
        ToldInstructions.of(assignment, Targets.of(assignment, ceiling), told);
    InstructionRun run = new InstructionRun(assignment, bench, ceiling);
    run.keep(
        instructions.brakings().stream()
            .flatMap(Optional::stream)
            .map(ToldInstructions.Braking::index)
            .collect(Collectors.toSet()));
    double startM = Stops.markM(assignment, assignment.calls().get(0));
    run.run(startM, instructions.all(), instructions.numbers());
    return instructions.brakings().parallelStream()
        .map(b -> b.flatMap(x -> run.state(x.index()).flatMap(at -> of(x, at))))
        .toList();
  }

  /**
   * @param planned the planned run at its braking point, a brake that checked the speed still on
   */
  private Optional<Spread> of(ToldInstructions.Braking braking, Snapshot planned) {
    if (assignment.policy().scatter().isEmpty()) {
      return Optional.empty();
    }
    Scatter scatter = assignment.policy().scatter().get();
    Target target = braking.target();
    TrainBrake service = bench.service(target);
    SplittableRandom random = new SplittableRandom(settings.seed() + Math.round(target.atM()));
    Stepper[] steppers = steppers(scatter);
    OpenLoopBraking told = new OpenLoopBraking(target.speedMps(), braking.told());
    StopConditions until = new StopConditions();
    double[] shorts = new double[scatter.samples()];
    int past = 0;
    int notHeld = 0;
    for (int i = 0; i < shorts.length; i++) {
      double force =
          (1 + scatter.blocks() * normal(random)) / (1 + scatter.mass() * normal(random));
      double fill = 1 + scatter.buildUp() * normal(random);
      double late = Math.abs(scatter.reaction().seconds() * normal(random));
      double faster = scatter.speed().metresPerSecond() * normal(random);
      int grip = (int) Math.round((normal(random) + 3) / 6 * (settings.adhesionClasses() - 1));
      Stepper stepper = steppers[grip];
      TrainBrake drawn = rig(service, force, fill);
      stepper.restore(planned);
      stepper.move(planned.atM(), Math.max(planned.speedMps() + faster, 0.1));
      if (planned.demandPa() > 0) {
        stepper.brake(drawn, planned.demandPa());
      }
      stepper.advance(until.clear().time(planned.timeS() + late));
      double metM = told.metM(stepper, drawn).orElse(Double.POSITIVE_INFINITY);
      shorts[i] =
          metM > assignment.path().lengthM() ? Double.NEGATIVE_INFINITY : target.atM() - metM;
      past += shorts[i] < 0 ? 1 : 0;
      notHeld += Double.isInfinite(shorts[i]) ? 1 : 0;
    }
    Arrays.sort(shorts);
    return Optional.of(
        new Spread(
            told(shorts[(int) (0.05 * shorts.length)]),
            told(shorts[(int) (0.1 * shorts.length)]),
            told(shorts[shorts.length / 2]),
            told(shorts[(int) (0.95 * shorts.length)]),
            (double) past / shorts.length,
            (double) notHeld / shorts.length,
            shorts.length));
  }

  private static Optional<Double> told(double shortM) {
    return Double.isInfinite(shortM) ? Optional.empty() : Optional.of(shortM);
  }

  /** One for each class of adhesion, from three deviations below to three above. */
  private Stepper[] steppers(Scatter scatter) {
    AdhesionCase dry = assignment.policy().plannedAdhesion();
    AdhesionLaw planned = dry.law();
    Stepper[] steppers = new Stepper[settings.adhesionClasses()];
    for (int i = 0; i < steppers.length; i++) {
      double off = (i / (settings.adhesionClasses() - 1.0) * 6 - 3) * scatter.adhesion();
      AdhesionLaw law = off < 0 ? new ShareOf(planned, Math.max(1 + off, 0.05)) : planned;
      steppers[i] = bench.plannedStepper(law, dry.sites());
    }
    return steppers;
  }

  private static TrainBrake rig(TrainBrake rig, double force, double fill) {
    double[] gain = rig.gainNPerPa().clone();
    for (int i = 0; i < gain.length; i++) {
      gain[i] *= force;
    }
    return rig.with(gain, rig.applyPaPerS() / Math.max(fill, 0.2));
  }

  /** Standard normal by Marsaglia's polar method, cut at three deviations. */
  private double normal(SplittableRandom random) {
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
