package gradepost.drive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.route.Direction;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * Validation: three approaches of the demonstration packs with a pencil. In go what the approach
 * page prints (speeds, seconds, pressures) and what the route and stock files state; out comes the
 * braking distance, to be within 5 % of the planned one.
 *
 * <p>Source of the method, from memory: SUBSET-026 3.13.2.2.3 and EN 14531-1. The build-up of a
 * brake counts as a step after an equivalent time, the dead time and half the time of filling; from
 * there {@code (v1² − v2²)/2a}, with {@code a} the brake's deceleration plus that of gravity {@code
 * g·i·M/(M·(1 + γ))} and of the running resistance at the middle speed. The gradient is the mean
 * under the middle of the train between the printed place and the target. The figures in the
 * comments are those of the demonstration data on 25 November 2026; the arithmetic takes the
 * printed ones.
 */
class HandWorkedTest {
  private static final double G = 9.81;
  private static final double BAR = 1e5;
  private static final double PSI = 6894.76;
  private static final double KMH = 1 / 3.6;

  private static final Map<String, Plan> PLANS = new HashMap<>();

  /**
   * Hollin Works, 3-car, outwards: falling 1 in 67 and then 1 in 500.
   *
   * <pre>
   * Coast unit, seated: M = 140.5 t; rotating 11 % of 88 t and 5 % of 35.5 t: 152.0 t to slow.
   * Brake 9 %g = 0.883 m/s² at 3.6 bar, of which the springs take 0.3:
   *   1.4 bar 0.883 × 1.1/3.3 = 0.294;  2.5 bar 0.883 × 2.2/3.3 = 0.589 m/s²
   * Middle of the train from 11 565 to 12 475 m: 685 m at 15 ‰, 225 m at 2 ‰ falling: 11.8 ‰;
   *   9.81 × 0.0118 × 140.5/153.5 = 0.106 m/s² against the brake
   * Running resistance 2.0 kgf/t and 0.25·(V/10)²·10 kgf, at 59 km/h (281 + 87) kgf = 0.023 m/s²
   * 95.5 km/h = 26.5 m/s. First application: answers after 0.4 + 0.3/1.8 + 1.1/1.8/2 = 0.87 s.
   *   0.87 s rolling at 26.5 m/s, then 10.1 s at 0.294 − 0.106 + 0.023 = 0.212 → 24.5 m/s, 282 m
   * Main application: 0.71 s more at that, then 0.589 − 0.082 = 0.506 to 22 km/h → 564 m
   * Ease: 0.86 s more at 0.506, then 0.212 from 5.7 m/s to a stand             →  81 m
   * Together 927 m; planned 909 m
   * </pre>
   */
  @Test
  void fallingGrade() {
    Printed printed = printed(Direction.FORWARD, "3-car", "Hollin Works");
    double middle = printed.from - 69.6 / 2;
    double target = 12510 - 69.6 / 2;
    double rise = -0.015 * (12250 - middle) - 0.002 * (target - 12250);
    coastUnitStops(printed, rise / (target - middle));
  }

  /**
   * Asperline, 3-car, outwards: rising 1 in 125 and then 1 in 667.
   *
   * <pre>
   * Middle of the train from 7 595 to 8 075 m: 255 m at 8 ‰, 225 m at 1.5 ‰ rising: 4.95 ‰;
   *   9.81 × 0.00495 × 140.5/153.5 = 0.044 m/s² with the brake; resistance 0.022 m/s²
   * 84.1 km/h = 23.4 m/s. 0.87 s rolling at 0.067, 2.1 s at 0.294 + 0.067 = 0.361 → 22.5 m/s, 69 m
   * Main application: 0.71 s more at that, then 0.589 + 0.067 = 0.655 to 20 km/h  → 371 m
   * Ease: 0.86 s more at 0.655, then 0.361 from 5.0 m/s to a stand                →  39 m
   * Together 479 m; planned 480 m
   * </pre>
   */
  @Test
  void risingGrade() {
    Printed printed = printed(Direction.FORWARD, "3-car", "Asperline");
    double middle = printed.from - 69.6 / 2;
    double target = 8110 - 69.6 / 2;
    double rise = 0.008 * (7850 - middle) + 0.0015 * (target - 7850);
    coastUnitStops(printed, rise / (target - middle));
  }

