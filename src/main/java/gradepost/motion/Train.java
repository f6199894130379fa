package gradepost.motion;

import gradepost.stock.Formation;
import gradepost.stock.LoadCase;
import gradepost.stock.Notch;
import gradepost.stock.RunningResistance;
import gradepost.stock.Stock;
import gradepost.stock.Vehicle;
import gradepost.units.Exact;
import java.util.List;

/**
 * A formation loaded so, as numbers.
 *
 * @param massKg of each vehicle, leading one first
 * @param lengthM of each vehicle
 * @param inertiaKg mass of the whole train and of its rotating parts
 * @param motoredKg mass on driven axles, whole train
 * @param motoredVehicleKg of that, each vehicle's
 * @param brakeShare share of the train's brake force of each vehicle; together 1
 * @param effort by notch: tractive effort of the whole train against speed
 */
@SuppressWarnings(
    "ArrayRecordComponent") // plain numbers for the inner loop; the same only as itself
public record Train(
    double[] massKg,
    double[] lengthM,
    double inertiaKg,
    double motoredKg,
    double[] motoredVehicleKg,
    double[] brakeShare,
    RunningResistance resistance,
    List<PiecewiseLinear> effort) {
  /** Over this much speed an effort that ends above zero falls to it. */
  private static final double CUT_OFF_MPS = 0.01;

  /** The numbers of a formation under a load. */
  public static Train of(Stock stock, Formation formation, LoadCase load) {
    List<Vehicle> vehicles = formation.vehicles();
    int n = vehicles.size();
    double[] mass = new double[n];
    double[] length = new double[n];
    double[] share = new double[n];
    double inertia = 0;
    double motored = 0;
    double[] motoredOf = new double[n];
    double weights = vehicles.stream().mapToDouble(Vehicle::brakeWeight).sum();
    for (int i = 0; i < n; i++) {
      Vehicle vehicle = vehicles.get(i);
      mass[i] = vehicle.massKg(load);
      length[i] = vehicle.length().metres();
      share[i] = vehicle.brakeWeight() / weights;
      inertia += vehicle.inertiaKg(load);
      motoredOf[i] = mass[i] * vehicle.motoredShare();
      motored += motoredOf[i];
    }
    long motors = formation.motoredVehicles();
    return new Train(
        mass,
        length,
        inertia,
        motored,
        motoredOf,
        share,
        stock.resistance().of(formation, load),
        stock.traction().notches().stream().map(notch -> wholeTrain(notch, motors)).toList());
  }

  private static PiecewiseLinear wholeTrain(Notch notch, long motors) {
    int n = notch.effort().size();
    double lastV = notch.effort().get(n - 1).speed().metresPerSecond();
    double[] v = new double[n + 3];
    double[] f = new double[n + 3];
    v[0] = -1;
    f[0] = notch.effort().get(0).effort().newtons() * motors;
    int k = 1;
    for (int i = 0; i < n; i++) {
      double at = notch.effort().get(i).speed().metresPerSecond();
      v[k] = at;
      f[k++] = notch.effort().get(i).effort().newtons() * motors;
    }
    if (f[k - 1] != 0) {
      v[k++] = lastV + CUT_OFF_MPS;
    }
    v[k] = v[k - 1] + 1;
    k++;
    return new PiecewiseLinear(java.util.Arrays.copyOf(v, k), java.util.Arrays.copyOf(f, k));
  }

  /** How many vehicles there are. */
  public int vehicles() {
    return massKg.length;
  }

  /** Length over couplers, metres. */
  public double totalLengthM() {
    double sum = 0;
    for (double l : lengthM) {
      sum += l;
    }
    return sum;
  }

  /** Mass without what turns, kilograms. */
  public double totalMassKg() {
    double sum = 0;
    for (double m : massKg) {
      sum += m;
    }
    return sum;
  }

  /** Weight of the whole train in newtons. */
  public double weightN() {
    return totalMassKg() * Exact.G;
  }
}
