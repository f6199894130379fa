package gradepost.render.chart;

import gradepost.render.chart.Canvas.Anchor;
import gradepost.render.chart.Canvas.Pen;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Many names that hang upright from their places, moved apart so that none meets another. */
final class Fan {
  private static final double SIZE = 7.4;
  private static final double STEP = 8.4;
  private static final double LEADER = 16;
  private final List<Flags.Flag> flags;
  private final double[] at;
  private final double longest;

  Fan(List<Flags.Flag> flags, double left, double right, Fonts fonts) {
    List<Flags.Flag> order = new ArrayList<>(flags);
    order.sort(Comparator.comparingDouble(Flags.Flag::x));
    this.flags = order;
    int n = order.size();
    this.at = new double[n];
    double step = n < 2 ? STEP : Math.min(STEP, (right - left - 6) / (n - 1));
    double most = 0;
    for (int i = 0; i < n; i++) {
      double wanted = Math.max(order.get(i).x(), left + 3);
      at[i] = i == 0 ? wanted : Math.max(wanted, at[i - 1] + step);
      most = Math.max(most, fonts.width(order.get(i).text(), type(order.get(i))));
    }
    double limit = right - 4.5;
    for (int i = n - 1; i >= 0; i--) {
      at[i] = Math.min(at[i], limit);
      limit = at[i] - step;
    }
    balance(step, left + 3);
    this.longest = most;
  }

  /** Pushes runs of names back over their places: a run is as far left of them as right. */
  private void balance(double step, double left) {
    int i = 0;
    while (i < at.length) {
      int j = i;
      double lag = at[i] - flags.get(i).x();
      while (j + 1 < at.length && at[j + 1] - at[j] < step + 0.01) {
        j++;
        lag += at[j] - flags.get(j).x();
      }
      double back = lag / (j - i + 1);
      double room = i == 0 ? at[i] - left : at[i] - at[i - 1] - step;
      double move = Math.max(0, Math.min(back, room));
      for (int k = i; k <= j; k++) {
        at[k] -= move;
      }
      i = j + 1;
    }
  }

  private static Canvas.Type type(Flags.Flag flag) {
    return new Canvas.Type(SIZE, flag.bold());
  }

  double height() {
    return flags.isEmpty() ? 0 : LEADER + longest + 4;
  }

  void draw(Canvas canvas, double top) {
    for (int i = 0; i < at.length; i++) {
      Flags.Flag flag = flags.get(i);
      canvas.line(
          new double[] {flag.x(), flag.x(), at[i], at[i]},
          new double[] {top, top + 2, top + LEADER - 4, top + LEADER - 1},
          Pen.HAIR);
      canvas.text(at[i] + 2.4, top + LEADER, flag.text(), type(flag), Anchor.END, 90);
    }
  }
}
