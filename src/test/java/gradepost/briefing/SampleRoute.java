package gradepost.briefing;

import gradepost.pack.TemporaryRestriction;
import gradepost.policy.AdhesionCase;
import gradepost.policy.Margins;
import gradepost.policy.Policy;
import gradepost.policy.RunRules;
import gradepost.policy.SafeSide;
import gradepost.policy.Technique;
import gradepost.route.Board;
import gradepost.route.BoardKind;
import gradepost.route.BrakeTestPlace;
import gradepost.route.CheckRail;
import gradepost.route.Curve;
import gradepost.route.GradientPiece;
import gradepost.route.Junction;
import gradepost.route.JunctionRoute;
import gradepost.route.Landmark;
import gradepost.route.LowAdhesionSite;
import gradepost.route.Observation;
import gradepost.route.Path;
import gradepost.route.PermanentRestriction;
import gradepost.route.RailGap;
import gradepost.route.Route;
import gradepost.route.RunningLine;
import gradepost.route.Signal;
import gradepost.route.SignalRoute;
import gradepost.route.Structure;
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
import gradepost.stock.law.ConstantAdhesion;
import gradepost.stock.law.ConstantBlocks;
import gradepost.stock.law.CurtiusKniffler;
import gradepost.stock.law.RocklCurveResistance;
import gradepost.units.Acceleration;
import gradepost.units.Exact;
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
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** An invented route, train and policy, rich in every kind of element. */
final class SampleRoute {
  static final double LENGTH_M = 10 * Exact.MILE_M;
  private static final String[] STATIONS = {
    "Harrow Top",
    "Weir Lane",
    "Millbeck",
    "Saint Wimmel’s Cross and Meadows",
    "Tannery Road",
    "Quarry Halt",
    "Long Acre",
    "Canal Wharf",
    "Harbour"
  };
  private final UnitStyle units;
  private final double step;

  SampleRoute(UnitStyle units) {
    this.units = units;
    this.step = units.placeStepM();
  }

  /** A place by the distance from the start; the first half rises, the second falls. */
  Location at(double metres) {
    double grid = Math.round(metres / step) * step;
    double half = half();
    return grid <= half
        ? new Location("Valley", new Mileage(10 * step + grid))
        : new Location("Mill", new Mileage(1000 * step - (grid - half)));
  }

  private double half() {
    return Math.round(LENGTH_M / 2 / step) * step;
  }

  Extent over(double from, double to) {
    return new Extent(at(from), at(to));
  }

