package gradepost.motion;

import gradepost.stock.BrakeAction;
import gradepost.stock.BrakeControl;
import gradepost.stock.BrakeSystem;
import gradepost.stock.ConstantResistance;
import gradepost.stock.EffortPoint;
import gradepost.stock.Formation;
import gradepost.stock.LoadCase;
import gradepost.stock.Notch;
import gradepost.stock.ResistanceLaw;
import gradepost.stock.RotatingMass;
import gradepost.stock.StatedBrakeForce;
import gradepost.stock.Stock;
import gradepost.stock.Traction;
import gradepost.stock.Vehicle;
import gradepost.stock.law.AdhesionLaw;
import gradepost.stock.law.BlockLaw;
import gradepost.stock.law.ConstantAdhesion;
import gradepost.stock.law.ConstantBlocks;
import gradepost.stock.law.CurveResistance;
import gradepost.stock.law.NoCurveResistance;
import gradepost.units.Acceleration;
import gradepost.units.Force;
import gradepost.units.Length;
import gradepost.units.Mass;
import gradepost.units.Pressure;
import gradepost.units.PressureRate;
import gradepost.units.Span;
import gradepost.units.Speed;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A stock file in a few words, for the cases of textbooks. Everything not said is left out. A train
 * weighs the same under every load, so that a rotating share of its whole mass is one of its tare.
 */
final class Textbook {
  static final double FULL_PA = 4e5;

  private final List<Vehicle> vehicles = new ArrayList<>();
  private ResistanceLaw resistance = new ConstantResistance(0);
  private CurveResistance curves = new NoCurveResistance();
  private double checkRailDrag;
  private List<Notch> notches =
      List.of(new Notch("none", List.of(new EffortPoint(new Speed(0), new Force(0)))));
  private double deceleration = 1;
  private Speed statedFrom = Speed.ofKmh(100);
  private BlockLaw blocks = new ConstantBlocks();
  private Pressure threshold = new Pressure(0);
  private BrakeAction action = new BrakeAction.Simultaneous(new Span(0));
  private double fillS = 1e-6;
  private boolean loadCompensated;

  /** A short train of one vehicle: what textbooks call the train. */
  static Textbook train(double tonnes, double rotating) {
    return new Textbook().vehicle(tonnes, rotating, 1, 1);
  }

  static Textbook empty() {
    return new Textbook();
  }

  Textbook vehicle(double tonnes, double rotating, double lengthM, double motoredShare) {
    return vehicle(tonnes, rotating, lengthM, motoredShare, Optional.empty());
  }

  Textbook vehicle(
      double tonnes,
      double rotating,
      double lengthM,
      double motoredShare,
      Optional<Length> valveAt) {
    Mass mass = Mass.ofTonnes(tonnes);
    vehicles.add(
        new Vehicle(
            "V",
            new Length(lengthM),
            mass,
            mass,
            mass,
            4,
            motoredShare,
            new RotatingMass.ShareOfTare(rotating),
            1,
            valveAt));
    return this;
  }

  Textbook vehicle(Vehicle vehicle) {
    vehicles.add(vehicle);
    return this;
  }

  /** The brake force follows the load. */
  Textbook loadCompensated() {
    loadCompensated = true;
    return this;
  }

  Textbook resistance(ResistanceLaw law) {
    resistance = law;
    return this;
  }

  Textbook curves(CurveResistance law, double checkRailDragNPerKn) {
    curves = law;
    checkRailDrag = checkRailDragNPerKn;
    return this;
  }

  /** The same effort at every speed met here. */
  Textbook effort(double newtons) {
    return power(
        List.of(
            new Notch(
                "full",
                List.of(
                    new EffortPoint(new Speed(0), new Force(newtons)),
                    new EffortPoint(new Speed(200), new Force(newtons))))));
  }

  Textbook power(List<Notch> list) {
    notches = list;
    return this;
  }

  Textbook brake(double metresPerSecond2) {
    deceleration = metresPerSecond2;
    return this;
  }

  Textbook statedFrom(Speed speed) {
    statedFrom = speed;
    return this;
  }

  Textbook blocks(BlockLaw law) {
    blocks = law;
    return this;
  }

  Textbook threshold(Pressure pressure) {
    threshold = pressure;
    return this;
  }

  Textbook action(BrakeAction newAction, double fillSeconds) {
    action = newAction;
    fillS = fillSeconds;
    return this;
  }

  Stock stock() {
    Formation formation = new Formation("train", vehicles);
    BrakeSystem system =
        new BrakeSystem(
            "brake",
            "B",
            BrakeSystem.Role.SERVICE,
            action,
            new PressureRate(FULL_PA / fillS),
            new PressureRate(FULL_PA / fillS),
            true,
            new BrakeControl.Continuous(),
            new Pressure(FULL_PA),
            Optional.empty());
    return new Stock(
        "textbook",
        "",
        List.of(),
        Speed.ofKmh(300),
        vehicles,
        List.of(formation),
        resistance,
        curves,
        checkRailDrag,
        new Traction(notches, new Span(0), true),
        new StatedBrakeForce(
            new Acceleration(deceleration),
            statedFrom,
            new Pressure(FULL_PA),
            LoadCase.TARE,
            threshold,
            blocks,
            loadCompensated),
        List.of(system),
        List.of());
  }

  Train train() {
    Stock stock = stock();
    return Train.of(stock, stock.formations().get(0), LoadCase.TARE);
  }

  TrainBrake rig() {
    Stock stock = stock();
    Formation formation = stock.formations().get(0);
    return TrainBrake.of(stock, formation, LoadCase.TARE, train(), stock.service(), 1, 0);
  }

  /** On one gradient without end; rising is positive. */
  Stepper onGradient(double permille) {
    return on(gradient(permille));
  }

  Stepper on(Track track) {
    return on(track, new ConstantAdhesion(1));
  }

  Stepper on(Track track, AdhesionLaw adhesion) {
    Stock stock = stock();
    Train train = train();
    return new Stepper(
        train,
        train.resistance(),
        TrackForce.of(track, train, stock.curves(), stock.checkRailDragNPerKn()),
        adhesion);
  }

  static Track gradient(double permille) {
    return new Track(
        new PiecewiseLinear(new double[] {0, 1000}, new double[] {0, permille}), List.of());
  }
}
