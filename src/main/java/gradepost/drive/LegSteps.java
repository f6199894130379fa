package gradepost.drive;

/** What each control does from each place and speed, worked out once. */
final class LegSteps {
  /** One step or macro step: where it lands and what it costs. */
  record Move(int place, boolean powered, double mps, double joules, double seconds) {}

  /** A brake that is released again is on down to this share of the speed for that. */
  private static final double LOWEST = 0.6;

  /** Slower than this, a stand may need one light application alone. */
  private static final double SLOW_MPS = 5;

  private static final Move[] NONE = {};

  final LegGrid grid;
  private final double perNotchS;
  private final double leastPowerS;
  private final double leastCoastS;

  LegSteps(LegGrid grid, double perNotchS, double leastPowerS, double leastCoastS) {
    this.grid = grid;
    this.perNotchS = perNotchS;
    this.leastPowerS = leastPowerS;
    this.leastCoastS = leastCoastS;
  }

  /** Coasting to the next place; null where it may not, or does not get there. */
  Move coast(int k, double v) {
    double then = grid.after(k, v, grid.lengthM(k), -1);
    if (Double.isNaN(then) || then > grid.mostMps[k + 1] + 1e-9) {
      return null;
    }
    if (then > v && then > grid.checkFromMps[k] + 0.2) {
      return null;
    }
    return new Move(k + 1, false, then, 0, 2 * grid.lengthM(k) / (v + then));
  }

  /** Under power to the next place; it comes off on the way where the speed for that is reached. */
  Move power(int k, double v, int notch) {
    double off = grid.offMps[k];
    if (grid.dead[k] || v > off + 1e-9) {
      return null;
    }
    double length = grid.lengthM(k);
    double then = grid.after(k, v, length, notch);
    if (Double.isNaN(then)) {
      return null;
    }
    double middle = (v + then) / 2;
    if (then <= off) {
      return then > grid.mostMps[k + 1] + 1e-9
          ? null
          : new Move(k + 1, true, then, grid.effort(notch, middle) * length, length / middle);
    }
    double share = (off * off - v * v) / (then * then - v * v);
    double powered = share * length;
    middle = (v + off) / 2;
    double joules = grid.effort(notch, middle) * powered;
    double seconds = powered / middle;
    double rest = length - powered;
    double end = rest < 1e-9 ? off : grid.after(k, off, rest, -1);
    if (Double.isNaN(end) || end > grid.mostMps[k + 1] + 1e-9) {
      return null;
    }
    return new Move(k + 1, false, end, joules, seconds + 2 * rest / (off + end));
  }

  /** Power taken notch by notch up to one, for the least time of power; lands at a place. */
  Move ramp(int k, double v, int top) {
    if (v > grid.onMps[k] + 1e-9) {
      return null;
    }
    double seconds = 0;
    double joules = 0;
    double speed = v;
    double at = grid.placeM[k];
    int place = k;
    double longEnough = Math.max(leastPowerS, top * perNotchS);
    while (true) {
      if (grid.dead[place] || place + 1 >= grid.places()) {
        return null;
      }
      int notch = Math.min(top, (int) (seconds / perNotchS + 1e-9));
      double left = grid.placeM[place + 1] - at;
      double middle = speed;
      double slice = notch < top ? (notch + 1) * perNotchS - seconds : 2;
      // By time within a notch, so that a stand can be left.
      double a = 0;
      for (int pass = 0; pass < 3; pass++) {
        a = (grid.effort(notch, middle) - grid.againstN(place, middle)) / grid.inertiaKg;
        middle = Math.max(0, speed + a * slice / 2);
      }
      double run = speed * slice + a * slice * slice / 2;
      if (run <= 0 && speed <= 0) {
        return null;
      }
      if (run > left) {
        double square = speed * speed + 2 * a * left;
        double then = square > 0 ? Math.sqrt(square) : 0;
        slice = 2 * left / (speed + then);
        run = left;
      }
      double then = speed + a * slice;
      if (then <= 0) {
        return null;
      }
      if (then > grid.offMps[place]) {
        // Off at the speed for it, and on to the next place.
        double part = Math.max(0, (grid.offMps[place] - speed) / (then - speed));
        double end = at + Math.max(0, part * run);
        joules += grid.effort(notch, (speed + then) / 2) * part * run;
        seconds += part * slice;
        double off = grid.offMps[place];
        double rest = grid.placeM[place + 1] - end;
        double last = rest < 1e-9 ? off : grid.after(place, off, rest, -1);
        if (Double.isNaN(last) || last > grid.mostMps[place + 1] + 1e-9) {
          return null;
        }
        return new Move(place + 1, false, last, joules, seconds + 2 * rest / (off + last));
      }
      joules += grid.effort(notch, (speed + then) / 2) * run;
      seconds += slice;
      at += run;
      speed = then;
      if (at >= grid.placeM[place + 1] - 1e-6) {
        place++;
        at = grid.placeM[place];
        if (speed > grid.mostMps[place] + 1e-9) {
          return null;
        }
        if (seconds >= longEnough - 1e-9) {
          return new Move(place, true, speed, joules, seconds);
        }
        if (place + 1 >= grid.places()) {
          return null;
        }
      }
    }
  }

