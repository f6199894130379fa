package gradepost.drive.bound;

import gradepost.drive.brake.TrainModels;
import gradepost.motion.PiecewiseLinear;
import gradepost.motion.Train;
import gradepost.motion.TrainBrake;
import gradepost.stock.RunningResistance;
import gradepost.stock.Stock;
import gradepost.stock.law.AdhesionLaw;
import gradepost.stock.law.BlockLaw;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.units.Exact;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;

/**
 * A leg and a train that may do more than the real one: any force of power up to the greatest of
 * all notches, at once; any force of the brake up to full, at once; no rounding, no rule on
 * movements. All forces are in newtons for each kilogram of inertia.
 *
 * @param fromM where the leg begins, distance run
 * @param toM where it ends
 * @param startMps speed at its beginning
 * @param endMps speed at its end
 * @param resistance of the train on level straight track; it does not fall with speed
 * @param track what gradient and curves hold back, against distance run
 * @param effort of power
 * @param brake the strongest there is
 * @param caps permissible speed, in the order of travel; the last one goes on
 */
public record RelaxedLeg(
    double fromM,
    double toM,
    double startMps,
    double endMps,
    RunningResistance resistance,
    PiecewiseLinear track,
    FallingForce effort,
    FallingForce brake,
    List<Cap> caps) {

  /** What a plan that stands its judge may be over the ceiling by, with room, m/s. */
  private static final double SLACK_MPS = 0.01;

  /**
   * Permissible speed up to a place.
   *
   * @param toM distance run
   */
  public record Cap(double toM, double mps) {}

  public RelaxedLeg {
    if (!(toM > fromM)) {
      throw new IllegalArgumentException("a leg goes forward: " + fromM + " to " + toM);
    }
    if (resistance.bNsPerM() < 0 || resistance.cNs2PerM2() < 0) {
      throw new IllegalArgumentException("resistance falls with speed: " + resistance);
    }
    caps = List.copyOf(caps);
  }

  /** From a stand at one place to a stand at another, as planned, under this ceiling. */
  public static RelaxedLeg between(
      Assignment assignment, TrainModels models, Ceiling ceiling, double fromM, double toM) {
    Train train = models.plannedTrain();
    double kg = train.inertiaKg();
    double fastest = assignment.stock().maximum().metresPerSecond() + 2 * SLACK_MPS;
    AdhesionLaw adhesion = assignment.policy().plannedAdhesion().law();
    List<TrainBrake> brakes = brakes(assignment, train);
    return new RelaxedLeg(
        fromM,
        toM,
        0,
        0,
        rising(train.resistance(), fastest, kg),
        share(models.plannedForce(), kg),
        new FallingForce(fastest, (low, high) -> effortN(train, adhesion, low, high) / kg),
        new FallingForce(fastest, (low, high) -> brakeN(brakes, low, high) / kg),
        ceiling.steps().stream()
            .map(step -> new Cap(step.toM(), step.speedMps() + SLACK_MPS))
            .toList());
  }

  private static PiecewiseLinear share(PiecewiseLinear force, double kg) {
    double[] x = new double[force.knots()];
    double[] y = new double[force.knots()];
    for (int i = 0; i < x.length; i++) {
      x[i] = force.x(i);
      y[i] = force.y(i) / kg;
    }
    return new PiecewiseLinear(x, y);
  }

  /** The greatest effort of any notch between two speeds; every law of adhesion is monotone. */
  private static double effortN(Train train, AdhesionLaw adhesion, double low, double high) {
    double most = 0;
    for (PiecewiseLinear notch : train.effort()) {
      most = Math.max(most, Math.max(notch.at(low), notch.at(high)));
      for (int i = 0; i < notch.knots(); i++) {
        boolean between = notch.x(i) > low && notch.x(i) < high;
        most = between ? Math.max(most, notch.y(i)) : most;
      }
    }
    double mu = Math.max(adhesion.mu(low), adhesion.mu(high));
    return Math.min(most, mu * train.motoredKg() * Exact.G);
  }

  /** All brakes of the stock, full, whatever adhesion bears. */
  private static double brakeN(List<TrainBrake> brakes, double low, double high) {
    double most = 0;
    for (TrainBrake brake : brakes) {
      double gain = Arrays.stream(brake.gainNPerPa()).sum();
      double pressed = brake.fullPa() - brake.thresholdPa();
      most = Math.max(most, gain * pressed * friction(brake.blocks(), low, high));
    }
    return most;
  }

  private static List<TrainBrake> brakes(Assignment assignment, Train train) {
    Stock stock = assignment.stock();
    return stock.brakes().stream()
        .map(
            system ->
                TrainBrake.of(
                    stock, assignment.formation(), assignment.load(), train, system, 1, 0))
        .toList();
  }

  /** The greatest friction between two speeds. */
  private static double friction(BlockLaw law, double low, double high) {
    DoubleStream corners =
        law.match(
            constant -> DoubleStream.empty(),
            castIron -> DoubleStream.empty(),
            table -> table.points().stream().mapToDouble(p -> p.speed().metresPerSecond()),
            steps -> steps.steps().stream().mapToDouble(s -> s.upTo().metresPerSecond()));
    return DoubleStream.concat(DoubleStream.of(low, high), corners.filter(v -> v > low && v < high))
        .map(law::friction)
        .max()
        .orElseThrow();
  }

  /** No more than this resistance up to a speed, and without a term that falls with speed. */
  private static RunningResistance rising(RunningResistance all, double fastest, double kg) {
    double falling =
        fastest * (Math.min(0, all.bNsPerM()) + fastest * Math.min(0, all.cNs2PerM2()));
    return new RunningResistance(
        (all.aN() + falling) / kg,
        Math.max(0, all.bNsPerM()) / kg,
        Math.max(0, all.cNs2PerM2()) / kg);
  }
}
