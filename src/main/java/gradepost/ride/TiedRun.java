package gradepost.ride;

import gradepost.motion.EvenChange;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A recorded run laid on the road: each line of the export with its place on the path, its speed by
 * the scale of its leg, and how well both are known.
 */
public final class TiedRun {
  private final List<Leg> legs;
  private final int unfit;
  private final int glitches;
  private final double[] timeS;
  private final double[] atM;
  private final double[] speedMps;
  private final double[] withinM;
  private final double[] withinMps;
  private final boolean[] known;
  private final boolean[] gap;
  private final List<Ride.Sample> samples;

  TiedRun(
      List<Leg> legs,
      int unfit,
      int glitches,
      double[] timeS,
      double[] atM,
      double[] speedMps,
      double[] withinM,
      double[] withinMps,
      boolean[] known,
      boolean[] gap,
      List<Ride.Sample> samples) {
    this.legs = List.copyOf(legs);
    this.unfit = unfit;
    this.glitches = glitches;
    this.timeS = timeS;
    this.atM = atM;
    this.speedMps = speedMps;
    this.withinM = withinM;
    this.withinMps = withinMps;
    this.known = known;
    this.gap = gap;
    this.samples = List.copyOf(samples);
  }

  /** From stand to stand. */
  public List<Leg> legs() {
    return legs;
  }

  /** How many places that were noted as passed do not fit the stands. */
  public int unfit() {
    return unfit;
  }

  /** Lines whose speed no train can have had between the two beside them. */
  public int glitches() {
    return glitches;
  }

  /** How many lines there are. */
  public int size() {
    return atM.length;
  }

  /** Seconds since the first line. */
  public double timeS(int i) {
    return timeS[i];
  }

  /** Distance run of the front on the path, metres. */
  public double atM(int i) {
    return atM[i];
  }

  /** By the scale of the leg. */
  public double speedMps(int i) {
    return speedMps[i];
  }

  /** The place of a line may be wrong by as much. */
  double withinM(int i) {
    return withinM[i];
  }

  /** Its speed may be wrong by as much. */
  double withinMps(int i) {
    return withinMps[i];
  }

  /** Whether brake pressures were recorded. */
  public boolean pressures() {
    return samples.stream().anyMatch(s -> s.pressurePa().isPresent());
  }

  Optional<Double> pressurePa(int i) {
    return samples.get(i).pressurePa();
  }

  Optional<Integer> notch(int i) {
    return samples.get(i).notch();
  }

  /** Whether nothing was recorded between a line and the one before it. */
  boolean gapBefore(int i) {
    return gap[i];
  }

  /** Whether the leg of a line has a scale that is trusted. */
  boolean known(int i) {
    return known[i];
  }

  /** Where it begins. */
  public double firstM() {
    return atM[0];
  }

  /** Where the run ends, distance run of the front, metres. */
  public double lastM() {
    return atM[atM.length - 1];
  }

  /** The first line at or behind a place. */
  int firstAt(double m) {
    int found = Arrays.binarySearch(atM, m);
    int i = found >= 0 ? found : -found - 1;
    while (i > 0 && atM[i - 1] >= m) {
      i--;
    }
    return i;
  }

  /** Whether the run is known all along a stretch: no gap in it, and a scale that is trusted. */
  boolean observed(double fromM, double toM) {
    if (fromM < firstM() || toM > lastM()) {
      return false;
    }
    int from = Math.max(0, firstAt(fromM) - 1);
    int to = Math.min(size() - 1, firstAt(toM));
    for (int i = from; i <= to; i++) {
      boolean within = i > from || atM[i] >= fromM;
      if ((within && !known[i]) || (i > from && gap[i])) {
        return false;
      }
    }
    return true;
  }

  /** Stretches along which nothing was recorded, each from and to a place. */
  public List<double[]> gaps() {
    List<double[]> out = new ArrayList<>();
    for (int i = 1; i < size(); i++) {
      if (gap[i]) {
        out.add(new double[] {atM[i - 1], atM[i]});
      }
    }
    return out;
  }

  /** Speed at a place, and within what it is known. */
  Measured speedAt(double m) {
    int i = Math.min(Math.max(1, firstAt(m)), size() - 1);
    if (atM[i] <= atM[i - 1]) {
      return new Measured(speedMps[i], withinMps[i]);
    }
    double on = Math.min(Math.max(m, atM[i - 1]), atM[i]);
    double mps = EvenChange.speedMps(atM[i - 1], speedMps[i - 1], atM[i], speedMps[i], on);
    return new Measured(mps, Math.max(withinMps[i - 1], withinMps[i]));
  }

  /** When the front was at a place, seconds since the first line; between two lines evenly. */
  double timeAt(double m) {
    int i = Math.min(Math.max(1, firstAt(m)), size() - 1);
    double share = atM[i] > atM[i - 1] ? (m - atM[i - 1]) / (atM[i] - atM[i - 1]) : 1;
    return timeS[i - 1] + Math.min(1, Math.max(0, share)) * (timeS[i] - timeS[i - 1]);
  }

  /** Within what a place there is known. */
  double withinAt(double m) {
    int i = Math.min(Math.max(1, firstAt(m)), size() - 1);
    return Math.max(withinM[i - 1], withinM[i]);
  }
}
