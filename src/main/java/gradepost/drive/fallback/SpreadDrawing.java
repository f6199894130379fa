package gradepost.drive.fallback;

import gradepost.drive.brake.TrainModels;
import gradepost.drive.check.ToldInstructions;
import gradepost.motion.Snapshot;
import gradepost.plan.Spread;
import gradepost.policy.Scatter;
import gradepost.task.Assignment;
import gradepost.task.Target;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;
import java.util.stream.IntStream;

/** Draws the runs of one braking, and counts how they end. */
final class SpreadDrawing {
  /** So many runs are made by one train. */
  private static final int BATCH = 50;

  private final Assignment assignment;
  private final TrainModels bench;
  private final Lateness lateness;

  SpreadDrawing(Assignment assignment, TrainModels bench, Lateness lateness) {
    this.assignment = assignment;
    this.bench = bench;
    this.lateness = lateness;
  }

  /**
   * How the runs end.
   *
   * @param leastShortM how far short of its target the worst of them ends, m; negative past it
   */
  record Drawn(Spread spread, double leastShortM) {}

  /** A run as printed, and the same corrected. */
  private record Both(double shortM, DrawnRuns.Met corrected) {}

  /** As many runs as the policy wants, from where the planned one comes to its braking point. */
  Drawn of(Scatter scatter, ToldInstructions.Braking braking, Snapshot planned) {
    Target target = braking.target();
    List<Draw> draws = Draw.of(scatter, bench.settings().fallback(), target);
    Map<Draw, Both> made =
        made(
            draws.stream().distinct().toList(),
            () -> new DrawnRuns(assignment, bench, scatter, target, planned, braking.told()));
    double[] shorts = new double[draws.size()];
    double[] corrected = new double[draws.size()];
    int late = 0;
    int full = 0;
    for (int i = 0; i < shorts.length; i++) {
      Both both = Objects.requireNonNull(made.get(draws.get(i)));
      shorts[i] = both.shortM();
      corrected[i] = both.corrected().shortM();
      late += lateness.late(target, corrected[i]) ? 1 : 0;
      full += both.corrected().full() ? 1 : 0;
    }
    Arrays.sort(shorts);
    Arrays.sort(corrected);
    double all = shorts.length;
    Spread spread =
        new Spread(
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
    return new Drawn(spread, Math.min(shorts[0], corrected[0]));
  }

  /** On all cores, in batches: runs do not know of each other. */
  private static Map<Draw, Both> made(List<Draw> draws, Supplier<DrawnRuns> train) {
    Map<Draw, Both> made = new ConcurrentHashMap<>();
    IntStream.rangeClosed(0, (draws.size() - 1) / BATCH)
        .parallel()
        .forEach(
            batch -> {
              DrawnRuns runs = train.get();
              draws.stream()
                  .skip((long) batch * BATCH)
                  .limit(BATCH)
                  .forEach(
                      d -> made.put(d, new Both(runs.uncorrectedShortM(d), runs.corrected(d))));
            });
    return made;
  }

  private static Optional<Double> at(double[] sorted, double share) {
    double shortM = sorted[(int) (share * sorted.length)];
    return Double.isInfinite(shortM) ? Optional.empty() : Optional.of(shortM);
  }
}
