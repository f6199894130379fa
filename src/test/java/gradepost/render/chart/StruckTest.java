package gradepost.render.chart;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.Briefing;
import gradepost.briefing.Messages;
import gradepost.briefing.Part;
import gradepost.briefing.SampleIssue;
import gradepost.briefing.chart.Chart;
import gradepost.briefing.chart.PressureChart;
import gradepost.briefing.compose.Composer;
import gradepost.drive.DemoPlans;
import gradepost.render.Papers;
import gradepost.units.UnitStyle;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Property: no line of a chart runs through a label; a hair of the pale grid may. What lies under a
 * patch of paper is not seen.
 */
@Tag("slow")
class StruckTest {
  private static final double SAMPLE = 0.5;
  private static final double TOUCH = 0.5;

  private static final class Dot {
    final double x;
    final double y;
    boolean seen = true;

    Dot(double x, double y) {
      this.x = x;
      this.y = y;
    }
  }

  private record Label(String text, double x, double y, double width, double size, double turn) {
    /** Whether the dot is in the band of small letters. */
    boolean holds(Dot d) {
      double cos = Math.cos(Math.toRadians(turn));
      double sin = Math.sin(Math.toRadians(turn));
      double along = (d.x - x) * cos - (d.y - y) * sin;
      double up = -((d.x - x) * sin + (d.y - y) * cos);
      return along > TOUCH && along < width - TOUCH && up > TOUCH && up < 0.55 * size - TOUCH;
    }
  }

  private static final class Watch implements Canvas {
    final List<Dot> dots = new ArrayList<>();
    final List<Label> labels = new ArrayList<>();
    private final Fonts fonts;
    private double[] clip = {};

    Watch(Fonts fonts) {
      this.fonts = fonts;
    }

    @Override
    public void line(double[] x, double[] y, Pen pen) {
      if (pen.ink() == Ink.PALE || pen.ink() == Ink.FAINT) {
        return;
      }
      for (int i = 0; i + 1 < x.length; i++) {
        int pieces = 1 + (int) (Math.hypot(x[i + 1] - x[i], y[i + 1] - y[i]) / SAMPLE);
        for (int k = 0; k <= pieces; k++) {
          double px = x[i] + (x[i + 1] - x[i]) * k / pieces;
          double py = y[i] + (y[i + 1] - y[i]) * k / pieces;
          if (clip.length == 0
              || (px >= clip[0] && px <= clip[2] && py >= clip[1] && py <= clip[3])) {
            dots.add(new Dot(px, py));
          }
        }
      }
    }

    @Override
    public void area(double[] x, double[] y, Ink ink) {
      Path2D shape = new Path2D.Double();
      shape.moveTo(x[0], y[0]);
      for (int i = 1; i < x.length; i++) {
        shape.lineTo(x[i], y[i]);
      }
      shape.closePath();
      dots.stream().filter(d -> shape.contains(d.x, d.y)).forEach(d -> d.seen = false);
    }

    @Override
    public void disc(double x, double y, double radius, Ink fill, Pen rim) {
      dots.stream().filter(d -> Math.hypot(d.x - x, d.y - y) < radius).forEach(d -> d.seen = false);
      if (fill == Ink.BLACK) {
        dots.add(new Dot(x, y));
      }
    }

    @Override
    public void text(double x, double y, String text, Type type, Anchor anchor, double degrees) {
      double width = fonts.width(text, type);
      double back =
          switch (anchor) {
            case START -> 0;
            case MIDDLE -> width / 2;
            case END -> width;
          };
      double turn = Math.toRadians(degrees);
      labels.add(
          new Label(
              text,
              x - back * Math.cos(turn),
              y + back * Math.sin(turn),
              width,
              type.size(),
              degrees));
    }

    @Override
    public void clip(double x, double y, double width, double height) {
      clip = new double[] {x, y, x + width, y + height};
    }

    @Override
    public void unclip() {
      clip = new double[] {};
    }
  }

  private static List<Chart> charts(Briefing briefing) {
    List<Chart> out = new ArrayList<>();
    for (Part part : briefing.parts()) {
      out.add(part.train().formation());
      out.add(part.train().stands());
      out.addAll(part.train().technique());
      part.line().forEach(l -> out.add(l.chart()));
      part.approaches().forEach(a -> out.add(a.chart()));
    }
    return out;
  }

  private static void clear(Briefing briefing) throws Exception {
    Fonts fonts = new Fonts();
    List<String> struck = new ArrayList<>();
    int labels = 0;
    for (Chart chart : charts(briefing)) {
      Watch watch = new Watch(fonts);
      Drawings.of(chart, fonts).draw(watch);
      labels += watch.labels.size();
      if (chart instanceof PressureChart pressure) {
        assertThat(watch.labels)
            .as("every note has found room")
            .extracting(Label::text)
            .containsAll(pressure.notes().stream().map(PressureChart.Note::text).toList());
      }
      for (Label label : watch.labels) {
        if (watch.dots.stream().anyMatch(d -> d.seen && label.holds(d))) {
          struck.add(chart.id() + ": " + label);
        }
      }
    }
    assertThat(labels).isGreaterThan(100);
    assertThat(struck).isEmpty();
  }

  @ParameterizedTest
  @EnumSource(UnitStyle.class)
  void onTheInventedLine(UnitStyle units) throws Exception {
    clear(Papers.briefing(units));
  }

  @ParameterizedTest
  @MethodSource("gradepost.drive.DemoPlans#numbers")
  void onTheDemoLines(int assignment) throws Exception {
    clear(
        new Composer(Messages.english())
            .compose("", List.of(DemoPlans.plan(assignment)), SampleIssue.issue(), List.of()));
  }
}
