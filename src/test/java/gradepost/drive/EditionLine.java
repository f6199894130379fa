package gradepost.drive;

import gradepost.policy.DegradedRules.AutomaticTechnique;
import gradepost.policy.DegradedRules.Permit;
import gradepost.policy.SafeSide;
import gradepost.policy.Technique;
import gradepost.route.place.Direction;
import gradepost.stock.BrakeSystem;
import gradepost.stock.LoadCase;
import gradepost.stock.PipeLaw;
import gradepost.stock.Stock;
import gradepost.task.Assignment;
import gradepost.task.DegradedRun;
import gradepost.task.Edition;
import gradepost.units.Pressure;
import gradepost.units.PressureRate;
import gradepost.units.Span;
import gradepost.units.Speed;
import gradepost.units.UnitStyle;
import java.util.List;
import java.util.Optional;

/**
 * The unit of {@link EvenLine} with a brake that is not whole. Its automatic brake has a pipe of 70
 * psi and reservoirs of 3.25 cylinders, by Boyle's law.
 */
public final class EditionLine {
  /** Reservoir over cylinder. */
  static final double VOLUMES = 3.25;

  /** The technique without eases: 12 psi for 3 s, then 25 psi; released 2 km/h above the aim. */
  static final AutomaticTechnique TECHNIQUE =
      new AutomaticTechnique(
          new Technique(Pressure.ofPsi(12), new Span(3), Pressure.ofPsi(25), List.of()),
          new Technique(
              Pressure.ofPsi(12),
              new Span(3),
              Pressure.ofPsi(25),
              List.of(new Technique.Ease(Speed.ofKmh(2), new Pressure(0)))),
          Pressure.ofPsi(12),
          "stops",
          "lower speeds");

  /** EP out of use, no faster than this. */
  public static DegradedRun out(double atMostMps) {
    return new DegradedRun(
        new Edition("EP out of use", Edition.Kind.EP_OUT_OF_USE, List.of(), List.of()),
        "rule 4.2",
        new Permit("the depot", new Speed(atMostMps), 1, Optional.of(TECHNIQUE)));
  }

  /** EP on part of the train, or brakes isolated, on these vehicles. */
  public static DegradedRun some(Edition.Kind kind, List<Integer> vehicles) {
    return new DegradedRun(
        new Edition("some", kind, List.of("4-car"), vehicles),
        "rule 4.3",
        new Permit("the depot", new Speed(40), 0.75, Optional.empty()));
  }

  /** Level, with reservoirs that fill so fast; 12 m/s on its second half where it is slow there. */
  public static Assignment level(double rechargePsiPerS, boolean slower, SafeSide safe) {
    Assignment even = EvenLine.of(0, Mill.policy().adhesion(), safe);
    List<RandomLine.Slack> slacks =
        slower ? List.of(new RandomLine.Slack(3000, 4500, 12)) : List.of();
    return new RandomLine(
            UnitStyle.METRIC,
            EvenLine.LENGTH_M,
            EvenLine.LENGTH_M,
            25,
            List.of(new RandomLine.Slope(0, EvenLine.LENGTH_M, 0)),
            List.of(),
            slacks,
            List.of(),
            List.of(new RandomLine.Halt(100, 200, false), new RandomLine.Halt(5700, 5800, false)),
            List.of(),
            recharging(even.stock(), rechargePsiPerS),
            even.policy(),
            even.formation(),
            LoadCase.SEATED,
            Direction.FORWARD)
        .assignment();
  }

  /** The same stock whose automatic brake has reservoirs to fill. */
  static Stock recharging(Stock stock, double psiPerS) {
    return stock.with(
        stock.brakes().stream()
            .map(b -> b.role() == BrakeSystem.Role.FALLBACK ? recharging(b, psiPerS) : b)
            .toList());
  }

  private static BrakeSystem recharging(BrakeSystem b, double psiPerS) {
    return new BrakeSystem(
        b.name(),
        b.shortName(),
        b.role(),
        b.action(),
        b.application(),
        b.release(),
        b.gradualRelease(),
        b.control(),
        b.full(),
        Optional.of(new PipeLaw.Boyle(Pressure.ofPsi(70), VOLUMES)),
        Optional.of(new PressureRate(Pressure.ofPsi(psiPerS).pascals())),
        b.percentage());
  }

  private EditionLine() {}
}
