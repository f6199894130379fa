package gradepost.drive.grid;

import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The steps of a leg from every place and speed of its grid, worked out once. */
final class LegTable {
  final LegGrid grid;
  final LegSteps steps;
  final int columns;
  final int brakings;
  final int coast = 0;
  final int power = 1;
  final int ramp;
  final int off;
  final int check;
  final int checked;

  /** Brakings begun coasting, and with a checking application on. */
  final int coasting;

  final int checking;

  private final int kinds;

  /**
   * By cell and, within it, kind, as they are read: the cell below and above where it lands; −1
   * where it cannot be done.
   */
  private final int[] low;

  private final int[] high;
  private final double[] share;
  private final double[] joules;
  private final double[] seconds;
  private final byte[] moves;

  /** Whether it lands without power, having begun with it. */
  private final boolean[] came;

  /** Whether it lands with the brake on. */
  private final boolean[] braked;

  LegTable(LegGrid grid, LegSteps steps) {
    this.grid = grid;
    this.steps = steps;
    columns = grid.speeds + 1;
    brakings = grid.settings.brakings();
    ramp = power + grid.notches;
    off = ramp + grid.notches;
    check = off + 1;
    checked = check + 1;
    coasting = checked + 1;
    checking = coasting + brakings;
    kinds = checking + brakings;
    int all = grid.places() * columns * kinds;
    low = new int[all];
    high = new int[all];
    share = new double[all];
    joules = new double[all];
    seconds = new double[all];
    moves = new byte[all];
    came = new boolean[all];
    braked = new boolean[all];
    Arrays.fill(low, -1);
    for (int k = 0; k + 1 < grid.places(); k++) {
      for (int i = 0; i < columns; i++) {
        double v = grid.speed(k, i);
        if (i == columns - 1 || v < grid.mostMps[k] || (k == 0 && i == 0)) {
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
      put(ramp + n, cell, steps.notchUp(k, v, n));
    }
    if (v <= 0) {
      return;
    }
    put(coast, cell, steps.coast(k, v));
    for (int n = 0; n < grid.notches; n++) {
      put(power + n, cell, steps.power(k, v, n));
    }
    put(off, cell, steps.shutOff(k, v));
    put(check, cell, steps.check(k, v));
    put(checked, cell, steps.checked(k, v));
    put(coasting, cell, steps.brakings(k, v, 0));
    put(checking, cell, steps.brakings(k, v, grid.checkPa[k]));
  }

  /** Those that land somewhere, one behind the other. */
  private void put(int kind, int cell, List<LegSteps.Move> moves) {
    int next = kind;
    for (LegSteps.Move move : moves.subList(0, Math.min(brakings, moves.size()))) {
      next += put(next, cell, move) ? 1 : 0;
    }
  }

  /** Whether it lands somewhere. */
  private boolean put(int kind, int cell, LegSteps.@Nullable Move move) {
    if (move == null) {
      return false;
    }
    LegGrid.Landing at = grid.landing(move.place(), move.mps());
    if (at == null) {
      return false;
    }
    int step = cell * kinds + kind;
    low[step] = cell(move.place(), at.low());
    high[step] = cell(move.place(), at.high());
    share[step] = at.share();
    joules[step] = move.joules();
    seconds[step] = move.seconds();
    moves[step] = (byte) move.moves();
    came[step] = !move.powered();
    braked[step] = move.braked();
    return true;
  }

  /** Cost of a step and of what follows it. */
  double cost(int kind, int cell, double watts, double perMove, double[] then) {
    int step = cell * kinds + kind;
    int at = low[step];
    if (at < 0) {
      return Double.POSITIVE_INFINITY;
    }
    double onward = LegGrid.between(then[at], then[high[step]], share[step]);
    return joules[step] + watts * seconds[step] + perMove * moves[step] + onward;
  }

  /** Whether a step can be made at all. */
  boolean lands(int kind, int cell) {
    return low[cell * kinds + kind] >= 0;
  }

  /** Whether a braking leaves the brake on at its end. */
  boolean staysOn(int kind, int cell) {
    return braked[cell * kinds + kind];
  }

  /** Whether power comes off by itself on this step. */
  boolean cameOff(int kind, int cell) {
    return came[cell * kinds + kind];
  }
}
