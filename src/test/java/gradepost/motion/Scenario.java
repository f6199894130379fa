package gradepost.motion;

import gradepost.route.CheckRail;
import gradepost.route.Curve;
import gradepost.route.GradientPiece;
import gradepost.route.Path;
import gradepost.route.Route;
import gradepost.route.Stretch;
import gradepost.route.place.Direction;
import gradepost.route.place.Extent;
import gradepost.route.place.Hand;
import gradepost.route.place.Location;
import gradepost.route.place.Section;
import gradepost.stock.BrakeAction;
import gradepost.stock.BrakeControl;
import gradepost.stock.BrakeSystem;
import gradepost.stock.ConstantResistance;
import gradepost.stock.Davis1926;
import gradepost.stock.EffortPoint;
import gradepost.stock.Formation;
import gradepost.stock.LoadCase;
import gradepost.stock.Notch;
import gradepost.stock.QuadraticResistance;
import gradepost.stock.Railcar1936;
import gradepost.stock.ResistanceLaw;
import gradepost.stock.RotatingMass;
import gradepost.stock.StatedBrakeForce;
import gradepost.stock.Stock;
import gradepost.stock.Traction;
import gradepost.stock.Vehicle;
import gradepost.stock.law.AdhesionLaw;
import gradepost.stock.law.BlockLaw;
import gradepost.stock.law.CastIronKarwatzki;
import gradepost.stock.law.ConstantAdhesion;
import gradepost.stock.law.ConstantBlocks;
import gradepost.stock.law.CurtiusKniffler;
import gradepost.stock.law.CurveResistance;
import gradepost.stock.law.DegreeCurveResistance;
import gradepost.stock.law.FrictionTable;
import gradepost.stock.law.InverseRadiusCurveResistance;
import gradepost.stock.law.NoCurveResistance;
import gradepost.stock.law.RocklCurveResistance;
import gradepost.stock.law.ShareOf;
import gradepost.units.Acceleration;
import gradepost.units.Force;
import gradepost.units.Gradient;
import gradepost.units.Length;
import gradepost.units.Mass;
import gradepost.units.Mileage;
import gradepost.units.Pressure;
import gradepost.units.PressureRate;
import gradepost.units.Span;
import gradepost.units.Speed;
import gradepost.units.UnitStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/**
 * A random but legal route and train, by a seed: the plain figures, and the project's own values
 * made from them.
 */
final class Scenario {
  static final double LENGTH_M = 16_000;

  final Random random;
  final double[] slopeEndM;
  final double[] permille;
  final List<CurvePiece> curves = new ArrayList<>();
  final Stock stock;
  final Formation formation;
  final LoadCase load;
  final AdhesionLaw adhesion;
  final List<Stretch> poor = new ArrayList<>();
  final AdhesionLaw poorLaw = new ConstantAdhesion(0.03);

  /** Share of the stated brake force that is counted on, and of the vehicles that are isolated. */
  final double factor;

  final double isolatedShare;

  Scenario(long seed) {
    random = new Random(seed * 7919 + 17);
    List<Double> ends = new ArrayList<>();
    double at = 0;
    while (at < LENGTH_M) {
      at = Math.min(LENGTH_M, at + between(60, 1500));
      ends.add(at);
    }
    slopeEndM = ends.stream().mapToDouble(Double::doubleValue).toArray();
    permille = new double[slopeEndM.length];
    for (int i = 0; i < permille.length; i++) {
      permille[i] = random.nextInt(4) == 0 ? 0 : between(-18, 18);
    }
    at = between(0, 400);
    while (at < LENGTH_M - 1000) {
      double length = between(60, 700);
      curves.add(new CurvePiece(at, at + length, between(120, 1800), random.nextInt(5) == 0));
      at += length + between(10, 900);
    }
    if (random.nextInt(3) == 0) {
      for (int i = 0; i < 3; i++) {
        double from = between(1000, 14_000);
        poor.add(new Stretch(from, from + between(50, 900)));
      }
    }
    adhesion = adhesion();
    load = LoadCase.values()[random.nextInt(3)];
    formation = formation();
    stock = stock(formation);
    Random leaning = new Random(seed * 104_729 + 5);
    boolean leans = leaning.nextBoolean() && formation.cars() > 1;
    factor = leans ? 0.5 + 0.5 * leaning.nextDouble() : 1;
    isolatedShare = leans ? leaning.nextDouble() * (1 - 1.0 / formation.cars()) : 0;
  }

  double between(double low, double high) {
    return low + random.nextDouble() * (high - low);
  }

  private AdhesionLaw adhesion() {
    return switch (random.nextInt(4)) {
      case 0 -> new ConstantAdhesion(between(0.06, 0.3));
      case 1 -> new ShareOf(new CurtiusKniffler(), between(0.2, 0.7));
      default -> new CurtiusKniffler();
    };
  }

  private Formation formation() {
    List<Vehicle> list = new ArrayList<>();
    int cars = 1 + random.nextInt(12);
    int kinds = 1 + random.nextInt(3);
    List<Vehicle> types = new ArrayList<>();
    Random more = new Random(cars);
    for (int i = 0; i < kinds; i++) {
      double tare = between(14, 60);
      types.add(
          new Vehicle(
              "K" + i,
              new Length(between(10, 26)),
              Mass.ofTonnes(tare),
              Mass.ofTonnes(tare * 1.1),
              Mass.ofTonnes(tare * 1.25),
              4,
              i == 0 ? between(0.4, 1) : 0,
              more.nextInt(3) > 0
                  ? new RotatingMass.ShareOfTare(between(0.02, 0.12))
                  : new RotatingMass.Stated(Mass.ofTonnes(tare * between(0.02, 0.12))),
              between(0.8, 1.2),
              more.nextBoolean()
                  ? Optional.empty()
                  : Optional.of(new Length(10 * more.nextDouble()))));
    }
    for (int i = 0; i < cars; i++) {
      list.add(types.get(i == 0 ? 0 : random.nextInt(kinds)));
    }
    return new Formation("random", list);
  }

