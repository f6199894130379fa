package gradepost.drive;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The least that a leg can cost, by dynamic programming over place, speed and the handles: energy,
 * with a price on each second and on each handle movement.
 */
final class LegCosts {
  private final LegTable table;
  private final LegGrid grid;
  private final int notches;
  private final int stopMoves;
  private final int first;
  private final int main;
  private final int stop;

  /** By state of the handles and cell. */
  private final double[][] value;

  private double watts;
  private double perMove;

  LegCosts(LegTable table, int stopMoves) {
    this.table = table;
    this.grid = table.grid;
    this.stopMoves = stopMoves;
    notches = grid.notches;
    first = notches + 1;
    main = notches + 2;
    stop = notches + 3;
    value = new double[notches + 4][grid.places() * table.columns];
  }

  /** The least cost of the whole leg at these prices: joules. */
  double priced(double wattsOfTime, double joulesOfMove) {
    watts = wattsOfTime;
    perMove = joulesOfMove;
    for (double[] row : value) {
      Arrays.fill(row, Double.POSITIVE_INFINITY);
    }
    int last = grid.places() - 1;
    value[stop][table.cell(last, 0)] = 0;
    value[stop][table.cell(last, table.columns - 1)] = 0;
    for (int k = last - 1; k >= 0; k--) {
      for (int i = 0; i < table.columns - 1 && grid.speed(k, i) < grid.mostMps[k]; i++) {
        settle(k, i);
      }
      settle(k, table.columns - 1);
    }
    return value[0][table.cell(0, table.columns - 1)];
  }

  private void settle(int k, int i) {
    int cell = table.cell(k, i);
    boolean free = grid.speed(k, i) <= grid.releaseMps[k] + 1e-9;
    double onStop = braked(table.stop, cell, stop);
    double onMain = braked(table.main, cell, main);
    double onFirst = Math.min(braked(table.first, cell, first), perMove + onMain);
    double coasting = table.cost(table.coast, cell, watts, value[0]);
    for (int n = 0; n < notches; n++) {
      coasting = Math.min(coasting, (n + 1) * perMove + powered(table.ramp + n, cell, n));
    }
    coasting = Math.min(coasting, perMove + braked(table.onFirst, cell, first));
    coasting = Math.min(coasting, 2 * perMove + braked(table.onMain, cell, main));
    coasting = Math.min(coasting, stopMoves * perMove + braked(table.onStop, cell, stop));
    value[0][cell] = coasting;
    value[first][cell] = free ? Math.min(onFirst, perMove + coasting) : onFirst;
    value[main][cell] = free ? Math.min(onMain, perMove + coasting) : onMain;
    value[stop][cell] = onStop;
    double off = perMove + table.cost(table.off, cell, watts, value[0]);
    double higher = Double.POSITIVE_INFINITY;
    for (int n = notches - 1; n >= 0; n--) {
      double on = Math.min(off, powered(table.power + n, cell, n));
      higher = Math.min(on, higher + perMove);
      value[1 + n][cell] = higher;
    }
  }

  private double powered(int kind, int cell, int notch) {
    return table.cameOff(kind, cell)
        ? perMove + table.cost(kind, cell, watts, value[0])
        : table.cost(kind, cell, watts, value[1 + notch]);
  }

  private double braked(int kind, int cell, int state) {
    double best = Double.POSITIVE_INFINITY;
    for (int b = 0; b < LegTable.BRAKES; b++) {
      best = Math.min(best, table.cost(kind + b, cell, watts, value[state]));
    }
    return best;
  }

  /** A step that could be taken, into a state, after so many movements. */
  private record Option(LegSteps.Move move, int state, int moves) {}

