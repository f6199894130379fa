package gradepost.drive;

import gradepost.policy.AdhesionCase;
import gradepost.policy.Margins;
import gradepost.policy.Policy;
import gradepost.policy.RunRules;
import gradepost.policy.SafeSide;
import gradepost.policy.Technique;
import gradepost.policy.TerminalStep;
import gradepost.route.Board;
import gradepost.route.BoardKind;
import gradepost.route.CheckRail;
import gradepost.route.Curve;
import gradepost.route.GradientPiece;
import gradepost.route.Landmark;
import gradepost.route.PermanentRestriction;
import gradepost.route.Route;
import gradepost.route.RunningLine;
import gradepost.route.place.Applies;
import gradepost.route.place.Direction;
import gradepost.route.place.Extent;
import gradepost.route.place.Hand;
import gradepost.route.place.Location;
import gradepost.route.place.Section;
import gradepost.route.station.Platform;
import gradepost.route.station.Station;
import gradepost.route.station.StopMark;
import gradepost.stock.BrakeAction;
import gradepost.stock.BrakeControl;
import gradepost.stock.BrakeSystem;
import gradepost.stock.EffortPoint;
import gradepost.stock.Formation;
import gradepost.stock.LoadCase;
import gradepost.stock.Notch;
import gradepost.stock.PipeLaw;
import gradepost.stock.QuadraticResistance;
import gradepost.stock.RotatingMass;
import gradepost.stock.StatedBrakeForce;
import gradepost.stock.Stock;
import gradepost.stock.Traction;
import gradepost.stock.Vehicle;
import gradepost.stock.law.AdhesionLaw;
import gradepost.stock.law.ConstantAdhesion;
import gradepost.stock.law.ConstantBlocks;
import gradepost.stock.law.CurtiusKniffler;
import gradepost.stock.law.RocklCurveResistance;
import gradepost.stock.law.ShareOf;
import gradepost.task.Assignment;
import gradepost.task.Call;
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
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** An invented line of five miles and four stations, and an invented unit, for tests. */
public final class Mill {
  private static final String LINE = "Mill line";

  public static Location at(double miles, double chains) {
    return new Location(LINE, Mileage.ofMilesChains(miles, chains));
  }

  static Extent extent(double m1, double c1, double m2, double c2) {
    return new Extent(at(m1, c1), at(m2, c2));
  }