  Route route() {
    double half = half();
    List<Station> stations = new ArrayList<>();
    List<Signal> signals = new ArrayList<>();
    List<Landmark> landmarks = new ArrayList<>();
    List<GradientPiece> gradients = new ArrayList<>();
    List<Curve> curves = new ArrayList<>();
    double[] slopes = {-80, 0, -66, 120, -60, 0, 75, -66, -150, 0};
    for (int i = 0; i < 10; i++) {
      double from = LENGTH_M / 10 * i;
      double to = i == 9 ? 2 * half : LENGTH_M / 10 * (i + 1);
      gradients.add(
          new GradientPiece(over(from, to), new Gradient(slopes[i] == 0 ? 0 : 1000.0 / slopes[i])));
    }
    for (int i = 0; i < STATIONS.length; i++) {
      double end = stationEnd(i);
      boolean last = i == STATIONS.length - 1;
      stations.add(
          new Station(
              STATIONS[i],
              STATIONS[i].substring(0, 3).toUpperCase(java.util.Locale.ROOT),
              List.of(
                  new Platform(
                      Integer.toString(i % 2 + 1),
                      over(end - 170, end),
                      Applies.EVERYWHERE,
                      i % 3 == 0 ? Hand.RIGHT : Hand.LEFT,
                      last ? Optional.of(at(end + step)) : Optional.empty(),
                      List.of(
                          new StopMark(4, at(end - 60), Direction.FORWARD),
                          new StopMark(8, at(end - 10), Direction.FORWARD)),
                      i == 2 ? "rear car locked out by the guard" : "")),
              Optional.of(STATIONS[i] + ".png")));
      if (i > 0) {
        signals.add(
            new Signal(
                "WL " + (10 + i),
                i % 2 == 0 ? Signal.Kind.STOP : Signal.Kind.STOP_AND_CAUTION,
                at(end - 700),
                Direction.FORWARD,
                "Down Main",
                Hand.LEFT,
                i == 3 ? Optional.empty() : Optional.of(at(end - 880)),
                i == 5
                    ? List.of(
                        new SignalRoute("Main", "no indicator", Optional.empty()),
                        new SignalRoute("Harbour line", "position 4", Optional.of(Speed.ofMph(20))))
                    : List.of(),
                i == 4 ? "seen late round the curve" : "",
                Optional.of("WL " + (10 + i) + ".png")));
        landmarks.add(landmark("far parapet of the canal bridge " + i, end - 560, false));
        landmarks.add(landmark("lamp standard " + i, end - 400, true));
        curves.add(
            new Curve(
                over(end - 450, end - 230),
                i % 2 == 0 ? Hand.LEFT : Hand.RIGHT,
                Length.ofChains(10 + 3 * i),
                new Length(0.075),
                i % 3 == 0 ? CheckRail.LOW_RAIL : CheckRail.NONE));
      }
    }
    return new Route(
        "Harrow Valley line",
        "An invented valley line that falls to a harbour.",
        units,
        "Down",
        "Up",
        "Posts on the left in the Down direction, every quarter.",
        List.of(
            new Section("Valley", new Mileage(10 * step), new Mileage(10 * step + half)),
            new Section("Mill", new Mileage(1000 * step), new Mileage(1000 * step - half))),
        List.of(new RunningLine("Down Main", List.of(), Set.of(Direction.FORWARD))),
        gradients,
        curves,
        List.of(
            restriction("Valley line", 0, 2 * half, 60, List.of()),
            restriction(
                "Mill curve",
                7000,
                7500,
                25,
                List.of(
                    new Board(BoardKind.WARNING, at(6200), Direction.FORWARD),
                    new Board(BoardKind.COMMENCEMENT, at(7000), Direction.FORWARD)))),
        List.of(
            new Junction(
                "Millbeck Junction",
                over(10100, 10200),
                Applies.EVERYWHERE,
                List.of(
                    new JunctionRoute("Main", Speed.ofMph(50), false),
                    new JunctionRoute("Harbour line", Speed.ofMph(20), true)))),
        stations,
        signals,
        landmarks,
        List.of(
            new Structure(Structure.Kind.TUNNEL, "Cutler’s Tunnel", over(3000, 3400), "wet rail"),
            new Structure(
                Structure.Kind.SWING_BRIDGE, "Harbour Swing Bridge", over(14900, 14960), "")),
        List.of(new RailGap("Tannery crossing", over(8200, 8260), Applies.EVERYWHERE)),
        List.of(
            new LowAdhesionSite(
                "Beech Cutting", over(5000, 5600), Applies.EVERYWHERE, "leaves, October on")),
        List.of(
            new BrakeTestPlace(
                at(900), Direction.FORWARD, Speed.ofMph(30), "after the first mile")),
        List.of(new Observation("foot crossings", "none known, checked on 2026-10-01")));
  }

  /** Densely set cues in one mile, to try the placing of names. */
  Landmark landmark(String name, double at, boolean night) {
    return new Landmark(
        name,
        at(at),
        Applies.EVERYWHERE,
        Hand.LEFT,
        night,
        new Length(200),
        Optional.of(name + ".png"));
  }

  static double stationEnd(int i) {
    return i == 0 ? 240 : LENGTH_M / 8 * i - (i == 8 ? 40 : 0);
  }

  static int stations() {
    return STATIONS.length;
  }

  private PermanentRestriction restriction(
      String name, double from, double to, double mph, List<Board> boards) {
    return new PermanentRestriction(
        name,
        over(from, to),
        Applies.EVERYWHERE,
        Speed.ofMph(mph),
        List.of(),
        boards,
        name.contains("curve") ? "check-railed curve" : "");
  }

  TemporaryRestriction temporary() {
    return new TemporaryRestriction(
        "T 26/104",
        TemporaryRestriction.Kind.TEMPORARY,
        TemporaryRestriction.Status.IN_FORCE,
        over(12600, 12900),
        Applies.EVERYWHERE,
        Speed.ofMph(20),
        List.of(),
        Optional.of(Speed.ofMph(60)),
        "formation renewal",
        LocalDateTime.of(2026, 11, 10, 4, 0),
        Optional.of(LocalDateTime.of(2027, 1, 15, 4, 0)),
        Optional.empty(),
        List.of(new Board(BoardKind.WARNING, at(12000), Direction.FORWARD)),
        "control office");
  }