  private ResistanceLaw resistance() {
    return switch (random.nextInt(4)) {
      case 0 -> new QuadraticResistance(between(8, 25), between(0, 0.4), 6, between(0.5, 2));
      case 1 -> new ConstantResistance(between(20, 50));
      case 2 -> new Davis1926(120, 34);
      default -> new Railcar1936(10);
    };
  }

  private CurveResistance curveLaw() {
    return switch (random.nextInt(4)) {
      case 0 -> new RocklCurveResistance();
      case 1 -> new DegreeCurveResistance(0.8);
      case 2 -> new InverseRadiusCurveResistance(between(500, 800));
      default -> new NoCurveResistance();
    };
  }

  private BlockLaw blocks() {
    return switch (random.nextInt(3)) {
      case 0 -> new ConstantBlocks();
      case 1 -> new CastIronKarwatzki();
      default -> FrictionTable.galton();
    };
  }

  private Stock stock(Formation train) {
    double full = between(2.5e5, 4.5e5);
    BrakeAction action =
        random.nextBoolean()
            ? new BrakeAction.Simultaneous(new Span(between(0, 1)))
            : new BrakeAction.Propagated(new Span(between(0, 1)), new Speed(between(100, 280)));
    BrakeSystem system =
        new BrakeSystem(
            "brake",
            "B",
            BrakeSystem.Role.SERVICE,
            action,
            new PressureRate(full / between(1, 8)),
            new PressureRate(full / between(1, 15)),
            random.nextInt(3) > 0,
            new BrakeControl.Continuous(),
            new Pressure(full),
            Optional.empty());
    List<Notch> notches = new ArrayList<>();
    double peak = between(20_000, 60_000);
    for (int i = 1; i <= 3; i++) {
      double base = between(2, 5) * i;
      notches.add(
          new Notch(
              "N" + i,
              List.of(
                  new EffortPoint(new Speed(0), new Force(peak * (0.4 + 0.2 * i))),
                  new EffortPoint(new Speed(base), new Force(peak * (0.4 + 0.2 * i))),
                  new EffortPoint(new Speed(base * 1.6), new Force(peak * 0.5)),
                  new EffortPoint(new Speed(base * 3), new Force(peak * 0.2)),
                  new EffortPoint(new Speed(base * 6), new Force(0)))));
    }
    return new Stock(
        "random",
        "",
        List.of(),
        Speed.ofKmh(160),
        train.vehicles(),
        List.of(train),
        resistance(),
        curveLaw(),
        random.nextBoolean() ? between(0, 3) : 0,
        new Traction(notches, new Span(1), true),
        new StatedBrakeForce(
            new Acceleration(between(0.5, 1.2)),
            Speed.ofKmh(between(60, 120)),
            new Pressure(full),
            LoadCase.TARE,
            new Pressure(random.nextBoolean() ? between(0, 3e4) : 0),
            blocks(),
            random.nextBoolean()),
        List.of(system),
        List.of());
  }

  /**
   * The route with lineside mileages: two sections, the second with a datum of its own and falling.
   */
  Route route() {
    double seam = slopeEndM[slopeEndM.length / 2];
    Section first = new Section("A", new Mileage(3000), new Mileage(3000 + seam));
    Section second = new Section("B", new Mileage(90_000), new Mileage(90_000 - (LENGTH_M - seam)));
    List<GradientPiece> gradients = new ArrayList<>();
    double from = 0;
    for (int i = 0; i < permille.length; i++) {
      Extent extent = new Extent(place(from, seam, true), place(slopeEndM[i], seam, false));
      gradients.add(new GradientPiece(extent, new Gradient(permille[i])));
      from = slopeEndM[i];
    }
    List<Curve> list = new ArrayList<>();
    for (CurvePiece curve : curves) {
      list.add(
          new Curve(
              new Extent(place(curve.fromM(), seam, true), place(curve.toM(), seam, false)),
              Hand.LEFT,
              new Length(curve.radiusM()),
              new Length(0.1),
              curve.checkRailed() ? CheckRail.LOW_RAIL : CheckRail.NONE));
    }
    return new Route(
        "random",
        "",
        UnitStyle.METRIC,
        "Down",
        "Up",
        "",
        List.of(first, second),
        List.of(),
        gradients,
        list,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of());
  }

  private static Location place(double m, double seam, boolean begins) {
    boolean first = begins ? m < seam : m <= seam;
    return first
        ? new Location("A", new Mileage(3000 + m))
        : new Location("B", new Mileage(90_000 - (m - seam)));
  }

  Track track() {
    return Track.of(new Path(route(), Direction.FORWARD));
  }

  Train train() {
    return Train.of(stock, formation, load);
  }

  LowAdhesionRail poorRail() {
    return new LowAdhesionRail(poorLaw, poor);
  }

  TrainBrake rig() {
    return TrainBrake.of(stock, formation, load, train(), stock.service(), factor, isolatedShare);
  }

  Stepper stepper() {
    return stepper(track());
  }

  Stepper stepper(Track track) {
    Train train = train();
    return new Stepper(
        train,
        train.resistance(),
        TrackForce.of(track, train, stock.curves(), stock.checkRailDragNPerKn()),
        adhesion,
        poorRail());
  }
}
