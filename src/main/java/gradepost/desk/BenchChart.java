package gradepost.desk;

import gradepost.app.shelf.BenchShown;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The lines of the bench, laid into a box: speed against distance. */
public final class BenchChart {
  private static final double WIDTH = 700;
  private static final double HEIGHT = 260;
  private static final double LEFT = 46;
  private static final double FOOT = 34;
  private static final double TOP = 12;

  /** Steps that are read easily, times a power of ten. */
  private static final double[] STEPS = {1, 2, 5, 10};

  private final BenchShown shown;
  private final double mostM;
  private final double mostSpeed;

  /**
   * A mark on an axis.
   *
   * @param at along it
   */
  public record Mark(String at, String text) {}

  BenchChart(BenchShown shown) {
    this.shown = shown;
    double farM = shown.targetM() + 50;
    double fast = 10;
    for (BenchShown.Line line : shown.lines()) {
      for (double[] point : line.points()) {
        farM = Math.max(farM, point[0]);
        fast = Math.max(fast, point[1]);
      }
    }
    mostM = farM;
    mostSpeed = fast * 1.05;
  }

  /** The points of a line as a drawing wants them. */
  public String points(BenchShown.Line line) {
    StringBuilder out = new StringBuilder();
    for (double[] point : line.points()) {
      out.append(x(point[0])).append(',').append(y(point[1])).append(' ');
    }
    return out.toString().strip();
  }

  /** Where the target is. */
  public String target() {
    return x(shown.targetM());
  }

  /** Distances before and behind the target. */
  public List<Mark> distances() {
    List<Mark> out = new ArrayList<>();
    double step = step(mostM / shown.perUnitM());
    double targetUnits = shown.targetM() / shown.perUnitM();
    for (double d = -Math.floor(targetUnits / step) * step;
        (d + targetUnits) * shown.perUnitM() <= mostM;
        d += step) {
      out.add(
          new Mark(
              x((d + targetUnits) * shown.perUnitM()),
              String.format(Locale.ROOT, "%.0f", Math.abs(d))));
    }
    return out;
  }

  /** Speeds. */
  public List<Mark> speeds() {
    List<Mark> out = new ArrayList<>();
    double step = step(mostSpeed);
    for (double v = 0; v <= mostSpeed; v += step) {
      out.add(new Mark(y(v), String.format(Locale.ROOT, "%.0f", v)));
    }
    return out;
  }

  private static double step(double most) {
    double power = Math.pow(10, Math.floor(Math.log10(most / 5)));
    for (double step : STEPS) {
      if (most / (step * power) <= 7) {
        return step * power;
      }
    }
    return 10 * power;
  }

  private String x(double metres) {
    return px(LEFT + (WIDTH - LEFT - 8) * Math.max(0, metres) / mostM);
  }

  private String y(double speed) {
    return px(TOP + (HEIGHT - TOP - FOOT) * (1 - speed / mostSpeed));
  }

  private static String px(double value) {
    return String.format(Locale.ROOT, "%.1f", value);
  }
}
