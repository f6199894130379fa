package gradepost.ride;

import gradepost.policy.RecorderRules;
import gradepost.ride.Ride.Sample;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** What a recorder counted by its wheel, cleared of what no train does. */
final class WheelCount {
  /** Slower than this the train stands. */
  static final double STANDS_MPS = 0.3;

  /** No train gains or loses speed as fast as this: a line that says so is wrong. */
  private static final double NO_TRAIN_MPS2 = 3;

  /** Under power up to this speed a wheel may slip, however little the train gains. */
  private static final double STARTS_MPS = 9;

  /** The change of speed is taken over so long before and after a line. */
  private static final double CHANGE_S = 1;

  /** Lines of a recorder that writes by distance are no further apart than this, or a gap. */
  private static final double APART_M = 60;

  private static final double SELDOM = 4;
  private static final double MOVED_M = 1;

  private final List<Sample> samples;
  private final RecorderRules rules;
  private final boolean clock;

  /** By index of the line. */
  final double[] timeS;

  final double[] speedMps;

  /** Metres counted up to a line along which the wheel may have slipped or slid. */
  final double[] slipsM;

  /** Lines whose speed was left out. */
  private int glitches;

  WheelCount(List<Sample> samples, RecorderRules rules) {
    this.samples = samples;
    this.rules = rules;
    clock = samples.stream().allMatch(s -> s.timeS().isPresent());
    timeS = RecorderClock.timeS(samples);
    speedMps = speeds();
    slipsM = slips();
  }

  int size() {
    return samples.size();
  }

  double countedM(int i) {
    return samples.get(i).countedM();
  }

  int glitches() {
    return glitches;
  }

  /** Speeds without a line that is wrong by itself between two others. */
  private double[] speeds() {
    double[] out = samples.stream().mapToDouble(Sample::speedMps).toArray();
    for (int i = 1; i + 1 < out.length; i++) {
      double up = out[i] - out[i - 1];
      double down = out[i] - out[i + 1];
      if (up * down > 0 && tooFast(up, i - 1, i) && tooFast(down, i, i + 1)) {
        out[i] = (out[i - 1] + out[i + 1]) / 2;
        glitches++;
      }
    }
    return out;
  }

  private boolean tooFast(double change, int from, int to) {
    double longest = timeS[to] - timeS[from] + 2 * rules.clockWithin().seconds();
    return Math.abs(change) > NO_TRAIN_MPS2 * longest;
  }

  private double[] slips() {
    double[] out = new double[samples.size()];
    int before = 0;
    int after = 0;
    for (int i = 1; i < out.length; i++) {
      while (before + 1 < i && timeS[before + 1] <= timeS[i] - CHANGE_S) {
        before++;
      }
      after = Math.max(after, i);
      while (after + 1 < out.length && timeS[after] < timeS[i] + CHANGE_S) {
        after++;
      }
      double seconds = Math.max(timeS[after] - timeS[before], CHANGE_S);
      double change = Math.abs(speedMps[after] - speedMps[before]) / seconds;
      boolean starts =
          speedMps[i] < STARTS_MPS && samples.get(i).notch().filter(n -> n >= 0).isPresent();
      boolean slips = starts || change >= rules.slipFrom().metresPerSecond2();
      out[i] = out[i - 1] + (slips ? countedM(i) - countedM(i - 1) : 0);
    }
    return out;
  }

  /** Whether the train is on the move unseen between a line and the one before it. */
  boolean[] gaps() {
    boolean[] out = new boolean[samples.size()];
    double[] steps = new double[out.length];
    for (int i = 1; i < out.length; i++) {
      steps[i] = clock ? timeS[i] - timeS[i - 1] : countedM(i) - countedM(i - 1);
    }
    double usual = RoadTie.middle(Arrays.copyOfRange(steps, 1, steps.length));
    double most = clock ? rules.longestGap().seconds() : APART_M;
    for (int i = 1; i < out.length; i++) {
      boolean moves = countedM(i) - countedM(i - 1) > MOVED_M;
      out[i] = moves && steps[i] > Math.max(most, SELDOM * usual);
    }
    return out;
  }

  /** Where the train stood: the first line and the last of each stand. */
  List<int[]> stands() {
    List<int[]> out = new ArrayList<>();
    for (int i = 0; i < size(); i++) {
      if (speedMps[i] >= STANDS_MPS) {
        continue;
      }
      int last = i;
      while (last + 1 < size() && speedMps[last + 1] < STANDS_MPS) {
        last++;
      }
      out.add(new int[] {i, last});
      i = last;
    }
    return out;
  }

  /** The finest step in which distances are written, metres. */
  double stepM() {
    double least = Double.POSITIVE_INFINITY;
    for (int i = 1; i < size(); i++) {
      double step = countedM(i) - countedM(i - 1);
      least = step > 0 ? Math.min(least, step) : least;
    }
    return Double.isInfinite(least) ? 0 : least;
  }

  /** The finest step in which speeds are written, m/s. */
  double stepMps() {
    double[] all = speedMps.clone();
    Arrays.sort(all);
    double least = Double.POSITIVE_INFINITY;
    for (int i = 1; i < all.length; i++) {
      least = all[i] - all[i - 1] > 1e-9 ? Math.min(least, all[i] - all[i - 1]) : least;
    }
    return Double.isInfinite(least) ? 0 : least;
  }
}
