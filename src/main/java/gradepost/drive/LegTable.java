package gradepost.drive;

import java.util.Arrays;

/** The steps of a leg from every place and speed of its grid, worked out once. */
final class LegTable {
  /**
   * Kinds of brake steps: lightest, heaviest, and to the most that is allowed at the next place.
   */
  static final int BRAKES = 3;

  final LegGrid grid;
  final LegSteps steps;
  final int columns;
  final int coast = 0;
  final int power = 1;
  final int ramp;
  final int off;
  final int first;
  final int main;
  final int stop;
  final int onFirst;
  final int onMain;
  final int onStop;

  /** By kind and cell: the cell below and above where it lands; −1 where it cannot be done. */
  private final int[][] low;

  private final int[][] high;
  private final double[][] share;
  private final double[][] joules;
  private final double[][] seconds;

  /** Whether it lands without power, having begun with it. */
  private final boolean[][] came;

  LegTable(LegGrid grid, LegSteps steps) {
    this.grid = grid;
    this.steps = steps;
    columns = grid.speeds + 1;
    ramp = power + grid.notches;
    off = ramp + grid.notches;
    first = off + 1;
    main = first + BRAKES;
    stop = main + BRAKES;
    onFirst = stop + BRAKES;
    onMain = onFirst + BRAKES;
    onStop = onMain + BRAKES;
    int kinds = onStop + BRAKES;
    int cells = grid.places() * columns;
    low = new int[kinds][cells];
    high = new int[kinds][cells];
    share = new double[kinds][cells];
    joules = new double[kinds][cells];
    seconds = new double[kinds][cells];
    came = new boolean[kinds][cells];
    for (int[] row : low) {
      Arrays.fill(row, -1);
    }
    for (int k = 0; k + 1 < grid.places(); k++) {
      for (int i = 0; i < columns; i++) {
        double v = grid.speed(k, i);
        if (i == columns - 1 || v < grid.mostMps[k] || k == 0 && i == 0) {
          fill(k, i, v);
        }
      }
    }
  }

  int cell(int place, int column) {
    return place * columns + column;
  }

  private void fill(int k, int i, double v) {
    int cell = cell(k, i);
    for (int n = 0; n < grid.notches; n++) {
      put(ramp + n, cell, steps.ramp(k, v, n));
    }
    if (v <= 0) {
      return;
    }
    put(coast, cell, steps.coast(k, v));
    for (int n = 0; n < grid.notches; n++) {
      put(power + n, cell, steps.power(k, v, n));
    }
    put(off, cell, steps.shutOff(k, v));
    LegSteps.Move[] light = steps.braked(k, v, grid.releasedPa(k, false), true);
    put(first, cell, light);
    put(main, cell, steps.braked(k, v, grid.releasedPa(k, true), true));
    put(stop, cell, steps.braked(k, v, grid.techniqueAt(v), false));
    put(onFirst, cell, steps.putOn(k, v, false, true));
    put(onMain, cell, steps.putOn(k, v, true, true));
    put(onStop, cell, steps.putOn(k, v, true, false));
  }

  private void put(int kind, int cell, LegSteps.Move[] moves) {
    for (int b = 0; b < moves.length; b++) {
      put(kind + b, cell, moves[b]);
    }
  }

  private void put(int kind, int cell, LegSteps.Move move) {
    if (move == null) {
      return;
    }
    double v = move.mps();
    double most = grid.mostMps[move.place()];
    if (v > most + 1e-9) {
      return;
    }
    int i = Math.min((int) (v / grid.stepMps), columns - 2);
    double above = (i + 1) * grid.stepMps;
    int top = cell(move.place(), columns - 1);
    boolean under = above < most;
    double width = under ? grid.stepMps : most - i * grid.stepMps;
    double part = width < 1e-9 || v >= most - 1e-9 ? 1 : (v - i * grid.stepMps) / width;
    low[kind][cell] = part == 1 ? top : cell(move.place(), i);
    high[kind][cell] = under ? cell(move.place(), i + 1) : top;
    share[kind][cell] = part;
    joules[kind][cell] = move.joules();
    seconds[kind][cell] = move.seconds();
    came[kind][cell] = !move.powered();
  }

  /**
   * Cost of a step and of what follows it.
   *
   * @param powered what follows where power is still on
   * @param otherwise what follows without, and what taking it off costs
   */
  double cost(int kind, int cell, double watts, double[] then) {
    int at = low[kind][cell];
    if (at < 0) {
      return Double.POSITIVE_INFINITY;
    }
    double onward = LegGrid.between(then[at], then[high[kind][cell]], share[kind][cell]);
    return joules[kind][cell] + watts * seconds[kind][cell] + onward;
  }

  /** Whether power comes off by itself on this step. */
  boolean cameOff(int kind, int cell) {
    return came[kind][cell];
  }
}
