package gradepost.motion;

import gradepost.stock.BrakeSystem;
import gradepost.stock.Formation;
import gradepost.stock.LoadCase;
import gradepost.stock.PipeLaw;
import gradepost.stock.StatedBrakeForce;
import gradepost.stock.Stock;
import gradepost.stock.law.BlockLaw;
import gradepost.units.Length;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * One brake system on one train, as numbers.
 *
 * @param deadTimeS from the demand until a cylinder answers that has no pipe before its valve
 * @param delayS of each vehicle after that: until the application has come to its valve
 * @param applyPaPerS how fast cylinders fill
 * @param releasePaPerS how fast they empty
 * @param gradualRelease whether a lower demand than the present one can be met without a full
 *     release
 * @param thresholdPa pressure that the return springs take
 * @param fullPa full service
 * @param gainNPerPa brake force of each vehicle for each pascal above the threshold, at friction 1;
 *     0 where the brake is isolated
 * @param reservoir empty where the reservoirs are always full
 */
@SuppressWarnings(
    "ArrayRecordComponent") // plain numbers for the inner loop; the same only as itself
public record TrainBrake(
    double deadTimeS,
    double[] delayS,
    double applyPaPerS,
    double releasePaPerS,
    boolean gradualRelease,
    double thresholdPa,
    double fullPa,
    double[] gainNPerPa,
    BlockLaw blocks,
    Optional<Reservoir> reservoir) {
  private static final double AT_ONCE_S = 1e-6;

  /** Reservoirs that must fill again after a release. */
  public record Reservoir(PipeLaw law, double rechargePaPerS) {}

  /**
   * Puts a brake system on a train.
   *
   * @param factor share of the stated force that is counted on
   * @param isolatedShare share of the vehicles that do not brake: whole vehicles, rounded up, those
   *     with the strongest brakes, of equal ones the heaviest (on a poor rail they hold most), of
   *     these the foremost. The others then answer as late as if the foremost were isolated: no
   *     choice of so many vehicles gives less force, or later. Vehicles on which this brake does
   *     not work are none of them: they come on top
   */
  public static TrainBrake of(
      Stock stock,
      Formation formation,
      LoadCase load,
      Train train,
      BrakeSystem system,
      double factor,
      double isolatedShare) {
    int n = train.vehicles();
    double[] delay = new double[n];
    double[] valves = formation.valvesM();
    for (int i = 0; i < n; i++) {
      delay[i] = system.action().along(valves[i]).seconds();
    }
    StatedBrakeForce force = stock.force(system);
    double gain = factor * gain(force, stock, formation, load);
    int[] working =
        IntStream.range(0, n).filter(i -> formation.brakes().get(i).has(system.role())).toArray();
    int isolated = Math.min(formation.wholeVehicles(isolatedShare), working.length);
    boolean[] off = strongest(train, working, isolated);
    double[] gains = new double[n];
    double[] answers = delay.clone();
    int last = isolated;
    for (int i : working) {
      if (!off[i]) {
        gains[i] = gain * train.brakeShare()[i];
        answers[i] = delay[working[last++]];
      }
    }
    return new TrainBrake(
        system.action().deadTime(new Length(train.totalLengthM())).seconds(),
        answers,
        system.application().pascalsPerSecond(),
        system.release().pascalsPerSecond(),
        system.gradualRelease(),
        force.threshold().pascals(),
        system.full().pascals(),
        gains,
        force.blocks(),
        system
            .recharge()
            .map(rate -> new Reservoir(system.pipe().orElseThrow(), rate.pascalsPerSecond())));
  }

  private static boolean[] strongest(Train train, int[] working, int count) {
    boolean[] off = new boolean[train.vehicles()];
    IntStream.of(working)
        .boxed()
        .sorted(
            Comparator.<Integer>comparingDouble(i -> -train.brakeShare()[i])
                .thenComparing(i -> -train.massKg()[i])
                .thenComparing(i -> i))
        .limit(count)
        .forEach(i -> off[i] = true);
    return off;
  }

  /** Newtons for each pascal above the threshold, whole train, at friction 1. */
  private static double gain(
      StatedBrakeForce force, Stock stock, Formation formation, LoadCase load) {
    double statedInertia = Train.of(stock, formation, force.statedLoad()).inertiaKg();
    double from = force.statedFrom().metresPerSecond();
    double pressure = force.statedPressure().pascals() - force.threshold().pascals();
    double gain =
        statedInertia
            * force.meanDeceleration().metresPerSecond2()
            * 2
            * BlockCurve.of(force.blocks()).speedOverFriction(from)
            / (from * from * pressure);
    if (!force.loadCompensated()) {
      return gain;
    }
    return gain * Train.of(stock, formation, load).inertiaKg() / statedInertia;
  }

  /**
   * The same brake with its build-up as a step: nothing until half the time of filling to full has
   * passed, then all of it (the equivalent response of EN 14531-1 and SUBSET-026 3.13.2.2.3). On
   * level track never shorter than the ramp that it stands for.
   */
  public TrainBrake asStep() {
    double fillS = (fullPa - thresholdPa) / applyPaPerS;
    double toThresholdS = thresholdPa / applyPaPerS;
    return new TrainBrake(
        deadTimeS + toThresholdS + fillS / 2,
        delayS,
        fullPa / AT_ONCE_S,
        releasePaPerS,
        gradualRelease,
        thresholdPa,
        fullPa,
        gainNPerPa,
        blocks,
        reservoir);
  }

  /** Longest delay of any vehicle. */
  public double lastDelayS() {
    double last = 0;
    for (double d : delayS) {
      last = Math.max(last, d);
    }
    return last;
  }

  /** The same brake with other gains and another rate of filling. */
  public TrainBrake with(double[] otherGainNPerPa, double otherApplyPaPerS) {
    return new TrainBrake(
        deadTimeS,
        delayS,
        otherApplyPaPerS,
        releasePaPerS,
        gradualRelease,
        thresholdPa,
        fullPa,
        otherGainNPerPa,
        blocks,
        reservoir);
  }
}
