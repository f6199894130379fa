package gradepost.drive;

import java.util.Arrays;

/** Dynamic programming over place, speed, control and the movements that are left. */
final class LeastEnergy {
  private final LegGrid grid;
  private final LegSteps moves;
  private final int most;
  private final int stopMoves;
  private final int notches;
  private final int states;
  private final int first;
  private final int main;
  private final int stop;

  /** By place, movements left, state, speed. */
  private final double[][][][] value;

  // by place, speed
  private final LegSteps.Move[][] coast;
  private final LegSteps.Move[][][] power;
  private final LegSteps.Move[][][] ramp;
  private final LegSteps.Move[][] off;
  private final LegSteps.Move[][][] brake;

  LeastEnergy(LegGrid grid, LegSteps moves, int most, int stopMoves) {
    this.grid = grid;
    this.moves = moves;
    this.most = most;
    this.stopMoves = stopMoves;
    notches = grid.notches;
    first = notches + 1;
    main = notches + 2;
    stop = notches + 3;
    states = notches + 4;
    int cols = grid.speeds + 1;
    int n = grid.places();
    value = new double[n][most + 1][states][cols];
    coast = new LegSteps.Move[n][cols];
    power = new LegSteps.Move[notches][n][cols];
    ramp = new LegSteps.Move[notches][n][cols];
    off = new LegSteps.Move[n][cols];
    brake = new LegSteps.Move[18][n][cols];
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
      ramp[n][k][i] = moves.ramp(k, v, n);
    }
    if (v <= 0) {
      return;
    }
    coast[k][i] = moves.coast(k, v);
    for (int n = 0; n < notches; n++) {
      power[n][k][i] = moves.power(k, v, n);
    }
    off[k][i] = moves.shutOff(k, v);
    double heaviest = grid.techniqueAt(v);
    double light = grid.releasedPa(k, false);
    for (int b = 0; b < 3; b++) {
      LegSteps.Move[] l = moves.braked(k, v, light, true);
      LegSteps.Move[] m = moves.braked(k, v, grid.releasedPa(k, true), true);
      brake[b][k][i] = l.length > b ? l[b] : null;
      brake[3 + b][k][i] = m.length > b ? m[b] : null;
      brake[12 + b][k][i] = moves.braked(k, v, heaviest, false)[b];
      LegSteps.Move[] f = moves.putOn(k, v, false, true);
      LegSteps.Move[] h = moves.putOn(k, v, true, true);
      LegSteps.Move[] st = moves.putOn(k, v, true, false);
      brake[15 + b][k][i] = st.length > b ? st[b] : null;
      brake[6 + b][k][i] = f.length > b ? f[b] : null;
      brake[9 + b][k][i] = h.length > b ? h[b] : null;
    }
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
      value[n - 1][m][stop][cols - 1] = 0;
      value[n - 1][m][stop][0] = 0;
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
          double released =
              m >= 1 && grid.speed(k, i) <= grid.releaseMps[k] + 1e-9
                  ? value[k][m - 1][0][i]
                  : Double.POSITIVE_INFINITY;
          v[stop][i] = brakes(12, k, i, m, stop, watts);
          v[main][i] = Math.min(released, brakes(3, k, i, m, main, watts));
          v[first][i] = Math.min(released, brakes(0, k, i, m, first, watts));
          if (m >= 1) {
            v[first][i] = Math.min(v[first][i], value[k][m - 1][main][i]);
          }
          double best = hold(coast[k][i], m, 0, watts);
          for (int p = 0; p < notches; p++) {
            if (m >= p + 1) {
              best = Math.min(best, hold(ramp[p][k][i], m - p - 1, 1 + p, watts));
            }
          }
          if (m >= 1) {
            best = Math.min(best, brakes(6, k, i, m - 1, first, watts));
          }
          if (m >= 2) {
            best = Math.min(best, brakes(9, k, i, m - 2, main, watts));
          }
          if (m >= stopMoves) {
            best = Math.min(best, brakes(15, k, i, m - stopMoves, stop, watts));
          }
          v[0][i] = best;
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

  private double brakes(int from, int k, int i, int m, int state, double watts) {
    double best = Double.POSITIVE_INFINITY;
    for (int b = from; b < from + 3; b++) {
      best = Math.min(best, hold(brake[b][k][i], m, state, watts));
    }
    return best;
  }

  private double onward(int k, int m, int state, double speed) {
    double[] row = value[k][m][state];
    double mostV = grid.mostMps[k];
    if (speed > mostV + 1e-9) {
      return Double.POSITIVE_INFINITY;
    }
    int i = (int) (speed / grid.stepMps);
    double above = (i + 1) * grid.stepMps;
    if (above < mostV) {
      return between(row[i], row[i + 1], speed / grid.stepMps - i);
    }
    double top = row[row.length - 1];
    double width = mostV - i * grid.stepMps;
    if (width < 1e-9 || speed >= mostV - 1e-9) {
      return top;
    }
    return between(row[i], top, (speed - i * grid.stepMps) / width);
  }

  private static double between(double low, double high, double share) {
    return LegGrid.between(low, high, share);
  }
}