  /** Power taken off: at least so much coasting follows before a braking point. */
  Move shutOff(int k, double v) {
    Move all = new Move(k, false, v, 0, 0);
    while (all.seconds() < leastCoastS && all.place() + 1 < grid.places()) {
      Move more = coast(all.place(), all.mps());
      if (more == null) {
        break;
      }
      all = new Move(more.place(), false, more.mps(), 0, all.seconds() + more.seconds());
    }
    return all;
  }

  /** Pressure of a first application towards a stand, at this speed. */
  private double lightPa(double v) {
    return Math.min(grid.techniqueAt(v), grid.firstStopPa);
  }

  /** Braked up to a pressure: as little as may be, as much, and to the most at the next place. */
  Move[] braked(int k, double v, double mostPa, boolean released) {
    if (released && v < LOWEST * grid.releaseMps[k]) {
      return NONE;
    }
    return new Move[] {
      braked(k, v, grid.lengthM(k), true, mostPa, released),
      braked(k, v, grid.lengthM(k), false, mostPa, released),
      towardsMost(k, v, grid.lengthM(k), mostPa, released)
    };
  }

  /**
   * The brake put on: it slows the train after its lag only, and a main application comes when the
   * first has been held.
   */
  Move[] putOn(int k, double v, boolean heavy, boolean released) {
    Move late = new Move(k, false, v, 0, 0);
    double left = grid.lengthM(k);
    double light = released ? grid.releasedPa(k, false) : lightPa(v);
    double[] phases = {grid.lagS, heavy && v > SLOW_MPS ? grid.firstHeldS : 0};
    for (int phase = 0; phase < 2; phase++) {
      double seconds = phases[phase];
      while (seconds > 1e-9) {
        double speed = late.mps();
        double metres = Math.min(left, speed * seconds);
        Move part =
            phase == 0
                ? rolled(late.place(), speed, metres)
                : braked(late.place(), speed, metres, false, light, released);
        if (part == null || part.mps() <= 0 || part.mps() > grid.mostMps[late.place()] + 1) {
          return NONE;
        }
        left -= metres;
        seconds = left < 1e-6 ? seconds - part.seconds() : 0;
        late = new Move(late.place(), false, part.mps(), 0, late.seconds() + part.seconds());
        if (left < 1e-6) {
          if (late.place() + 2 >= grid.places() || late.mps() > grid.mostMps[late.place() + 1]) {
            return NONE;
          }
          late = new Move(late.place() + 1, false, late.mps(), 0, late.seconds());
          left = grid.lengthM(late.place());
        }
      }
    }
    double pa = released ? grid.releasedPa(late.place(), heavy) : grid.techniqueAt(late.mps());
    Move[] ends = {
      braked(late.place(), late.mps(), left, true, pa, released),
      braked(late.place(), late.mps(), left, false, pa, released),
      towardsMost(late.place(), late.mps(), left, pa, released)
    };
    for (int i = 0; i < ends.length; i++) {
      if (ends[i] != null) {
        double seconds = late.seconds() + ends[i].seconds();
        ends[i] = new Move(ends[i].place(), false, ends[i].mps(), 0, seconds);
      }
    }
    return ends;
  }

  private Move rolled(int k, double v, double metres) {
    double then = grid.after(k, v, metres, -1);
    return Double.isNaN(then) ? null : new Move(k, false, then, 0, 2 * metres / (v + then));
  }

  /** Braked with a force; null where that comes to a stand before. */
  private Move braked(
      int k, double v, double length, boolean least, double mostPa, boolean released) {
    double then = v;
    for (int pass = 0; pass < 3; pass++) {
      double middle = (v + then) / 2;
      double most = Math.max(grid.brakeN(mostPa, middle), grid.leastBrakeN(k, middle, released));
      double force = least ? Math.min(most, grid.leastBrakeN(k, middle, released)) : most;
      double square = v * v - 2 * (force + grid.againstN(k, middle)) / grid.inertiaKg * length;
      if (square < 0) {
        return null;
      }
      then = Math.sqrt(square);
    }
    return v + then <= 0 ? null : new Move(k + 1, false, then, 0, 2 * length / (v + then));
  }

  /** Braked as much as brings the train to the most that is allowed at the next place. */
  private Move towardsMost(int k, double v, double length, double mostPa, boolean released) {
    double then = grid.mostMps[k + 1];
    if (v + then <= 0 || then > v) {
      return null;
    }
    double middle = (v + then) / 2;
    double force = grid.inertiaKg * (v * v - then * then) / (2 * length) - grid.againstN(k, middle);
    double most = Math.max(grid.brakeN(mostPa, middle), grid.leastBrakeN(k, middle, released));
    if (force < Math.min(most, grid.leastBrakeN(k, middle, released)) - 1
        || force > most * (1 + 1e-4) + 1) {
      return null;
    }
    return new Move(k + 1, false, then, 0, 2 * length / (v + then));
  }
}
