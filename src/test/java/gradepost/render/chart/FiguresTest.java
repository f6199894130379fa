package gradepost.render.chart;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import gradepost.briefing.chart.ApproachChart;
import gradepost.briefing.chart.Curve;
import gradepost.briefing.chart.LineChart;
import gradepost.briefing.chart.TrackStrip;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Property: every figure of a chart is there and can be read. */
class FiguresTest {
  private static final TrackStrip TRACK =
      new TrackStrip(
          0,
          4000,
          new TrackStrip.Names("gradient", "curves", "line"),
          List.of(),
          List.of(new TrackStrip.Slope(0, 4000, 0, "level")),
          List.of(),
          List.of(),
          List.of());

  /** A text and where its base line is. */
  private record Drawn(String text, double x, double base, double size) {}

  private static final class Texts implements Canvas {
    final List<Drawn> all = new ArrayList<>();

    @Override
    public void line(double[] x, double[] y, Pen pen) {}

    @Override
    public void area(double[] x, double[] y, Ink ink) {}

    @Override
    public void disc(double x, double y, double radius, Ink fill, Pen rim) {}

    @Override
    public void text(double x, double y, String text, Type type, Anchor anchor, double degrees) {
      all.add(new Drawn(text, x, y, type.size()));
    }

    @Override
    public void clip(double x, double y, double width, double height) {}

    @Override
    public void unclip() {}
  }

  private static ApproachChart chart(double top, double step) {
    return new ApproachChart(
        "c",
        "c",
        "c",
        "km/h",
        top,
        step,
        List.of(),
        List.of(),
        List.of(),
        3500,
        70,
        Optional.empty(),
        TRACK);
  }

  @Test
  void theUnitStandsUponNoFigureOfTheAxis() throws Exception {
    for (double step : new double[] {10, 20}) {
      for (double top = 2 * step; top <= (step == 10 ? 80 : 220); top += step) {
        Texts texts = new Texts();
        new ApproachDrawing(chart(top, step), new Fonts()).draw(texts);
        Drawn unit = texts.all.stream().filter(t -> t.text().equals("km/h")).findFirst().get();
        assertThat(texts.all.stream().filter(t -> t.x() == unit.x() && !t.equals(unit)))
            .as("an axis up to " + top)
            .isNotEmpty()
            .allMatch(t -> Math.abs(t.base() - unit.base()) > 0.75 * t.size());
      }
    }
  }

  /** What is close under the top would be struck by the unit. */
  @Test
  void anAxisEndsAtAWholeStep() {
    assertThatThrownBy(() -> chart(130, 20))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("130.0 is no whole number of steps of 20.0");
  }

  private static LineChart line(List<LineChart.Step> steps) {
    return new LineChart(
        "l",
        "l",
        "l",
        60,
        10,
        steps,
        new Curve(Curve.Kind.PLANNED, "planned", new double[0], new double[0]),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        new LineChart.Heads("mph", "gradient", "curves", "left", "right"),
        TRACK,
        List.of(),
        26,
        959);
  }

  /** Three steps within a platform's length, as a terminal has them. */
  @Test
  void everyStepOfTheSpeedHasItsFigure() throws Exception {
    for (double width : new double[] {60, 30, 10}) {
      List<LineChart.Step> steps = new ArrayList<>();
      steps.add(new LineChart.Step(0, 3000, 40, "40", false));
      double at = 3000;
      for (int speed : new int[] {25, 20, 15, 10, 5}) {
        double to = speed == 5 ? 4000 : at + width;
        steps.add(new LineChart.Step(at, to, speed, Integer.toString(speed), false));
        at = to;
      }
      Texts texts = new Texts();
      new LineSheetDrawing(line(steps), new Fonts()).draw(texts);
      assertThat(texts.all.stream().map(Drawn::text))
          .as("steps of " + width)
          .contains("40", "25", "20", "15", "10", "5");
    }
  }
}
