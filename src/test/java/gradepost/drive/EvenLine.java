package gradepost.drive;

import gradepost.policy.AdhesionCase;
import gradepost.policy.Policy;
import gradepost.policy.SafeSide;
import gradepost.route.BrakeTestPlace;
import gradepost.route.LowAdhesionSite;
import gradepost.route.Signal;
import gradepost.route.place.Direction;
import gradepost.route.place.Location;
import gradepost.stock.LoadCase;
import gradepost.stock.QuadraticResistance;
import gradepost.stock.StatedBrakeForce;
import gradepost.stock.Stock;
import gradepost.stock.law.CastIronKarwatzki;
import gradepost.task.Assignment;
import gradepost.units.Mileage;
import gradepost.units.Pressure;
import gradepost.units.Speed;
import gradepost.units.UnitStyle;
import java.util.List;

/**
 * A straight line of six kilometres on one gradient, for Mill's unit of four without running
 * resistance: it coasts at an even speed on the level, so that all of its braking can be worked out
 * with a pencil.
 *
 * <p>Two motor cars of 42 t, 46 t seated, 50 t at most, and two trailers of 30, 35 and 40 t; their
 * rotating parts are as heavy as 10 % and 4 % of the tare. The brake is stated for the seated load:
 * 0.85 m/s² at 50 psi, of which the springs take 4; its blocks are alike at every speed. The
 * electro-pneumatic brake answers after 0.3 s and fills by 20 psi a second.
 */
public final class EvenLine {
  /** Length of the line, m; its first place is 3218.688 m by its mileage. */
  public static final double LENGTH_M = 6000;

  /** Seated, with what turns: 2 · 46 + 2 · 35 + 2 · 4.2 + 2 · 1.2. */
  public static final double SEATED_T = 172.8;

  /** The same with the greatest load: 2 · 50 + 2 · 40 + 2 · 4.2 + 2 · 1.2. */
  public static final double CRUSH_T = 190.8;

  /** The greatest load, 1 m/s more than planned, nine tenths of the force, one brake off. */
  public static final SafeSide SAFE = new SafeSide(LoadCase.CRUSH, new Speed(1), 0.9, 0.25);

  /** What full service then takes off the crush train: three of four brakes at nine tenths. */
  public static final double SAFE_MPS2 = 0.85 * SEATED_T / CRUSH_T * 0.9 * 0.75;

  /** What the track takes off it on so much rise. */
  public static double gravityMps2(double permille, double tonnes, double withTurningT) {
    return 9.80665 * permille / 1000 * tonnes / withTurningT;
  }

  /** What a pressure takes off the seated train. */
  public static double plannedMps2(double psi) {
    return 0.85 * (psi - 4) / 46;
  }

  /**
   * From the demand to a lower speed. Nothing for a while, then the brake grows evenly to its
   * whole, from there on {@code (v² − u²)/2a}.
   *
   * @param deadS until the springs are overcome
   * @param growsS from there to the whole
   * @param otherMps2 what the track takes off all the time; negative on a fall
   */
  public static double brakedM(
      double fromMps,
      double toMps,
      double deadS,
      double growsS,
      double brakeMps2,
      double otherMps2) {
    double afterDead = fromMps - otherMps2 * deadS;
    double afterGrowth = afterDead - otherMps2 * growsS - brakeMps2 * growsS / 2;
    double both = brakeMps2 + otherMps2;
    return (fromMps + afterDead) / 2 * deadS
        + afterDead * growsS
        - otherMps2 * growsS * growsS / 2
        - brakeMps2 * growsS * growsS / 6
        + (afterGrowth * afterGrowth - toMps * toMps) / (2 * both);
  }

  /** Full service of the electro-pneumatic brake on the safe side, on the level. */
  public static double safeM(double fromMps, double toMps) {
    return brakedM(fromMps, toMps, 0.3 + 4 / 20.0, 46 / 20.0, SAFE_MPS2, 0);
  }

  /** A pressure of it on the seated train, on the level. */
  public static double plannedM(double psi, double fromMps, double toMps) {
    return brakedM(fromMps, toMps, 0.3 + 4 / 20.0, (psi - 4) / 20, plannedMps2(psi), 0);
  }

