package gradepost.drive.grid;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;

/**
 * Dynamic programming over place, speed, control and the movements that are left: the least energy
 * that it finds on its grid. That is no bound: a run between the points of the grid may need less.
 */
final class FinerGrid {
  private final LegGrid grid;
  private final LegSteps moves;
  private final int most;
  private final int notches;
  private final int check;

  /** By place, movements left, state, speed. */
  private final double[][][][] value;

  // by place, speed
  private final LegSteps.Move[][] coast;
  private final LegSteps.Move[][][] power;
  private final LegSteps.Move[][][] ramp;
  private final LegSteps.Move[][] off;
  private final LegSteps.Move[][] on;
  private final LegSteps.Move[][] checked;
  private final List<List<List<LegSteps.Move>>> coasting = new ArrayList<>();
  private final List<List<List<LegSteps.Move>>> checking = new ArrayList<>();

  FinerGrid(LegGrid grid, LegSteps moves, int most) {
    this.grid = grid;
    this.moves = moves;
    this.most = most;
    notches = grid.notches;
    check = notches + 1;
    int cols = grid.speeds + 1;
    int n = grid.places();
    value = new double[n][most + 1][notches + 2][cols];
    coast = new LegSteps.Move[n][cols];
    power = new LegSteps.Move[notches][n][cols];
    ramp = new LegSteps.Move[notches][n][cols];
    off = new LegSteps.Move[n][cols];
    on = new LegSteps.Move[n][cols];
    checked = new LegSteps.Move[n][cols];
    for (int k = 0; k < n; k++) {
      coasting.add(new ArrayList<>(Collections.nCopies(cols, List.of())));
      checking.add(new ArrayList<>(Collections.nCopies(cols, List.of())));
    }
    for (int k = 0; k + 1 < n; k++) {
      for (int i = 0; i < cols; i++) {
        double v = grid.speed(k, i);
        if (v > grid.mostMps[k] || (i < cols - 1 && v == grid.mostMps[k] && k > 0)) {
          continue;
        }
        fill(k, i, v);
      }
    }
  }

  private void fill(int k, int i, double v) {
    for (int n = 0; n < notches; n++) {
      ramp[n][k][i] = moves.notchUp(k, v, n);
    }
    if (v <= 0) {
      return;
    }
    coast[k][i] = moves.coast(k, v);
    for (int n = 0; n < notches; n++) {
      power[n][k][i] = moves.power(k, v, n);
    }
    off[k][i] = moves.shutOff(k, v);
    on[k][i] = moves.check(k, v);
    checked[k][i] = moves.checked(k, v);
    coasting.get(k).set(i, moves.brakings(k, v, 0));
    checking.get(k).set(i, moves.brakings(k, v, grid.checkPa[k]));
  }

  double leastJ(double timeS) {
    double low = Math.log(1e4);
    double high = Math.log(2e7);
    double golden = (Math.sqrt(5) - 1) / 2;
    double a = high - golden * (high - low);
    double b = low + golden * (high - low);
    double atA = priced(Math.exp(a), timeS);
    double atB = priced(Math.exp(b), timeS);
    double best = Math.max(0, Math.max(atA, atB));
    for (int i = 0; i < 9; i++) {
      if (atA > atB) {
        high = b;
        b = a;
        atB = atA;
        a = high - golden * (high - low);
        atA = priced(Math.exp(a), timeS);
        best = Math.max(best, atA);
      } else {
        low = a;
        a = b;
        atA = atB;
        b = low + golden * (high - low);
        atB = priced(Math.exp(b), timeS);
        best = Math.max(best, atB);
      }
    }
    return best;
  }

  double priced(double watts, double timeS) {
    int n = grid.places();
    int cols = grid.speeds + 1;
    for (double[][][] a : value) {
      for (double[][] b : a) {
        for (double[] c : b) {
          Arrays.fill(c, Double.POSITIVE_INFINITY);
        }
      }
    }
    for (int m = 0; m <= most; m++) {
      value[n - 1][m][0][cols - 1] = 0;
      value[n - 1][m][0][0] = 0;
    }
    for (int k = n - 2; k >= 0; k--) {
      for (int m = 0; m <= most; m++) {
        double[][] v = value[k][m];
        for (int i = 0; i < cols; i++) {
          for (int p = notches - 1; p >= 0; p--) {
            double best = hold(power[p][k][i], m, 1 + p, watts);
            if (m >= 1) {
              if (p + 1 < notches) {
                best = Math.min(best, value[k][m - 1][2 + p][i]);
              }
              best = Math.min(best, hold(off[k][i], m - 1, 0, watts));
            }
            v[1 + p][i] = best;
          }
          double best = Math.min(hold(coast[k][i], m, 0, watts), brakes(coasting, k, i, m, watts));
          for (int p = 0; p < notches; p++) {
            if (m >= p + 1) {
              best = Math.min(best, hold(ramp[p][k][i], m - p - 1, 1 + p, watts));
            }
          }
          if (m >= 1) {
            best = Math.min(best, hold(on[k][i], m - 1, check, watts));
          }
          v[0][i] = best;
          double released =
              m >= 1 && grid.releases(k, grid.speed(k, i))
                  ? value[k][m - 1][0][i]
                  : Double.POSITIVE_INFINITY;
          v[check][i] =
              Math.min(
                  released,
                  Math.min(hold(checked[k][i], m, check, watts), brakes(checking, k, i, m, watts)));
        }
      }
    }
    return value[0][most][0][0] - watts * timeS;
  }

  private double hold(LegSteps.Move move, int m, int state, double watts) {
    if (move == null) {
      return Double.POSITIVE_INFINITY;
    }
    double cost = move.joules() + watts * move.seconds();
    if (state > 0 && state <= notches && !move.powered()) {
      // It came off on the way.
      return m < 1 ? Double.POSITIVE_INFINITY : cost + onward(move.place(), m - 1, 0, move.mps());
    }
    return cost + onward(move.place(), m, state, move.mps());
  }

  private double brakes(List<List<List<LegSteps.Move>>> all, int k, int i, int m, double watts) {
    double best = Double.POSITIVE_INFINITY;
    for (LegSteps.Move move : all.get(k).get(i)) {
      if (move.moves() <= m) {
        best = Math.min(best, hold(move, m - move.moves(), move.braked() ? check : 0, watts));
      }
    }
    return best;
  }

  private double onward(int k, int m, int state, double speed) {
    double[] row = value[k][m][state];
    LegGrid.Landing at = grid.landing(k, speed);
    return at == null
        ? Double.POSITIVE_INFINITY
        : LegGrid.between(row[at.low()], row[at.high()], at.share());
  }
}
