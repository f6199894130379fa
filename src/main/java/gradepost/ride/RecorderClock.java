package gradepost.ride;

import gradepost.ride.Ride.Sample;
import java.util.List;

/**
 * When each line of an export was written. A clock that jitters may put a line before the one that
 * it follows: those are drawn together to their mean. An export without a clock has the times that
 * its distances take at their speeds; what it stood is then not known.
 */
final class RecorderClock {
  /** Slower than this no time is worked out from a distance. */
  private static final double SLOWEST_MPS = 0.05;

  static double[] timeS(List<Sample> samples) {
    return samples.stream().allMatch(s -> s.timeS().isPresent())
        ? rising(samples.stream().mapToDouble(s -> s.timeS().orElseThrow()).toArray())
        : reckoned(samples);
  }

  private static double[] reckoned(List<Sample> samples) {
    double[] out = new double[samples.size()];
    for (int i = 1; i < out.length; i++) {
      Sample a = samples.get(i - 1);
      Sample b = samples.get(i);
      double mean = Math.max(SLOWEST_MPS, (a.speedMps() + b.speedMps()) / 2);
      out[i] = out[i - 1] + (b.countedM() - a.countedM()) / mean;
    }
    return out;
  }

  /** The nearest times that do not fall, by the squares (neighbours that fall have their mean). */
  private static double[] rising(double[] times) {
    int[] length = new int[times.length];
    double[] mean = new double[times.length];
    int blocks = 0;
    for (double time : times) {
      mean[blocks] = time;
      length[blocks] = 1;
      blocks++;
      while (blocks > 1 && mean[blocks - 2] > mean[blocks - 1]) {
        int together = length[blocks - 2] + length[blocks - 1];
        mean[blocks - 2] =
            (mean[blocks - 2] * length[blocks - 2] + mean[blocks - 1] * length[blocks - 1])
                / together;
        length[blocks - 2] = together;
        blocks--;
      }
    }
    double[] out = new double[times.length];
    int k = 0;
    for (int b = 0; b < blocks; b++) {
      for (int i = 0; i < length[b]; i++) {
        out[k++] = mean[b];
      }
    }
    return out;
  }

  private RecorderClock() {}
}