  static Stock stock() {
    Vehicle driving =
        new Vehicle(
            "DMS",
            new Length(19.66),
            Mass.ofTonnes(40),
            Mass.ofTonnes(45),
            Mass.ofTonnes(50),
            4,
            0.5,
            new RotatingMass.ShareOfTare(0.1),
            1,
            Optional.empty());
    Vehicle trailer =
        new Vehicle(
            "TS",
            new Length(19.66),
            Mass.ofTonnes(30),
            Mass.ofTonnes(35),
            Mass.ofTonnes(41),
            4,
            0,
            new RotatingMass.ShareOfTare(0.05),
            1,
            Optional.empty());
    List<Notch> notches = new ArrayList<>();
    String[] names = {"Shunt", "Series", "Parallel", "Weak Field"};
    for (int i = 0; i < names.length; i++) {
      notches.add(
          new Notch(
              names[i],
              List.of(
                  new EffortPoint(Speed.ofMph(0), new Force(20_000 + 12_000 * i)),
                  new EffortPoint(Speed.ofMph(10 + 25 * i), new Force(0)))));
    }
    PipeLaw pipe = new PipeLaw.Ratio(Pressure.ofPsi(70), 2.5);
    return new Stock(
        "Type H unit",
        "An older four-car electric unit with an electro-pneumatic brake.",
        List.of("MU"),
        Speed.ofMph(60),
        List.of(driving, trailer),
        List.of(new Formation("4-car", List.of(driving, trailer, trailer, driving))),
        new QuadraticResistance(14, 0.2, 6, 1.1),
        new RocklCurveResistance(),
        0,
        new Traction(notches, new Span(3), false),
        new StatedBrakeForce(
            new Acceleration(0.85),
            Speed.ofMph(60),
            Pressure.ofPsi(50),
            LoadCase.TARE,
            Pressure.ofPsi(4),
            new ConstantBlocks(),
            false),
        List.of(
            brake("electro-pneumatic", "EP", BrakeSystem.Role.SERVICE, Optional.empty()),
            brake("automatic air", "Auto", BrakeSystem.Role.FALLBACK, Optional.of(pipe)),
            brake("emergency", "Emgy", BrakeSystem.Role.EMERGENCY, Optional.empty())),
        List.of(
            "Power is never notched down: shut off and begin again.",
            "A release of the automatic brake is a full release."));
  }

  private static BrakeSystem brake(
      String name, String shortName, BrakeSystem.Role role, Optional<PipeLaw> pipe) {
    boolean service = role == BrakeSystem.Role.SERVICE;
    return new BrakeSystem(
        name,
        shortName,
        role,
        service
            ? new BrakeAction.Simultaneous(new Span(0.3))
            : new BrakeAction.Propagated(new Span(0.5), new Speed(250)),
        new PressureRate(120_000),
        new PressureRate(100_000),
        service,
        new BrakeControl.Continuous(),
        Pressure.ofPsi(50),
        pipe);
  }

  static Policy policy() {
    Technique stop =
        new Technique(
            Pressure.ofPsi(15),
            new Span(4),
            Pressure.ofPsi(28),
            List.of(
                new Technique.Ease(Speed.ofMph(12), Pressure.ofPsi(12)),
                new Technique.Ease(Speed.ofMph(3), Pressure.ofPsi(5))));
    return new Policy(
        "Harbour depot policy",
        List.of(
            new AdhesionCase("dry", new CurtiusKniffler(), "dry rail, the planned case"),
            new AdhesionCase("damp", new ConstantAdhesion(0.12), "drizzle after a dry spell"),
            new AdhesionCase("low", new ConstantAdhesion(0.06), "leaves: light and long")),
        new Span(2),
        new SafeSide(LoadCase.CRUSH, Speed.ofMph(2), 0.9, 0),
        new Margins(
            new Length(4.6), new Length(18), Speed.ofMph(1), new Length(5.5), new Length(18)),
        stop,
        stop,
        List.of(),
        new RunRules(
            Speed.ofMph(1),
            Speed.ofMph(6),
            new Span(8),
            new Span(5),
            Speed.ofMph(1),
            Speed.ofMph(5),
            Pressure.ofPsi(12),
            0.05,
            new Length(200)),
        Optional.empty(),
        Map.of("noticing-time", "from asking for a brake that gives nothing to the next one"));
  }

  Path path() {
    return new Path(route(), Direction.FORWARD);
  }
}
