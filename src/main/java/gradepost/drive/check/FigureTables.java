package gradepost.drive.check;

import gradepost.drive.brake.TrainModels;
import gradepost.motion.ForceBalance;
import gradepost.motion.PiecewiseLinear;
import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import gradepost.motion.StopReason;
import gradepost.motion.TrackForce;
import gradepost.motion.Train;
import gradepost.motion.TrainBrake;
import gradepost.plan.TrainFigures;
import gradepost.stock.BrakeSystem;
import gradepost.stock.PipeLaw;
import gradepost.stock.RunningResistance;
import gradepost.stock.law.AdhesionLaw;
import gradepost.task.Assignment;
import gradepost.units.UnitStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/** Works out what the train does by itself. */
public final class FigureTables {
  private static final double[] PERMILLE = {-10, -5, 0, 5, 10, 1000.0 / 60};

  private final Assignment assignment;
  private final TrainModels bench;
  private final AdhesionLaw adhesion;
  private final double stepMps;
  private final double topMps;

  public FigureTables(Assignment assignment, TrainModels bench) {
    this.assignment = assignment;
    this.bench = bench;
    this.adhesion = assignment.policy().plannedAdhesion().law();
    UnitStyle units = assignment.route().units();
    this.stepMps = (units == UnitStyle.MILES ? 10 : 20) * units.speedUnitMps();
    this.topMps = assignment.stock().maximum().metresPerSecond();
  }

  /** The figures of the train page. */
  public TrainFigures figures() {
    return new TrainFigures(balancing(), reaching(), stops(), pipe());
  }

  private List<TrainFigures.Balance> balancing() {
    List<TrainFigures.Balance> all = new ArrayList<>();
    ForceBalance balance = bench.plannedBalance();
    for (int n = -1; n < bench.plannedTrain().effort().size(); n++) {
      for (double permille : PERMILLE) {
        double mps = balance.balancingMps(n, permille);
        all.add(new TrainFigures.Balance(n, permille, mps));
      }
    }
    return all;
  }

  private List<TrainFigures.Reach> reaching() {
    List<TrainFigures.Reach> all = new ArrayList<>();
    Train train = bench.plannedTrain();
    double perNotch = assignment.stock().traction().timePerNotch().seconds();
    for (int n = 0; n < train.effort().size(); n++) {
      double attainable = Math.min(topMps, bench.plannedBalance().balancingMps(n, 0));
      for (double v = 2 * stepMps; v <= attainable - 0.2; v += stepMps) {
        Stepper stepper = onGradient(train, train.resistance(), 0);
        StopConditions until = new StopConditions();
        stepper.power(0);
        for (int k = 1; k <= n; k++) {
          stepper.advance(until.clear().time(stepper.timeS() + perNotch));
          stepper.power(k);
        }
        if (stepper.advance(until.clear().speedUp(v)) == StopReason.SPEED_UP) {
          all.add(new TrainFigures.Reach(n, v, stepper.atM(), stepper.timeS()));
        }
      }
    }
    return all;
  }

  private List<TrainFigures.FullStop> stops() {
    List<TrainFigures.FullStop> all = new ArrayList<>();
    Train train = bench.worstTrain();
    for (BrakeSystem system : assignment.stock().brakes()) {
      TrainBrake rig = bench.worstRig(system);
      for (double permille : gradients()) {
        for (double v = stepMps; v <= topMps + 0.2; v += stepMps) {
          Stepper stepper = onGradient(train, new RunningResistance(0, 0, 0), permille);
          stepper.place(0, 0, v);
          stepper.brake(rig, rig.fullPa());
          StopReason ended = stepper.advance(new StopConditions());
          double distance =
              ended == StopReason.STANDSTILL ? stepper.atM() : Double.POSITIVE_INFINITY;
          all.add(new TrainFigures.FullStop(system, permille, v, distance));
        }
      }
    }
    return all;
  }

  /** Level, and the steepest fall and rise of the route in this direction. */
  private List<Double> gradients() {
    PiecewiseLinear height = bench.track().elevation();
    double steepest = 0;
    double rise = 0;
    for (int i = 0; i < height.knots() - 1; i++) {
      steepest = Math.min(steepest, height.slope(i) * 1000);
      rise = Math.max(rise, height.slope(i) * 1000);
    }
    TreeSet<Double> all = new TreeSet<>(List.of(steepest, 0.0, rise));
    return List.copyOf(all);
  }

  private Stepper onGradient(Train train, RunningResistance resistance, double permille) {
    double hold = TrackForce.onGradientN(train, permille);
    PiecewiseLinear force =
        new PiecewiseLinear(new double[] {-1, 0, 1}, new double[] {hold, hold, hold});
    Stepper stepper = new Stepper(train, resistance, force, adhesion);
    stepper.place(0, 0, 0);
    return stepper;
  }

  private List<TrainFigures.Reduction> pipe() {
    List<TrainFigures.Reduction> all = new ArrayList<>();
    double step = 5 * assignment.route().units().pressureStepPa();
    for (BrakeSystem system : assignment.stock().brakes()) {
      if (system.pipe().isPresent()) {
        PipeLaw law = system.pipe().get();
        double full = law.fullReductionPa();
        for (double r = step; r < full - step / 10; r += step) {
          all.add(reading(system, law, r));
        }
        all.add(reading(system, law, full));
      }
    }
    return all;
  }

  private static TrainFigures.Reduction reading(BrakeSystem system, PipeLaw law, double r) {
    double cylinder = Math.min(law.cylinderPa(r), system.full().pascals());
    return new TrainFigures.Reduction(system, r, law.pipe().pascals() - r, cylinder);
  }
}