  /**
   * A brake that answers along the pipe, after 0.5 s and at 250 m/s to each valve. Each cylinder
   * grows evenly and then stays: the sum is put together piece by piece.
   *
   * @param valvesM of the vehicles that brake, behind the front
   * @param psi what they come to, above the springs
   * @param psiPerS how fast they fill
   * @param fullMps2 what all of them take off then
   */
  public record Along(List<Double> valvesM, double psi, double psiPerS, double fullMps2) {
    /** On the level, from the demand to a lower speed. */
    public double distanceM(double fromMps, double toMps) {
      double growsS = psi / psiPerS;
      double mean = 0;
      for (double valve : valvesM) {
        mean += beginsS(valve) / valvesM.size();
      }
      double takesS = (fromMps - toMps) / fullMps2 + mean + growsS / 2;
      double metres = fromMps * takesS;
      for (double valve : valvesM) {
        double rest = takesS - beginsS(valve) - growsS;
        metres -=
            fullMps2 / valvesM.size() * (growsS * growsS / 6 + growsS / 2 * rest + rest * rest / 2);
      }
      return metres;
    }

    private double beginsS(double valveM) {
      return 0.5 + valveM / 250 + 4 / psiPerS;
    }
  }

  public static double pascals(double psi) {
    return Pressure.ofPsi(psi).pascals();
  }

  /** Leaning to the safe side as {@link #SAFE} says. */
  public static Assignment of(double permille) {
    return of(permille, Mill.policy().adhesion(), SAFE);
  }

  public static Assignment of(double permille, List<AdhesionCase> cases, SafeSide safe) {
    return of(permille, MadeUp.with(cases, safe), coasting(Mill.stock().brakeForce()));
  }

  /** On one gradient up to a place, and on another behind it. */
  public static Assignment broken(double before, double atM, double behind) {
    return line(
        List.of(new RandomLine.Slope(0, atM, before), new RandomLine.Slope(atM, LENGTH_M, behind)),
        MadeUp.with(Mill.policy().adhesion(), SAFE),
        coasting(Mill.stock().brakeForce()));
  }

  /** On the level, with blocks of cast iron: stated for the same train and deceleration. */
  public static Assignment castIron() {
    return castIron(Mill.policy().adhesion());
  }

  /** The same with other states of the rail. */
  public static Assignment castIron(List<AdhesionCase> cases) {
    StatedBrakeForce f = Mill.stock().brakeForce();
    StatedBrakeForce iron =
        new StatedBrakeForce(
            f.meanDeceleration(),
            f.statedFrom(),
            f.statedPressure(),
            f.statedLoad(),
            f.threshold(),
            new CastIronKarwatzki(),
            f.loadCompensated());
    return of(0, MadeUp.with(cases, SAFE), coasting(iron));
  }

  public static Assignment of(double permille, Policy policy, Stock stock) {
    return line(List.of(new RandomLine.Slope(0, LENGTH_M, permille)), policy, stock);
  }

  private static Assignment line(List<RandomLine.Slope> slopes, Policy policy, Stock stock) {
    return new RandomLine(
            UnitStyle.METRIC,
            LENGTH_M,
            LENGTH_M,
            25,
            slopes,
            List.of(),
            List.of(),
            List.of(),
            List.of(new RandomLine.Halt(100, 200, false), new RandomLine.Halt(5700, 5800, false)),
            List.of(),
            stock,
            policy,
            stock.formations().get(0),
            LoadCase.SEATED,
            Direction.FORWARD)
        .assignment();
  }

  private static Stock coasting(StatedBrakeForce force) {
    Stock rolling = Changed.in(Mill.stock(), "resistance", new QuadraticResistance(0, 0, 0, 0));
    return Changed.in(rolling, "brakeForce", force);
  }

  /** The same with signals. */
  public static Assignment signalled(Assignment a, List<Signal> signals) {
    return Changed.route(a, "signals", signals);
  }

  /** The same with poor rail. */
  public static Assignment slippery(Assignment a, List<LowAdhesionSite> sites) {
    return Changed.route(a, "lowAdhesion", sites);
  }

  /** The same with places of brake tests. */
  public static Assignment tested(Assignment a, List<BrakeTestPlace> tests) {
    return Changed.route(a, "brakeTests", tests);
  }

  /** A place by its distance from where the line begins. */
  public static Location at(double metres) {
    return new Location("Lower", new Mileage(3218.688 + metres));
  }

  private EvenLine() {}
}
