package gradepost.drive.grid;

import gradepost.drive.brake.BrakeCurve;
import gradepost.drive.brake.Slack;
import gradepost.motion.EvenChange;
import gradepost.motion.NoEnd;
import gradepost.policy.RunRules;
import gradepost.stock.Traction;
import gradepost.task.Assignment;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What each control does from each place and speed, worked out once. */
final class LegSteps {
  /**
   * One step, or several: where it lands and what it costs.
   *
   * @param braked whether it lands with the brake on
   * @param moves handle movements on the way
   * @param releasedMps of a braking for a lower speed: where the brake came off
   */
  record Move(
      int place,
      boolean powered,
      double mps,
      double joules,
      double seconds,
      boolean braked,
      int moves,
      double releasedMps) {
    Move(int place, boolean powered, double mps, double joules, double seconds) {
      this(place, powered, mps, joules, seconds, false, 0, 0);
    }
  }

  final LegGrid grid;
  private final Traction traction;
  private final double perNotchS;
  private final double leastPowerS;
  private final double leastCoastS;

  LegSteps(Assignment assignment, LegGrid grid) {
    this.grid = grid;
    RunRules run = assignment.policy().run();
    traction = assignment.stock().traction();
    perNotchS = traction.timePerNotch().seconds();
    leastPowerS = run.leastPower().seconds();
    leastCoastS = run.coastBeforeBraking().seconds();
  }

  /** Coasting to the next place; null where it may not, or does not get there. */
  @Nullable Move coast(int k, double v) {
    double then = grid.after(k, v, grid.lengthM(k), -1, 0);
    if (Double.isNaN(then)
        || then > grid.mostMps[k + 1] + Slack.ROUNDING
        || then < grid.leastMps[k + 1]) {
      return null;
    }
    if (then > v && grid.checks(k, then)) {
      return null;
    }
    return new Move(k + 1, false, then, 0, EvenChange.seconds(grid.lengthM(k), v, then));
  }

  /** Under power to the next place; it comes off on the way where the speed for that is reached. */
  @Nullable Move power(int k, double v, int notch) {
    double off = grid.offMps[k];
    if (grid.dead[k] || v > off + Slack.ROUNDING || !traction.runs(notch)) {
      return null;
    }
    double length = grid.lengthM(k);
    double then = grid.after(k, v, length, notch, 0);
    if (Double.isNaN(then)) {
      return null;
    }
    double middle = (v + then) / 2;
    if (then <= off) {
      return then > grid.mostMps[k + 1] + Slack.ROUNDING
          ? null
          : new Move(k + 1, true, then, grid.effort(notch, middle) * length, length / middle);
    }
    double share = EvenChange.shareAt(v, then, off);
    double powered = share * length;
    middle = (v + off) / 2;
    double joules = grid.effort(notch, middle) * powered;
    double seconds = powered / middle;
    return coastedOn(k, off, length - powered, joules, seconds);
  }

  /** Without power over the rest of a segment; null where it may not, or does not get there. */
  private @Nullable Move coastedOn(int k, double v, double metres, double joules, double seconds) {
    double end = metres < Slack.ROUNDING ? v : grid.after(k, v, metres, -1, 0);
    return Double.isNaN(end) || end > grid.mostMps[k + 1] + Slack.ROUNDING
        ? null
        : new Move(k + 1, false, end, joules, seconds + EvenChange.seconds(metres, v, end));
  }

  /**
   * Power taken notch by notch up to one, from here or from where the speed has fallen so far on
   * this segment, for the least time of power; lands at a place.
   */
  @Nullable Move notchUp(int k, double v, int top) {
    if (!traction.runs(top)) {
      return null;
    }
    double speed = Math.min(v, grid.onMps[k]);
    double at = grid.placeM[k];
    double coastedS = 0;
    if (v > speed + Slack.ROUNDING) {
      double then = grid.after(k, v, grid.lengthM(k), -1, 0);
      if (Double.isNaN(then) || then > speed) {
        return null;
      }
      double coastedM = EvenChange.shareAt(v, then, speed) * grid.lengthM(k);
      at += coastedM;
      coastedS = EvenChange.seconds(coastedM, v, speed);
    }
    double seconds = 0;
    double joules = 0;
    int place = k;
    double longEnough = Math.max(leastPowerS, top * perNotchS);
    int steps = grid.way.notchUpSteps();
    for (int step = 0; step < steps; step++) {
      if (grid.dead[place] || place + 1 >= grid.places()) {
        return null;
      }
      int notch = perNotchS > 0 ? Math.min(top, (int) (seconds / perNotchS + Slack.ROUNDING)) : top;
      double left = grid.placeM[place + 1] - at;
      double middle = speed;
      double slice = notch < top ? (notch + 1) * perNotchS - seconds : 2;
      // By time within a notch, so that a stand can be left.
      double a = 0;
      for (int pass = 0; pass < 3; pass++) {
        a = grid.accelerationMps2(place, middle, notch, 0);
        middle = Math.max(0, speed + a * slice / 2);
      }
      double run = speed * slice + a * slice * slice / 2;
      if (run <= 0 && speed <= 0) {
        return null;
      }
      if (run > left) {
        double square = speed * speed + 2 * a * left;
        double then = square > 0 ? Math.sqrt(square) : 0;
        slice = EvenChange.seconds(left, speed, then);
        run = left;
      }
      double then = speed + a * slice;
      if (then <= 0 || (a <= 0 && then < grid.way.standsMps())) {
        return null;
      }
      if (then > grid.offMps[place]) {
        // Off at the speed for it, and on to the next place.
        double part = Math.max(0, (grid.offMps[place] - speed) / (then - speed));
        if (v > 0 && seconds + part * slice < leastPowerS) {
          return null;
        }
        double end = at + Math.max(0, part * run);
        joules += grid.effort(notch, (speed + then) / 2) * part * run;
        seconds += part * slice;
        double rest = grid.placeM[place + 1] - end;
        return coastedOn(place, grid.offMps[place], rest, joules, coastedS + seconds);
      }
      joules += grid.effort(notch, (speed + then) / 2) * run;
      seconds += slice;
      at += run;
      speed = then;
      if (at >= grid.placeM[place + 1] - Slack.PLACE_M) {
        place++;
        at = grid.placeM[place];
        if (speed > grid.mostMps[place] + Slack.ROUNDING) {
          return null;
        }
        if (seconds >= longEnough - Slack.ROUNDING) {
          return new Move(place, true, speed, joules, coastedS + seconds);
        }
        if (place + 1 >= grid.places()) {
          return null;
        }
      }
    }
    throw new NoEnd("power is not fully on within " + steps + " steps");
  }