  /**
   * The way that costs least at the prices of the last call, as a guide; null where there is none.
   */
  Guide guide() {
    LegSteps steps = table.steps;
    Guide.Maker maker = new Guide.Maker();
    int k = 0;
    int state = 0;
    double v = 0;
    while (k < grid.places() - 1) {
      double best = Double.POSITIVE_INFINITY;
      Option take = null;
      for (Option option : options(steps, k, v, state)) {
        double cost = cost(option);
        if (cost < best) {
          best = cost;
          take = option;
        }
      }
      if (take == null) {
        return null;
      }
      double at = grid.placeM[k];
      boolean was = state > 0 && state <= notches;
      boolean is = take.state() > 0 && take.state() <= notches;
      maker.point(at, v);
      if (is) {
        maker.power(at, take.state() - 1, was);
      } else if (was) {
        maker.off(at, v);
      }
      if (state > notches && state != stop && take.state() == 0) {
        maker.released(at, v);
      }
      if (is && !take.move().powered()) {
        // By the rule's own speed.
        maker.off(grid.placeM[take.move().place()], Double.POSITIVE_INFINITY);
      }
      state = is && !take.move().powered() ? 0 : take.state();
      k = take.move().place();
      v = take.move().mps();
    }
    maker.point(grid.placeM[k], v);
    return maker.guide();
  }

  private List<Option> options(LegSteps steps, int k, double v, int state) {
    List<Option> all = new ArrayList<>();
    boolean rolling = v > 0;
    boolean braking = state > notches && state != stop;
    if (state == 0 || braking && v <= grid.releaseMps[k] + 1e-9) {
      int moves = state == 0 ? 0 : 1;
      if (rolling) {
        add(all, steps.coast(k, v), 0, moves);
      }
      for (int n = 0; n < notches; n++) {
        add(all, steps.ramp(k, v, n), 1 + n, moves + n + 1);
      }
      if (state == 0 && rolling) {
        addAll(all, steps.putOn(k, v, false, true), first, 1);
        addAll(all, steps.putOn(k, v, true, true), main, 2);
        addAll(all, steps.putOn(k, v, true, false), stop, stopMoves);
      }
    }
    if (braking && rolling) {
      double pa = grid.releasedPa(k, state != first);
      addAll(all, steps.braked(k, v, pa, true), state, 0);
      if (state == first) {
        addAll(all, steps.braked(k, v, grid.releasedPa(k, true), true), main, 1);
      }
    }
    if (state == stop && rolling) {
      addAll(all, steps.braked(k, v, grid.techniqueAt(v), false), stop, 0);
    }
    if (state > 0 && state <= notches) {
      add(all, steps.shutOff(k, v), 0, 1);
      for (int s = state; s <= notches; s++) {
        add(all, steps.power(k, v, s - 1), s, s - state);
      }
    }
    return all;
  }

  private static void add(List<Option> all, LegSteps.Move move, int state, int moves) {
    if (move != null) {
      all.add(new Option(move, state, moves));
    }
  }

  private static void addAll(List<Option> all, LegSteps.Move[] some, int state, int moves) {
    for (LegSteps.Move move : some) {
      add(all, move, state, moves);
    }
  }

  private double cost(Option option) {
    LegSteps.Move move = option.move();
    boolean power = option.state() > 0 && option.state() <= notches;
    boolean off = power && !move.powered();
    double onward = onward(move.place(), move.mps(), value[off ? 0 : option.state()]);
    int moves = option.moves() + (off ? 1 : 0);
    return move.joules() + watts * move.seconds() + moves * perMove + onward;
  }

  private double onward(int place, double v, double[] then) {
    double most = grid.mostMps[place];
    if (v > most + 1e-9) {
      return Double.POSITIVE_INFINITY;
    }
    int i = Math.min((int) (v / grid.stepMps), table.columns - 2);
    double above = Math.min(most, (i + 1) * grid.stepMps);
    double width = above - i * grid.stepMps;
    double part = width < 1e-9 || v >= most - 1e-9 ? 1 : (v - i * grid.stepMps) / width;
    int top = (i + 1) * grid.stepMps < most ? i + 1 : table.columns - 1;
    double a = part == 1 ? then[table.cell(place, top)] : then[table.cell(place, i)];
    double b = then[table.cell(place, top)];
    return LegGrid.between(a, b, part);
  }
}
