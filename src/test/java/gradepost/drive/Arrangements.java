package gradepost.drive;

import gradepost.policy.AdhesionCase;
import gradepost.policy.Policy;
import gradepost.policy.RunRules;
import gradepost.policy.Technique;
import gradepost.route.Route;
import gradepost.route.place.Direction;
import gradepost.stock.BrakeAction;
import gradepost.stock.BrakeControl;
import gradepost.stock.BrakePercentage;
import gradepost.stock.BrakePreset;
import gradepost.stock.BrakeSystem;
import gradepost.stock.Formation;
import gradepost.stock.PipeLaw;
import gradepost.stock.SeriesMotor;
import gradepost.stock.SeriesMotorPower;
import gradepost.stock.StatedBrakeForce;
import gradepost.stock.Stock;
import gradepost.stock.Traction;
import gradepost.task.Assignment;
import gradepost.units.Length;
import gradepost.units.Pressure;
import gradepost.units.PressureRate;
import gradepost.units.Span;
import gradepost.units.Speed;
import java.util.List;
import java.util.Optional;

/** The invented unit with other brakes and other power. */
public final class Arrangements {

  public static Stock with(StatedBrakeForce force, List<BrakeSystem> brakes, Traction traction) {
    Stock s = Mill.stock();
    return new Stock(
        s.name(),
        s.description(),
        s.trainClasses(),
        s.maximum(),
        s.vehicles(),
        s.formations(),
        s.resistance(),
        s.curves(),
        s.checkRailDragNPerKn(),
        traction,
        force,
        brakes,
        s.handleRules());
  }

  public static Stock braked(List<BrakeSystem> brakes) {
    return with(Mill.stock().brakeForce(), brakes, Mill.stock().traction());
  }

  static Stock preset(BrakePreset preset) {
    return braked(preset.systems());
  }

  /** All that is known of its brake is its percentage. */
  public static Stock percentage(double lambda) {
    Pressure full = Pressure.ofBar(3.8);
    BrakePercentage percentage = new BrakePercentage(lambda);
    return with(
        percentage.inService().force(full),
        List.of(percentage.service(full), percentage.emergency(full)),
        Mill.stock().traction());
  }

  /** One pipe and nothing else: every release is a full release, and takes time to make good. */
  public static Stock onePipe() {
    Optional<PipeLaw> pipe = Optional.of(new PipeLaw.Ratio(Pressure.ofPsi(70), 2.5));
    Optional<PressureRate> recharge = Optional.of(rate(1));
    BrakeAction along = new BrakeAction.Propagated(new Span(0.5), new Speed(250));
    BrakeControl any = new BrakeControl.Continuous();
    Pressure full = Pressure.ofPsi(50);
    return braked(
        List.of(
            new BrakeSystem(
                "automatic air",
                "Auto",
                BrakeSystem.Role.SERVICE,
                along,
                rate(12),
                rate(6),
                false,
                any,
                full,
                pipe,
                recharge,
                Optional.empty()),
            new BrakeSystem(
                "emergency",
                "Emergency",
                BrakeSystem.Role.EMERGENCY,
                along,
                rate(20),
                rate(6),
                false,
                any,
                full,
                pipe,
                recharge,
                Optional.empty())));
  }

  private static PressureRate rate(double psiPerSecond) {
    return new PressureRate(Pressure.ofPsi(psiPerSecond).pascals());
  }

  /** Two motors on each motored vehicle; values invented, of a usual size. */
  static Stock seriesMotors() {
    SeriesMotor motor = new SeriesMotor(375, 260, 1150, 0.1, 150, 3.6, new Length(1.067), 0.96);
    SeriesMotorPower power =
        new SeriesMotorPower(
            motor,
            750,
            4,
            List.of(
                new SeriesMotorPower.Group("Shunt", 2, 300, 1, 3),
                new SeriesMotorPower.Group("Series", 2, 300, 1, 0),
                new SeriesMotorPower.Group("Parallel", 1, 300, 1, 0),
                new SeriesMotorPower.Group("Weak field", 1, 300, 0.65, 0)));
    return with(
        Mill.stock().brakeForce(), Mill.stock().brakes(), power.traction(new Span(2), false));
  }

  /** The policy with another technique: three steps of a third each. */
  static Policy threeSteps() {
    Pressure one = Pressure.ofBar(1.2);
    Pressure two = Pressure.ofBar(2.4);
    return technique(
        new Technique(one, new Span(3), two, List.of(new Technique.Ease(Speed.ofMph(8), one))),
        new Technique(
            one, new Span(3), two, List.of(new Technique.Ease(Speed.ofMph(2), new Pressure(0)))),
        one);
  }

  /** The policy for a brake that only releases fully: to a stand on one application. */
  public static Policy fullRelease() {
    Technique stopping =
        new Technique(Pressure.ofPsi(10), new Span(3), Pressure.ofPsi(25), List.of());
    Technique restriction =
        new Technique(
            Pressure.ofPsi(10),
            new Span(3),
            Pressure.ofPsi(25),
            List.of(new Technique.Ease(Speed.ofMph(2), new Pressure(0))));
    return technique(stopping, restriction, Pressure.ofPsi(10));
  }

  private static Policy technique(Technique stopping, Technique restriction, Pressure check) {
    Policy p = Mill.policy();
    RunRules r = p.run();
    return new Policy(
        p.name(),
        p.adhesion(),
        p.noticing(),
        p.safeSide(),
        p.margins(),
        stopping,
        restriction,
        p.terminal(),
        new RunRules(
            r.offBelow(),
            r.onBelow(),
            r.leastPower(),
            r.coastBeforeBraking(),
            r.checkFrom(),
            r.checkTo(),
            check,
            r.timeAllowance(),
            r.landmarkReach()),
        p.scatter(),
        p.purposes());
  }

  static Policy adhesion(List<AdhesionCase> cases) {
    Policy p = Mill.policy();
    return new Policy(
        p.name(),
        cases,
        p.noticing(),
        p.safeSide(),
        p.margins(),
        p.stopping(),
        p.restriction(),
        p.terminal(),
        p.run(),
        p.scatter(),
        p.purposes());
  }

  public static Assignment assignment(
      Direction direction, int formation, Stock stock, Policy policy) {
    return assignment(Mill.route(), direction, formation, stock, policy);
  }

  static Assignment assignment(
      Route route, Direction direction, int formation, Stock stock, Policy policy) {
    Assignment a = Mill.assignment(direction, "4-car");
    Formation cars = stock.formations().get(formation);
    return new Assignment(
        route,
        direction,
        a.lines(),
        a.junctionRoutes(),
        a.calls(),
        stock,
        direction == Direction.FORWARD ? cars : cars.reversed(),
        a.load(),
        policy,
        List.of());
  }

  private Arrangements() {}
}
