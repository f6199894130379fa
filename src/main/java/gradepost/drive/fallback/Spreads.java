package gradepost.drive.fallback;

import gradepost.drive.brake.Recall;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.check.InstructionRun;
import gradepost.drive.check.ToldInstructions;
import gradepost.motion.Snapshot;
import gradepost.motion.Stepper;
import gradepost.plan.Spread;
import gradepost.policy.Scatter;
import gradepost.route.Stretch;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.Stops;
import gradepost.task.Target;
import gradepost.task.Targets;
import gradepost.told.InstructionSet;
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
  /** So much of the road behind the target is known to a braking that is drawn, m. */
  private static final double BEYOND_M = 1000;

  /** The same of the road behind the train. */
  private static final double BEHIND_M = 100;

  /** A train that differs by less than a millionth in place or speed is the same. */
  private static final double SAME = 1e-6;

  private final Assignment assignment;
  private final TrainModels bench;
  private final Ceiling ceiling;
  private final Lateness lateness;
  private final Recall<SpreadQuestion, Spread> known;
  private final Map<SpreadQuestion, Spread> drawn = new ConcurrentHashMap<>();

  /**
   * For a train and its track.
   *
   * @param known what was drawn of brakings that may be among those of this train
   */
  public Spreads(
      Assignment assignment,
      TrainModels bench,
      Ceiling ceiling,
      Recall<SpreadQuestion, Spread> known) {
    this.assignment = assignment;
    this.bench = bench;
    this.ceiling = ceiling;
    this.lateness = new Lateness(assignment, bench.track(), ceiling);
    this.known = known;
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
      return on(assignment, bench).of(scatter, braking, planned).spread();
    }
    SpreadQuestion question = question(braking, planned);
    Spread before = drawn.get(question);
    if (before != null) {
      return before;
    }
    // Not within the map: what is drawn on other cores would wait for its lock, and it for them.
    Spread now = known.of(question).orElseGet(() -> of(scatter, question, braking));
    drawn.put(question, now);
    return now;
  }

  private SpreadQuestion question(ToldInstructions.Braking braking, Snapshot planned) {
    Target target = braking.target();
    double behindM = assignment.formation().lengthM() + BEHIND_M;
    Stretch road = new Stretch(planned.atM() - behindM, target.atM() + BEYOND_M);
    return new SpreadQuestion(
        assignment.along(road),
        bench.settings(),
        target,
        braking.told(),
        Math.rint(planned.atM() / SAME) * SAME,
        Math.rint(planned.speedMps() / SAME) * SAME,
        planned.notch(),
        lateness.noneMayBe(target));
  }

  /** On the road that the question knows; on the whole, where a run leaves that. */
  private Spread of(Scatter scatter, SpreadQuestion asked, ToldInstructions.Braking braking) {
    TrainModels there = bench.on(asked.road());
    SpreadDrawing.Drawn near = on(asked.road(), there).of(scatter, braking, begun(asked, there));
    if (near.leastShortM() < -BEYOND_M / 2) {
      return on(assignment, bench).of(scatter, braking, begun(asked, bench)).spread();
    }
    known.keep(asked, near.spread());
    return near.spread();
  }

  private SpreadDrawing on(Assignment road, TrainModels train) {
    return new SpreadDrawing(road, train, lateness);
  }

  /** The same train, whenever it comes there: its runs are the same to the last digit. */
  private static Snapshot begun(SpreadQuestion asked, TrainModels on) {
    Stepper stepper = on.plannedStepper();
    stepper.place(0, asked.atM(), asked.speedMps());
    stepper.power(asked.notch());
    return stepper.save();
  }
}