  private static void coastUnitStops(Printed printed, double slope) {
    double masses = 140.5 / (140.5 + 0.11 * 88 + 0.05 * 35.5);
    double inertiaKg = 140_500 / masses;
    double full = 0.09 * G;
    double light = full * (printed.firstPa / BAR - 0.3) / 3.3;
    double main = full * (printed.mainPa / BAR - 0.3) / 3.3;
    double eased = full * (printed.easePa / BAR - 0.3) / 3.3;
    double middleKmh = (printed.fromMps + printed.easeMps) / 2 * 3.6;
    double resistance = (2.0 * 140.5 + 0.25 * middleKmh * middleKmh / 100 * 10) * G / inertiaKg;
    double other = G * slope * masses + resistance;

    double answers = 0.4 + 0.3 / 1.8 + (printed.firstPa / BAR - 0.3) / 1.8 / 2;
    double more = 0.4 + (printed.mainPa - printed.firstPa) / BAR / 1.8 / 2;
    double less = 0.4 + (printed.mainPa - printed.easePa) / BAR / 1.2 / 2;

    double[] rolled = slowedFor(answers, printed.fromMps, other);
    double[] felt = slowedFor(printed.heldS - answers, rolled[1], light + other);
    double[] filled = slowedFor(more, felt[1], light + other);
    double braked = slowedTo(filled[1], printed.easeMps, main + other);
    double[] emptied = slowedFor(less, printed.easeMps, main + other);
    double last = slowedTo(emptied[1], 0, eased + other);
    compare(printed, rolled[0] + felt[0] + filled[0] + braked + emptied[0] + last);
  }

  /**
   * Thrumble mill curve, 30 mph, 4-car, Down: falling 1 in 90, to where the brake is released.
   *
   * <pre>
   * Valley unit: 0.85 m/s² mean from 60 mph at 50 psi, tare. Tare 150 t, with rotating masses
   *   82 × 1.12 + 68 × 1.06 = 163.9 t; seated 169.4 t and 82 × 0.12 + 68 × 0.06 more = 183.3 t.
   * Cast iron, friction f = (V + 100)/(5V + 100), V in km/h. V/f is 5V − 400 + 40000/(V + 100), so
   *   that its integral is 2.5·V² − 400·V + 40000·ln(1 + V/100); at 96.56 km/h 11 718. The mean f
   *   over the distance is 96.56²/2/11 718 = 0.398.
   * At 52 km/h f = 0.421: 50 psi gives 0.85 × 0.421/0.398 × 163.9/185.0 = 0.797 m/s²
   *   15 psi less the springs' 2: × 13/48 = 0.216;  31 psi: × 29/48 = 0.482 m/s²
   * 9.81/90 × 169.4/185.0 = 0.100 m/s² against the brake; resistance 4.5 kN/185 t = 0.025
   * 59.6 km/h = 16.5 m/s. 0.3 + 2/20 + 13/20/2 = 0.73 s rolling, 2.3 s at 0.141 → 16.3 m/s, 49 m
   * Main application: 0.3 + 16/20/2 = 0.7 s more at that, then 0.407 to 28 mph   → 141 m
   * Together 190 m; planned 190 m
   * </pre>
   */
  @Test
  void restriction() {
    Printed printed = printed(Direction.FORWARD, "4-car", "Thrumble mill curve");
    double seatedT = 2 * 45.2 + 2 * 39.5;
    double inertiaT = seatedT + 2 * 41 * 0.12 + 2 * 34 * 0.06;
    double tareInertiaT = 2 * 41 * 1.12 + 2 * 34 * 1.06;
    double sixty = 96.56;
    double integral = 2.5 * sixty * sixty - 400 * sixty + 40_000 * Math.log(1 + sixty / 100);
    double meanFriction = sixty * sixty / 2 / integral;
    double middleMps = (printed.fromMps + printed.lastMps) / 2;
    double middleKmh = middleMps / KMH;
    double friction = (middleKmh + 100) / (5 * middleKmh + 100);
    double full = 0.85 * friction / meanFriction * tareInertiaT / inertiaT;
    double light = full * (printed.firstPa / PSI - 2) / 48;
    double main = full * (printed.mainPa / PSI - 2) / 48;
    double resistance =
        (14 * seatedT + 0.15 * seatedT * middleMps + (5 + 4 * 0.9) * middleMps * middleMps)
            / (inertiaT * 1000);
    double other = -G / 90 * seatedT / inertiaT + resistance;

    double answers = 0.3 + 2.0 / 20 + (printed.firstPa / PSI - 2) / 20 / 2;
    double more = 0.3 + (printed.mainPa - printed.firstPa) / PSI / 20 / 2;
    double[] rolled = slowedFor(answers, printed.fromMps, other);
    double[] felt = slowedFor(printed.heldS - answers, rolled[1], light + other);
    double[] filled = slowedFor(more, felt[1], light + other);
    double braked = slowedTo(filled[1], printed.easeMps, main + other);
    double last = 0;
    if (printed.easePa > 0) {
      double eased = full * (printed.easePa / PSI - 2) / 48;
      double less = 0.3 + (printed.mainPa - printed.easePa) / PSI / 15 / 2;
      double[] emptied = slowedFor(less, printed.easeMps, main + other);
      last = emptied[0] + slowedTo(emptied[1], printed.lastMps, eased + other);
    }
    compare(printed, rolled[0] + felt[0] + filled[0] + braked + last);
  }