  public static Route route() {
    return new Route(
        "Mill line",
        "invented",
        UnitStyle.MILES,
        "Down",
        "Up",
        "quarter mile posts",
        List.of(new Section(LINE, Mileage.ofMilesChains(0, 0), Mileage.ofMilesChains(5, 0))),
        List.of(
            new RunningLine("Single", List.of(), Set.of(Direction.FORWARD, Direction.BACKWARD))),
        List.of(
            new GradientPiece(extent(0, 0, 0, 20), new Gradient(0)),
            new GradientPiece(extent(0, 20, 1, 0), Gradient.falling(66)),
            new GradientPiece(extent(1, 0, 1, 60), Gradient.rising(80)),
            new GradientPiece(extent(1, 60, 2, 40), new Gradient(0)),
            new GradientPiece(extent(2, 40, 3, 40), Gradient.falling(60)),
            new GradientPiece(extent(3, 40, 4, 20), Gradient.rising(100)),
            new GradientPiece(extent(4, 20, 5, 0), Gradient.falling(200))),
        List.of(
            new Curve(
                extent(1, 70, 2, 10),
                Hand.LEFT,
                Length.ofChains(10),
                new Length(0.1),
                CheckRail.LOW_RAIL),
            new Curve(
                extent(3, 30, 3, 50),
                Hand.RIGHT,
                Length.ofChains(25),
                new Length(0.08),
                CheckRail.NONE)),
        List.of(
            restriction("line", extent(0, 0, 5, 0), 60),
            restriction("Mill curve", extent(1, 65, 2, 12), 25),
            restriction("Harbour yard", extent(4, 40, 5, 0), 30)),
        List.of(),
        List.of(
            station("Top", 0, 5, 0, 15, false),
            station("Mill", 2, 20, 2, 30, false),
            station("Ford", 3, 55, 3, 65, false),
            station("Quay", 4, 68, 4, 78, true)),
        List.of(),
        landmarks(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of());
  }

  private static List<Landmark> landmarks() {
    List<Landmark> all = new ArrayList<>();
    for (int chains = 10; chains < 400; chains += 11) {
      all.add(
          new Landmark(
              "hut " + chains,
              at(0, chains),
              Applies.EVERYWHERE,
              Hand.LEFT,
              chains % 2 == 0,
              new Length(200)));
    }
    return all;
  }

  private static PermanentRestriction restriction(String name, Extent extent, double mph) {
    return new PermanentRestriction(
        name,
        extent,
        Applies.EVERYWHERE,
        Speed.ofMph(mph),
        List.of(),
        List.of(new Board(BoardKind.WARNING, extent.from(), Direction.FORWARD)),
        "");
  }

  private static Station station(
      String name, double m1, double c1, double m2, double c2, boolean buffers) {
    return new Station(
        name,
        name,
        List.of(
            new Platform(
                "1",
                extent(m1, c1, m2, c2),
                Applies.EVERYWHERE,
                Hand.LEFT,
                buffers ? Optional.of(at(m2, c2 + 0.5)) : Optional.empty(),
                List.of(
                    new StopMark(4, at(m2, c2 - 1), Direction.FORWARD),
                    new StopMark(8, at(m2, c2), Direction.FORWARD),
                    new StopMark(4, at(m1, c1 + 1), Direction.BACKWARD),
                    new StopMark(8, at(m1, c1), Direction.BACKWARD)),
                "")));
  }

  public static Stock stock() {
    Vehicle motor =
        new Vehicle(
            "motor",
            new Length(20),
            Mass.ofTonnes(42),
            Mass.ofTonnes(46),
            Mass.ofTonnes(50),
            4,
            1,
            new RotatingMass.ShareOfTare(0.1),
            1,
            Optional.empty());
    Vehicle trailer =
        new Vehicle(
            "trailer",
            new Length(20),
            Mass.ofTonnes(30),
            Mass.ofTonnes(35),
            Mass.ofTonnes(40),
            4,
            0,
            new RotatingMass.ShareOfTare(0.04),
            1,
            Optional.empty());
    List<Vehicle> four = List.of(motor, trailer, trailer, motor);
    List<Vehicle> eight = new ArrayList<>(four);
    eight.addAll(four);
    return new Stock(
        "invented unit",
        "",
        List.of("MU"),
        Speed.ofMph(60),
        List.of(motor, trailer),
        List.of(new Formation("4-car", four), new Formation("8-car", eight)),
        new QuadraticResistance(14, 0.25, 6, 0.6),
        new RocklCurveResistance(),
        0,
        new Traction(
            List.of(
                notch("shunt", 22, 6, 18),
                notch("series", 48, 14, 30),
                notch("parallel", 50, 22, 52),
                notch("weak field", 50, 27, 75)),
            new Span(3),
            false),
        new StatedBrakeForce(
            new Acceleration(0.85),
            Speed.ofMph(60),
            Pressure.ofPsi(50),
            LoadCase.SEATED,
            Pressure.ofPsi(4),
            new ConstantBlocks(),
            false),
        List.of(
            new BrakeSystem(
                "electro-pneumatic",
                "EP",
                BrakeSystem.Role.SERVICE,
                new BrakeAction.Simultaneous(new Span(0.3)),
                new PressureRate(Pressure.ofPsi(20).pascals()),
                new PressureRate(Pressure.ofPsi(15).pascals()),
                true,
                new BrakeControl.Continuous(),
                Pressure.ofPsi(50),
                Optional.empty()),
            new BrakeSystem(
                "automatic air",
                "Auto",
                BrakeSystem.Role.FALLBACK,
                new BrakeAction.Propagated(new Span(0.5), new Speed(250)),
                new PressureRate(Pressure.ofPsi(11).pascals()),
                new PressureRate(Pressure.ofPsi(3).pascals()),
                false,
                new BrakeControl.Continuous(),
                Pressure.ofPsi(50),
                Optional.of(new PipeLaw.Ratio(Pressure.ofPsi(70), 2.5))),
            new BrakeSystem(
                "emergency",
                "Emergency",
                BrakeSystem.Role.EMERGENCY,
                new BrakeAction.Propagated(new Span(0.5), new Speed(280)),
                new PressureRate(Pressure.ofPsi(17).pascals()),
                new PressureRate(Pressure.ofPsi(3).pascals()),
                false,
                new BrakeControl.Continuous(),
                Pressure.ofPsi(50),
                Optional.empty())),
        List.of());
  }

  private static Notch notch(String name, double kn, double kneeMph, double endMph) {
    List<EffortPoint> points = new ArrayList<>();
    points.add(new EffortPoint(Speed.ofMph(0), new Force(kn * 1000)));
    points.add(new EffortPoint(Speed.ofMph(kneeMph), new Force(kn * 1000)));
    for (double share : new double[] {0.25, 0.5, 0.75}) {
      double v = kneeMph + share * (endMph - kneeMph);
      double force = kn * 1000 * Math.pow(kneeMph / v, 2) * (1 - share * share);
      points.add(new EffortPoint(Speed.ofMph(v), new Force(force)));
    }
    points.add(new EffortPoint(Speed.ofMph(endMph), new Force(0)));
    return new Notch(name, points);
  }

  public static Policy policy() {
    AdhesionLaw dry = new CurtiusKniffler();
    return new Policy(
        "invented policy",
        List.of(
            new AdhesionCase("dry", dry, ""),
            new AdhesionCase("damp", new ShareOf(dry, 0.6), ""),
            new AdhesionCase("low", new ConstantAdhesion(0.06), "")),
        new Span(2),
        new SafeSide(LoadCase.CRUSH, Speed.ofMph(2), 0.9, 0),
        new Margins(new Length(5), new Length(20), Speed.ofMph(2), new Length(5), new Length(20)),
        new Technique(
            Pressure.ofPsi(15),
            new Span(3),
            Pressure.ofPsi(28),
            List.of(
                new Technique.Ease(Speed.ofMph(12), Pressure.ofPsi(14)),
                new Technique.Ease(Speed.ofMph(4), Pressure.ofPsi(6)))),
        new Technique(
            Pressure.ofPsi(15),
            new Span(3),
            Pressure.ofPsi(28),
            List.of(
                new Technique.Ease(Speed.ofMph(5), Pressure.ofPsi(12)),
                new Technique.Ease(Speed.ofMph(1), Pressure.ofPsi(0)))),
        List.of(
            new TerminalStep(new Length(80), Speed.ofMph(15)),
            new TerminalStep(new Length(40), Speed.ofMph(10))),
        new RunRules(
            Speed.ofMph(2),
            Speed.ofMph(8),
            new Span(10),
            new Span(12),
            Speed.ofMph(1),
            Speed.ofMph(6),
            Pressure.ofPsi(10),
            0.05,
            new Length(100)),
        Optional.empty(),
        Map.of());
  }

  public static Assignment assignment(Direction direction, String formation) {
    Route route = route();
    List<Call> calls = new ArrayList<>();
    for (Station station : route.stations()) {
      calls.add(new Call(station, station.platforms().get(0), new Span(30)));
    }
    if (direction == Direction.BACKWARD) {
      java.util.Collections.reverse(calls);
    }
    Stock stock = stock();
    Formation cars =
        stock.formations().stream()
            .filter(f -> f.name().equals(formation))
            .findFirst()
            .orElseThrow();
    return new Assignment(
        route,
        direction,
        Set.of("Single"),
        Map.of(),
        calls,
        stock,
        direction == Direction.FORWARD ? cars : cars.reversed(),
        LoadCase.SEATED,
        policy(),
        List.of());
  }

  private Mill() {}
}