  /** Power taken off: at least so much coasting follows before a braking point. */
  @Nullable Move shutOff(int k, double v) {
    Move all = new Move(k, false, v, 0, 0);
    while (all.place() + 1 < grid.places()) {
      Move more = coast(all.place(), all.mps());
      if (more == null) {
        double seconds = grid.lengthM(all.place()) / all.mps();
        return all.seconds() + seconds < leastCoastS ? null : all;
      }
      if (all.seconds() + more.seconds() > leastCoastS) {
        return all;
      }
      all = new Move(more.place(), false, more.mps(), 0, all.seconds() + more.seconds());
    }
    return all;
  }

  /**
   * Coasting, or with a checking application on, up to where a braking begins on this segment, and
   * that braking to its end.
   *
   * @param pa of the checking application; 0 without
   */
  List<Move> brakings(int k, double v, double pa) {
    double length = grid.lengthM(k);
    double then = grid.after(k, v, length, -1, pa);
    if (Double.isNaN(then)) {
      return List.of();
    }
    List<LegGrid.Curve> curves = grid.curvesAt(k);
    double[] shares = new double[curves.size()];
    double first = Double.POSITIVE_INFINITY;
    for (int c = 0; c < shares.length; c++) {
      LegGrid.Curve curve = curves.get(c);
      shares[c] = crossed(curve.brake(), k, v, then);
      if (curve.must() && shares[c] < first) {
        first = shares[c];
      }
    }
    List<Move> all = new ArrayList<>();
    for (int c = 0; c < shares.length; c++) {
      if (shares[c] <= first + Slack.ROUNDING) {
        LegGrid.Curve curve = curves.get(c);
        double runM = shares[c] * length;
        double speed = EvenChange.speedMps(v, then, shares[c]);
        double seconds = EvenChange.seconds(runM, v, speed);
        all.add(braking(grid.curves.get(curve.instead()), k, runM, speed, seconds));
      }
    }
    return all;
  }

  private Move braking(LegGrid.Curve curve, int k, double runM, double speed, double seconds) {
    BrakeCurve brake = curve.brake();
    double spareM = brake.placeM(speed) - grid.placeM[k] - runM;
    return new Move(
        curve.place(),
        false,
        brake.endMps(speed),
        0,
        seconds + brake.seconds(speed) + Math.max(0, spareM) / speed,
        brake.staysOn(),
        brake.moves(speed),
        brake.releaseMps());
  }

  /** At which share of a segment a braking has to begin; NaN where it has not, or too late. */
  private double crossed(BrakeCurve brake, int k, double v, double then) {
    double before = brake.placeM(v) - grid.placeM[k];
    double behind = brake.placeM(then) - grid.placeM[k + 1];
    if (before < -grid.way.lateM() || behind > 0 || v <= brake.freeMps()) {
      return Double.NaN;
    }
    return before <= 0 ? 0 : before / (before - behind);
  }

  /** A checking application, on to the next place; null where it may not, or does not get there. */
  @Nullable Move checked(int k, double v) {
    if (v < grid.way.lowestChecked() * grid.checkToMps[k]) {
      return null;
    }
    double then = grid.after(k, v, grid.lengthM(k), -1, grid.checkPa[k]);
    return Double.isNaN(then) || then > grid.mostMps[k + 1] + Slack.ROUNDING
        ? null
        : new Move(k + 1, false, then, 0, EvenChange.seconds(grid.lengthM(k), v, then));
  }

  /**
   * The speed is checked, from here or from where it has risen so far on this segment: after its
   * lag the brake slows the train.
   */
  @Nullable Move check(int k, double v) {
    double length = grid.lengthM(k);
    double from = v;
    double before = 0;
    if (!grid.mayCheck(k, v)) {
      from = grid.checkFromMps[k];
      double coasted = grid.after(k, v, length, -1, 0);
      if (Double.isNaN(coasted) || coasted < from) {
        return null;
      }
      before = EvenChange.shareAt(v, coasted, from) * length;
    }
    double rolled = Math.min(length, before + from * grid.lagS);
    double then = grid.after(k, v, rolled, -1, 0);
    double left = length - rolled;
    if (Double.isNaN(then)) {
      return null;
    }
    double seconds = EvenChange.seconds(rolled, v, then);
    double end = left < Slack.PLACE_M ? then : grid.after(k, then, left, -1, grid.checkPa[k]);
    return Double.isNaN(end) || end > grid.mostMps[k + 1] + Slack.ROUNDING
        ? null
        : new Move(k + 1, false, end, 0, seconds + EvenChange.seconds(left, then, end));
  }
}
