package gradepost.drive.fallback;

import gradepost.drive.brake.Braking;
import gradepost.drive.brake.Slack;
import gradepost.drive.brake.Solver;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.grid.Places;
import gradepost.drive.leg.ApproachSolution;
import gradepost.motion.Snapshot;
import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import gradepost.motion.StopReason;
import gradepost.plan.Instruction;
import gradepost.plan.Trigger;
import gradepost.policy.Scatter;
import gradepost.task.Assignment;
import gradepost.task.Target;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The last printed place before a braking point from which no more runs are late than the policy
 * allows, with the technique solved again for that place. It is looked for in ever longer steps
 * towards the train, then between the last place that does not keep the share and the first that
 * does. Where none of them keeps it, it is the one from which the fewest are late, if that is no
 * more than half.
 */
final class SharePoint {
  /** The first step back, of the way from the braking point to the target. */
  private static final double FIRST_STEP = 0.02;

  /** Each step back is longer than the one before by this factor. */
  private static final double LONGER = 1.5;

  private final Assignment assignment;
  private final TrainModels bench;
  private final Places places;
  private final Lateness lateness;

  SharePoint(Assignment assignment, TrainModels bench, Lateness lateness) {
    this.assignment = assignment;
    this.bench = bench;
    this.places = new Places(assignment);
    this.lateness = lateness;
  }

  /**
   * For the run to one target.
   *
   * @param lateNow how many of the runs drawn are late from the braking point that there is
   * @return empty where no place is found that has half of them at most, between where the approach
   *     begins and that point
   */
  Optional<Double> of(ApproachSolution piece, int lateNow) {
    Tried tried = new Tried(piece);
    Target target = piece.target();
    double lowM = Math.max(piece.fromM(), piece.line().startM());
    double lateM = piece.brakingM().orElseThrow();
    double stepM = FIRST_STEP * (target.atM() - lateM);
    double atM = places.onGrid(lateM - stepM, target);
    Optional<Double> best = Optional.empty();
    // To move a point by far for one run less is no help.
    int fewest = lateNow / 2 + 1;
    int left = bench.settings().fallback().earlierPlaces();
    while (atM > lowM && left-- > 0) {
      int late = tried.late(atM, fewest);
      if (late <= tried.most) {
        return Optional.of(between(tried, atM, lateM, left));
      }
      if (late < fewest) {
        best = Optional.of(atM);
        fewest = late;
      }
      lateM = atM;
      stepM *= LONGER;
      atM = places.onGrid(lateM - stepM, target);
    }
    return best;
  }

  /** The last place that keeps the share, between one that does and one that does not. */
  private double between(Tried tried, double keepsM, double lateM, int mostPlaces) {
    Target target = tried.piece.target();
    double keeps = keepsM;
    double late = lateM;
    for (int i = 0; i < mostPlaces; i++) {
      double middle = places.onGrid((keeps + late) / 2, target);
      if (middle <= keeps + Slack.PLACE_M) {
        return keeps;
      }
      if (tried.late(middle, tried.most + 1) <= tried.most) {
        keeps = middle;
      } else {
        late = middle;
      }
    }
    return keeps;
  }

  /** The braking from a place, tried out. */
  private final class Tried {
    private final ApproachSolution piece;
    private final Scatter scatter = assignment.policy().scatter().orElseThrow();
    private final List<Draw> draws;
    private final int most;
    private final Stepper stepper = bench.plannedStepper();

    Tried(ApproachSolution piece) {
      this.piece = piece;
      this.draws = new ArrayList<>(Draw.of(scatter, bench.settings().fallback(), piece.target()));
      this.most =
          new LateShare(assignment.policy(), lateness.noneMayBe(piece.target()))
              .mostOf(draws.size());
    }

    /**
     * How many are late from a place.
     *
     * @param enough no more than so many are counted, and so many stand for a place from which the
     *     technique does not come to its target as it should
     */
    int late(double atM, int enough) {
      piece.line().pickUpBraked(stepper, atM);
      stepper.shutOff();
      Snapshot there = stepper.save();
      return technique(there).map(told -> late(there, told, enough)).orElse(enough);
    }

    /** Empty where the technique, begun there, does not come to its target as it should. */
    private Optional<List<Instruction>> technique(Snapshot there) {
      Target target = piece.target();
      double aimM = target.aimM(assignment.policy().margins());
      Braking solved =
          new Solver(assignment, bench.settings().brake())
              .forPlace(
                  Braking.of(assignment, bench, target),
                  stepper,
                  there,
                  aimM,
                  target.standsThere());
      List<Instruction> told = new ArrayList<>();
      stepper.restore(there);
      double shortM =
          solved.run(stepper, new Trigger.AtPlace(there.atM()), target, told).shortOf(aimM);
      boolean brakes = !told.isEmpty() && told.get(0).command().isBrake();
      return brakes && meets(target, shortM) ? Optional.of(told) : Optional.empty();
    }

    private boolean meets(Target target, double shortM) {
      if (target.standsThere()) {
        return shortM >= 0 && shortM <= assignment.policy().margins().stopTolerance().metres();
      }
      if (shortM < -bench.settings().fallback().toleranceM()) {
        return false;
      }
      StopReason ended = stepper.advance(new StopConditions().place(target.atM()));
      return ended == StopReason.PLACE && stepper.speedMps() <= target.speedMps() + Slack.SPEED_MPS;
    }

    /** Those that are late are run first the next time: where they suffice, it is soon found. */
    private int late(Snapshot there, List<Instruction> told, int enough) {
      Target target = piece.target();
      DrawnRuns runs = new DrawnRuns(assignment, bench, scatter, target, there, told);
      Map<Draw, Boolean> known = new HashMap<>();
      List<Draw> late = new ArrayList<>();
      List<Draw> others = new ArrayList<>();
      for (Draw draw : draws) {
        boolean isLate =
            late.size() < enough
                && known.computeIfAbsent(
                    draw, d -> lateness.late(target, runs.corrected(d).shortM()));
        (isLate ? late : others).add(draw);
      }
      draws.clear();
      draws.addAll(late);
      draws.addAll(others);
      return late.size();
    }
  }
}
