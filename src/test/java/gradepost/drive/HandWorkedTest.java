package gradepost.drive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.plan.Action;
import gradepost.plan.Approach;
import gradepost.plan.Command;
import gradepost.plan.Trigger;
import gradepost.task.Assignment;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Validation: brakings with a pencil. In go what the approach page prints (speeds, seconds,
 * pressures) and what the route and stock state; out comes the braking distance, to be that of the
 * plan within what the pencil leaves out.
 *
 * <p>Source of the method, from memory: SUBSET-026 3.13.2.2.3 and EN 14531-1. The build-up of a
 * brake counts as a step after an equivalent time, the dead time and half the time of filling; from
 * there {@code (v1² − v2²)/2a}, with {@code a} the brake's deceleration plus that of gravity {@code
 * g·i·M/(M·(1 + γ))} and of the running resistance at the middle speed.
 */
@Tag("slow")
class HandWorkedTest {
  private static final double G = 9.81;
  private static final double PSI = 6894.76;
  private static final double KMH = 1 / 3.6;

  /**
   * The mill unit of four, seated, into its stop on 15 ‰ falling and on 8 ‰ rising. Two motor cars
   * of 46 t and two trailers of 35 t; rotating parts as heavy as 10 % of 42 t and 4 % of 30 t. The
   * brake is stated for this load: 0.85 m/s² at 50 psi, of which the springs take 4; the blocks are
   * alike at every speed. It answers after 0.3 s and fills by 20, empties by 15 psi/s.
   */
  @ParameterizedTest
  @ValueSource(doubles = {-15, 8})
  void aStopOnAGrade(double permille) {
    Printed printed = printed(LineOfOwn.of(permille, 20, List.of()), "Halt 1");
    assertThat(printed.fromMps).isGreaterThan(12);
    double tonnes = 2 * 46 + 2 * 35;
    double inertiaT = tonnes + 2 * 0.1 * 42 + 2 * 0.04 * 30;
    double middle = printed.fromMps / 2;
    double resistanceN = tonnes * (14 + 0.25 * middle) + (6 + 4 * 0.6) * middle * middle;
    double other = G * permille / 1000 * tonnes / inertiaT + resistanceN / (inertiaT * 1000);

    Pencil pencil = new Pencil(0.85 / 46, 4, 15, other);
    compare(printed, pencil, 0.02);
  }

  /**
   * Thrumble Mill curve, 30 mph, 4-car, Down, on the frozen valley: falling 1 in 90, to where the
   * brake is released. Friction of cast iron {@code f = (V + 100)/(5V + 100)}, V in km/h: {@code
   * V/f} is {@code 5V − 400 + 40000/(V + 100)}, so that its integral is {@code 2.5·V² − 400·V +
   * 40000·ln(1 + V/100)}, and half the square of the speed over it the mean friction over distance.
   * Taken at the middle speed throughout, which is worth some per cent.
   */
  @Test
  void restriction() {
    Printed printed = printed(DemoPlans.assignments().get(0), "Thrumble mill curve");
    double lastMps = printed.acts.get(printed.acts.size() - 1).speedMps();
    double seatedT = 2 * 45.2 + 2 * 39.5;
    double inertiaT = seatedT + 2 * 41 * 0.12 + 2 * 34 * 0.06;
    double tareInertiaT = 2 * 41 * 1.12 + 2 * 34 * 1.06;
    double sixty = 96.56;
    double integral = 2.5 * sixty * sixty - 400 * sixty + 40_000 * Math.log(1 + sixty / 100);
    double meanFriction = sixty * sixty / 2 / integral;
    double middleMps = (printed.fromMps + lastMps) / 2;
    double middleKmh = middleMps / KMH;
    double friction = (middleKmh + 100) / (5 * middleKmh + 100);
    double full = 0.85 * friction / meanFriction * tareInertiaT / inertiaT;
    double resistance =
        (14 * seatedT + 0.15 * seatedT * middleMps + (5 + 4 * 0.9) * middleMps * middleMps)
            / (inertiaT * 1000);
    double other = -G / 90 * seatedT / inertiaT + resistance;

    compare(printed, new Pencil(full / 48, 2, 15, other), 0.05);
  }

  /** Distance, and the speed that is left. */
  private static double[] slowedFor(double seconds, double fromMps, double byMps2) {
    double to = fromMps - byMps2 * seconds;
    return new double[] {(fromMps + to) / 2 * seconds, to};
  }

  private static double slowedTo(double fromMps, double toMps, double byMps2) {
    return (fromMps * fromMps - toMps * toMps) / (2 * byMps2);
  }

  private static void compare(Printed printed, Pencil pencil, double within) {
    double byHand = pencil.distanceM(printed.acts);
    assertThat(printed.to - printed.from).isCloseTo(byHand, within(within * byHand));
  }

  /**
   * A brake that answers after 0.3 s and fills by 20 psi/s.
   *
   * @param perPsi deceleration for each psi above what the springs take
   * @param springsPsi what they take
   * @param emptiesPsi in a second
   * @param other deceleration by gradient and running resistance
   */
  private record Pencil(double perPsi, double springsPsi, double emptiesPsi, double other) {
    double distanceM(List<Action> acts) {
      double distance = 0;
      double mps = acts.get(0).speedMps();
      double psi = springsPsi;
      double brake = 0;
      double springsS = springsPsi / 20;
      for (int i = 0; i < acts.size() - 1; i++) {
        double asked = ((Command.Brake) acts.get(i).command()).pressurePa() / PSI;
        double fills = Math.abs(asked - psi) / (asked > psi ? 20 : emptiesPsi);
        double answers = 0.3 + springsS + fills / 2;
        double[] before = slowedFor(answers, mps, brake + other);
        brake = perPsi * (asked - springsPsi);
        Action next = acts.get(i + 1);
        double rest =
            next.trigger() instanceof Trigger.After after
                ? slowedFor(after.seconds() - answers, before[1], brake + other)[0]
                : slowedTo(before[1], next.speedMps(), brake + other);
        distance += before[0] + rest;
        mps = next.speedMps();
        psi = asked;
        springsS = 0;
      }
      return distance;
    }
  }

  /** What the approach page says of the braking, from the first application to the last act. */
  private record Printed(List<Action> acts, double from, double fromMps, double to) {}

  private static Printed printed(Assignment assignment, String target) {
    Approach approach =
        Planner.plan(assignment).approaches().stream()
            .filter(a -> a.target().name().equals(target))
            .findFirst()
            .orElseThrow();
    List<Action> acts =
        approach.actions().stream()
            .filter(a -> a.atM() > approach.brakingPointM().orElseThrow() - 0.01)
            .toList();
    Action first = acts.get(0);
    Action last = acts.get(acts.size() - 1);
    return new Printed(acts, first.atM(), first.speedMps(), last.atM());
  }
}
