package gradepost.drive.fallback;

import gradepost.drive.brake.PointLimits;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.leg.ApproachSolution;
import gradepost.plan.Application;
import gradepost.plan.Approach;
import gradepost.plan.CaseResult;
import gradepost.plan.Spread;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.Target;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Where the brake has to be on before the computed point: by the place that still leaves the next
 * brake enough, and by the place from which no more runs are late than the policy allows. Both only
 * ever move a point towards the train.
 */
public final class EarlierPoints {
  /** Nearer than this two places are the same, m. */
  private static final double SAME_M = 0.01;

  private final Assignment assignment;
  private final SharePoint sharePoint;
  private final boolean leavesNextBrake;

  /** For a train and its track. */
  public EarlierPoints(Assignment assignment, TrainModels bench, Ceiling ceiling) {
    this.assignment = assignment;
    this.sharePoint =
        new SharePoint(assignment, bench, new Lateness(assignment, bench.track(), ceiling));
    this.leavesNextBrake = assignment.policy().practice().correction().leavesNextBrake();
  }

  /**
   * A place by which the brake has to be on.
   *
   * @param atM on the print grid, before the point that there is
   */
  public record Earlier(double atM, Application.SetBy why) {}

  /** The places by which the brake has to be on; none for a target that is all right. */
  public Map<Target, Earlier> of(List<Approach> approaches, List<ApproachSolution> pieces) {
    Map<Target, ApproachSolution> byTarget =
        pieces.stream().collect(Collectors.toMap(ApproachSolution::target, p -> p));
    Map<Target, Earlier> all = new HashMap<>();
    for (Approach approach : approaches) {
      for (Application application : approach.applications()) {
        nextBrake(application).ifPresent(e -> all.put(application.target(), e));
      }
    }
    Map<Target, Earlier> byShare =
        approaches.parallelStream()
            .flatMap(a -> share(a, byTarget).stream().map(e -> Map.entry((Target) a.target(), e)))
            .collect(Collectors.toMap(Map.Entry::getKey, Map.Entry::getValue));
    byShare.forEach((target, e) -> all.merge(target, e, (a, b) -> a.atM() <= b.atM() ? a : b));
    return all;
  }

  /** The limits that these places are. */
  public static PointLimits limits(Map<Target, Earlier> earlier) {
    return new PointLimits(
        earlier.entrySet().stream()
            .collect(Collectors.toMap(Map.Entry::getKey, e -> e.getValue().atM())));
  }

  /** Whether more runs are late than may be, though the driver corrects. */
  public boolean tooOftenLate(Spread spread) {
    return !new LateShare(assignment.policy(), spread.corrected().noneMayBeLate())
        .kept(spread.corrected().lateShare(), spread.samples());
  }

  private Optional<Earlier> nextBrake(Application application) {
    CaseResult dry = application.cases().get(0);
    return leavesNextBrake && dry.protectedCostS().isPresent()
        ? earlier(dry.protectedM(), application.brakingPointM(), Application.SetBy.NEXT_BRAKE)
        : Optional.empty();
  }

  private Optional<Earlier> share(Approach approach, Map<Target, ApproachSolution> byTarget) {
    return approach.spread().filter(this::tooOftenLate).flatMap(s -> share(approach, byTarget, s));
  }

  private Optional<Earlier> share(
      Approach approach, Map<Target, ApproachSolution> byTarget, Spread spread) {
    ApproachSolution piece = Objects.requireNonNull(byTarget.get(approach.target()));
    int late = (int) Math.round(spread.corrected().lateShare() * spread.samples());
    return piece
        .brakingM()
        .flatMap(m -> earlier(sharePoint.of(piece, late), m, Application.SetBy.LATE_SHARE));
  }

  private static Optional<Earlier> earlier(
      Optional<Double> wantedM, double isM, Application.SetBy why) {
    return wantedM.filter(m -> m < isM - SAME_M).map(m -> new Earlier(m, why));
  }
}
