package gradepost.drive.fallback;

import gradepost.drive.brake.TrainModels;
import gradepost.drive.check.InstructionRun;
import gradepost.drive.check.ToldInstructions;
import gradepost.motion.Snapshot;
import gradepost.motion.Stepper;
import gradepost.plan.Instruction;
import gradepost.plan.Spread;
import gradepost.policy.Scatter;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.Stops;
import gradepost.task.Target;
import gradepost.task.Targets;
import gradepost.told.InstructionSet;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;

/**
 * Draws runs of one braking by the policy's scatter, as printed and corrected by the driver. What
 * was drawn of a braking is kept: where the run is worked out again, most of its brakings are as
 * they were.
 */
public final class Spreads {
  private final Assignment assignment;
  private final TrainModels bench;
  private final Ceiling ceiling;
  private final Lateness lateness;
  private final Map<Begun, Spread> drawn = new ConcurrentHashMap<>();

  /** A braking by a train on which no brake is on yet. */
  private record Begun(
      Target target, List<Instruction> told, double atM, double speedMps, int notch) {}

  /** For a train and its track. */
  public Spreads(Assignment assignment, TrainModels bench, Ceiling ceiling) {
    this.assignment = assignment;
    this.bench = bench;
    this.ceiling = ceiling;
    this.lateness = new Lateness(assignment, bench.track(), ceiling);
  }

  /**
   * One for each sheet; empty where the policy sets no scatter, or no brake is needed. On all
   * cores: each sheet draws by a seed of its own, so that the order does not matter.
   *
   * @throws IllegalArgumentException for a sheet whose target this run does not have
   */
  public List<Optional<Spread>> of(InstructionSet told) {
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

  private Optional<Spread> of(ToldInstructions.Braking braking, Snapshot planned) {
    return assignment.policy().scatter().map(scatter -> known(scatter, braking, planned));
  }

  private Spread known(Scatter scatter, ToldInstructions.Braking braking, Snapshot planned) {
    if (!planned.unbraked()) {
      return of(scatter, braking, planned);
    }
    Begun begun =
        new Begun(
            braking.target(), braking.told(), planned.atM(), planned.speedMps(), planned.notch());
    return drawn.computeIfAbsent(begun, b -> of(scatter, braking, clockAtNought(planned)));
  }

  /** The same train, whenever it comes there: its runs are the same to the last digit. */
  private Snapshot clockAtNought(Snapshot unbraked) {
    Stepper stepper = bench.plannedStepper();
    stepper.place(0, unbraked.atM(), unbraked.speedMps());
    stepper.power(unbraked.notch());
    return stepper.save();
  }

  /** A run as printed, and the same corrected. */
  private record Both(double shortM, DrawnRuns.Met corrected) {}

  private Spread of(Scatter scatter, ToldInstructions.Braking braking, Snapshot planned) {
    Target target = braking.target();
    DrawnRuns runs = new DrawnRuns(assignment, bench, scatter, target, planned, braking.told());
    List<Draw> draws = Draw.of(scatter, bench.settings().fallback(), target);
    Map<Draw, Both> known = new HashMap<>();
    double[] shorts = new double[draws.size()];
    double[] corrected = new double[draws.size()];
    int late = 0;
    int full = 0;
    for (int i = 0; i < shorts.length; i++) {
      Both both =
          known.computeIfAbsent(
              draws.get(i), d -> new Both(runs.uncorrectedShortM(d), runs.corrected(d)));
      shorts[i] = both.shortM();
      corrected[i] = both.corrected().shortM();
      late += lateness.late(target, corrected[i]) ? 1 : 0;
      full += both.corrected().full() ? 1 : 0;
    }
    Arrays.sort(shorts);
    Arrays.sort(corrected);
    double all = shorts.length;
    return new Spread(
        at(shorts, 0.05),
        at(shorts, 0.1),
        at(shorts, 0.5),
        at(shorts, 0.95),
        Arrays.stream(shorts).filter(m -> m < 0).count() / all,
        Arrays.stream(shorts).filter(Double::isInfinite).count() / all,
        shorts.length,
        new Spread.Corrected(
            at(corrected, 0.05),
            at(corrected, 0.5),
            at(corrected, 0.95),
            late / all,
            BinomialBound.upper(late, shorts.length),
            lateness.noneMayBe(target),
            full / all));
  }

  private static Optional<Double> at(double[] sorted, double share) {
    double shortM = sorted[(int) (share * sorted.length)];
    return Double.isInfinite(shortM) ? Optional.empty() : Optional.of(shortM);
  }
}
