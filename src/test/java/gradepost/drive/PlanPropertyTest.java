package gradepost.drive;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.Examples;
import gradepost.drive.check.SheetsDriven;
import gradepost.plan.Action;
import gradepost.plan.Application;
import gradepost.plan.Approach;
import gradepost.plan.CaseResult;
import gradepost.plan.Command;
import gradepost.plan.Plan;
import gradepost.plan.Trace;
import gradepost.plan.fallback.Latest;
import gradepost.plan.fallback.Rung;
import gradepost.route.Path;
import gradepost.route.PermanentRestriction;
import gradepost.stock.BrakeSystem.Role;
import gradepost.task.Assignment;
import gradepost.task.Call;
import gradepost.task.Ceiling;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Property: what holds of every plan, on lines that {@link RandomLines} makes up. 200 of them here;
 * {@code -Dgradepost.lines} plans more, {@code -Dgradepost.first} others. None of these lines
 * defeats its train, so that every plan has to stand its own re-run. Its sheets alone are enough to
 * drive it, and its braking points by speed are as they must be.
 */
@Tag("slow")
class PlanPropertyTest {
  /** Rounding of a printed speed, and of the points between which a speed is read, m/s. */
  private static final double SPEED_SLACK_MPS = 0.02;

  /** How near the search for a latest point comes to it, with room. */
  private static final double ROOT_M = 0.05;

  private static final double ROUNDING = 1e-6;

  private int brakings;

  @Test
  void everyMadeUpLineIsPlannedWithinTheRules() {
    int first = Integer.getInteger("gradepost.first", 1);
    int lines = Integer.getInteger("gradepost.lines", Examples.of(12, 400));
    List<String> wrong = new ArrayList<>();
    BySpeedJudge bySpeed = new BySpeedJudge();
    SheetsDriven driven = new SheetsDriven();
    for (int seed = first; seed < first + lines; seed++) {
      try {
        Plan plan = Planner.plan(RandomLines.of(seed).assignment());
        for (String fault : faults(plan)) {
          wrong.add("seed " + seed + ": " + fault);
        }
        bySpeed.look("seed " + seed, plan);
        driven.look("seed " + seed, plan);
      } catch (RuntimeException e) {
        wrong.add("seed " + seed + ": threw " + e + " at " + e.getStackTrace()[0]);
      }
    }
    assertThat(wrong).isEmpty();
    assertThat(brakings).isGreaterThan(2 * lines);
    assertThat(bySpeed.wrong).isEmpty();
    assertThat(bySpeed.tables).isGreaterThan(3 * lines);
    assertThat(bySpeed.rows).isGreaterThan(3 * bySpeed.tables);
    assertThat(bySpeed.planned).isGreaterThan(8 * bySpeed.tables / 10);
    assertThat(driven.wrong()).isEmpty();
  }

  /** What is wrong with a plan, in words. */
  private List<String> faults(Plan plan) {
    List<String> faults = new ArrayList<>();
    plan.failures().forEach(f -> faults.add(f.toString()));
    arrivals(plan, faults);
    handles(plan, faults);
    ceiling(plan, faults);
    for (Approach approach : plan.approaches()) {
      for (Application application : approach.applications()) {
        points(approach, application, faults);
        otherRails(plan, approach, application, faults);
        ladder(approach, application.cases(), faults);
        ladder(approach, application.toStand(), faults);
      }
    }
    return faults;
  }

  /** The train comes to a stand once for each call after the first, in their order. */
  private static void arrivals(Plan plan, List<String> faults) {
    List<Call> calls = plan.assignment().calls();
    long stands = plan.actions().stream().filter(a -> a.command() instanceof Command.Stand).count();
    if (stands != calls.size() - 1) {
      faults.add("stands " + stands + " times for " + (calls.size() - 1) + " stops");
    }
  }

  /**
   * One notch at a time, down only where the stock can, never power and brake together. To hold a
   * speed is one action of many movements: power told where it ends goes on in the notch that the
   * handle is then in, or from it, and before anything else the handle is off.
   */
  private static void handles(Plan plan, List<String> faults) {
    boolean mayNotchDown = plan.assignment().stock().traction().notchingDown();
    movements(plan.trace(), mayNotchDown, faults);
    int notch = -1;
    boolean braked = false;
    boolean held = false;
    for (Action action : plan.actions()) {
      boolean allowed = true;
      boolean goesOn = held;
      if (held) {
        notch =
            action.command() instanceof Command.Power
                ? notchBefore(plan.trace(), action.atM())
                : notchAfter(plan.trace(), action.timeS());
      }
      held = action.command() instanceof Command.Hold;
      if (action.command() instanceof Command.Power power) {
        boolean down = goesOn ? power.notch() < notch : power.notch() <= notch;
        allowed = !braked && power.notch() <= notch + 1 && (!down || mayNotchDown);
        notch = power.notch();
      } else if (action.command() instanceof Command.ShutOff) {
        notch = -1;
      } else if (action.command() instanceof Command.Brake) {
        allowed = notch < 0 && notchAfter(plan.trace(), action.timeS()) < 0;
        braked = true;
      } else {
        braked = false;
      }
      if (!allowed) {
        faults.add("forbidden: " + action);
      }
    }
  }

  /** The same of the handle itself, moment by moment, also while a speed is held. */
  private static void movements(Trace trace, boolean mayNotchDown, List<String> faults) {
    for (int i = 1; i < trace.points().size(); i++) {
      int from = trace.points().get(i - 1).notch();
      Trace.Point to = trace.points().get(i);
      boolean down = to.notch() >= 0 && to.notch() < from;
      if (to.notch() > from + 1 || (down && !mayNotchDown)) {
        faults.add("forbidden: from notch " + from + " to " + to);
      }
    }
  }