  /** Distance, and the speed that is left. */
  private static double[] slowedFor(double seconds, double fromMps, double byMps2) {
    double to = fromMps - byMps2 * seconds;
    return new double[] {(fromMps + to) / 2 * seconds, to};
  }

  private static double slowedTo(double fromMps, double toMps, double byMps2) {
    return (fromMps * fromMps - toMps * toMps) / (2 * byMps2);
  }

  private static void compare(Printed printed, double byHand) {
    double planned = printed.to - printed.from;
    System.out.printf(
        "%s: by hand %.0f m, planned %.0f m, %+.1f %%%n",
        printed.name, byHand, planned, (byHand / planned - 1) * 100);
    assertThat(planned).isCloseTo(byHand, within(0.05 * byHand));
  }

  /** What the approach page says of the braking, from the first application to the last act. */
  private record Printed(
      String name,
      double from,
      double fromMps,
      double heldS,
      double firstPa,
      double mainPa,
      double easeMps,
      double easePa,
      double to,
      double lastMps) {}

  private static Printed printed(Direction direction, String formation, String target) {
    Plan plan =
        PLANS.computeIfAbsent(
            direction + formation, key -> Planner.plan(demo(direction, formation)));
    Approach approach =
        plan.approaches().stream()
            .filter(a -> a.target().name().equals(target))
            .findFirst()
            .orElseThrow();
    List<Action> acts =
        approach.actions().stream()
            .filter(a -> a.atM() > approach.brakingPointM().orElseThrow() - 0.01)
            .toList();
    Action first = acts.get(0);
    Action main = acts.get(1);
    Action ease = acts.get(2);
    Action last = acts.get(acts.size() - 1);
    return new Printed(
        target,
        first.atM(),
        first.speedMps(),
        ((Trigger.After) main.trigger()).seconds(),
        ((Command.Brake) first.command()).pressurePa(),
        ((Command.Brake) main.command()).pressurePa(),
        ease.speedMps(),
        ease.command() instanceof Command.Brake b ? b.pressurePa() : 0,
        last.atM(),
        last.speedMps());
  }

  private static Assignment demo(Direction direction, String formation) {
    return DemoPlans.assignments().stream()
        .filter(a -> a.direction() == direction && a.formation().name().equals(formation))
        .findFirst()
        .orElseThrow();
  }
}