  /** The notch in which the train comes to a place. */
  private static int notchBefore(Trace trace, double atM) {
    return trace.points().stream()
        .filter(p -> p.atM() < atM - ROUNDING)
        .reduce((p, later) -> later)
        .orElseThrow()
        .notch();
  }

  /** The notch in which the train goes on after a moment. */
  private static int notchAfter(Trace trace, double timeS) {
    return trace.points().stream()
        .filter(p -> p.timeS() > timeS + ROUNDING)
        .findFirst()
        .orElseThrow()
        .notch();
  }

  /** The restrictions of the route themselves against every part of the train. */
  private static void ceiling(Plan plan, List<String> faults) {
    Assignment assignment = plan.assignment();
    Path path = assignment.path();
    double train = assignment.formation().lengthM();
    List<Trace.Point> points = plan.trace().points();
    for (PermanentRestriction r : assignment.route().restrictions()) {
      double a = path.metresAt(r.extent().from());
      double b = path.metresAt(r.extent().to());
      double from = Math.min(a, b);
      double to = Math.max(a, b) + train;
      double over = 0;
      double overAt = 0;
      for (int i = 1; i < points.size(); i++) {
        double low = Math.max(from, points.get(i - 1).atM());
        double high = Math.min(to, points.get(i).atM());
        for (double at : new double[] {low, high}) {
          double by = speedAt(points.get(i - 1), points.get(i), at) - r.speed().metresPerSecond();
          if (low <= high && by > over) {
            over = by;
            overAt = at;
          }
        }
      }
      if (over > SPEED_SLACK_MPS) {
        faults.add(
            String.format(
                Locale.ROOT,
                "%.3f m/s over %s (%.1f to %.1f m with the tail) at %.1f m",
                over,
                r.name(),
                from,
                to,
                overAt));
      }
    }
  }

  private static double speedAt(Trace.Point p, Trace.Point q, double at) {
    if (q.atM() - p.atM() < 1e-9) {
      return Math.max(p.speedMps(), q.speedMps());
    }
    double share = (at - p.atM()) / (q.atM() - p.atM());
    double from = p.speedMps() * p.speedMps();
    return Math.sqrt(Math.max(0, from + share * (q.speedMps() * q.speedMps() - from)));
  }

  /** Every printed point lies at or before the computed one; a protected one before the planned. */
  private void points(Approach approach, Application application, List<String> faults) {
    brakings++;
    before(
        approach,
        "braking point",
        application.brakingPointM(),
        application.exactBrakingPointM(),
        faults);
    for (CaseResult result : application.told()) {
      String state = result.adhesion().name();
      result
          .plannedM()
          .ifPresent(atM -> before(approach, state, atM, application.brakingPointM(), faults));
      for (Rung rung : result.ladder()) {
        if (rung.latest() instanceof Latest.Point p) {
          before(approach, state + " " + rung.brake().name(), p.printedM(), p.exactM(), faults);
        }
      }
      if (result.protectedM().isPresent() && result.plannedM().isPresent()) {
        before(
            approach,
            state + " protected",
            result.protectedM().get(),
            result.plannedM().get(),
            faults);
      }
    }
  }

  /** What is done on another rail is done at no higher speed than is permitted there. */
  private static void otherRails(
      Plan plan, Approach approach, Application application, List<String> faults) {
    for (CaseResult result : application.told()) {
      for (Action action : result.actions()) {
        double permitted = new Ceiling(plan.ceiling()).speedAt(action.atM());
        if (action.speedMps() > permitted + SPEED_SLACK_MPS) {
          faults.add(
              name(approach) + result.adhesion().name() + " above " + permitted + ": " + action);
        }
      }
    }
  }

  private static void before(
      Approach approach, String what, double earlierM, double laterM, List<String> faults) {
    if (earlierM > laterM + ROUNDING) {
      faults.add(name(approach) + what + ": " + earlierM + " lies after " + laterM);
    }
  }

  /** Emergency is the last recourse, and a worse rail never leaves more room. */
  private static void ladder(Approach approach, List<CaseResult> cases, List<String> faults) {
    for (CaseResult result : cases) {
      notLater(
          approach,
          result.adhesion().name() + " automatic against emergency",
          latestM(result, Role.FALLBACK),
          latestM(result, Role.EMERGENCY),
          faults);
    }
    for (int i = 1; i < cases.size(); i++) {
      CaseResult better = cases.get(i - 1);
      CaseResult worse = cases.get(i);
      for (Role role : Role.values()) {
        notLater(
            approach,
            role + " " + worse.adhesion().name() + " against " + better.adhesion().name(),
            latestM(worse, role),
            latestM(better, role),
            faults);
      }
    }
  }

  private static void notLater(
      Approach approach, String what, double earlierM, double laterM, List<String> faults) {
    if (earlierM > laterM + ROOT_M) {
      faults.add(name(approach) + what + ": " + earlierM + " is later than " + laterM);
    }
  }

  /** Infinitely early where no place will do. */
  private static double latestM(CaseResult result, Role role) {
    return result.ladder().stream()
        .filter(r -> r.brake().role() == role && r.latest() instanceof Latest.Point)
        .mapToDouble(r -> ((Latest.Point) r.latest()).exactM())
        .findFirst()
        .orElse(Double.NEGATIVE_INFINITY);
  }

  private static String name(Approach approach) {
    return "approach " + approach.number() + " " + approach.target().name() + ", ";
  }
}
