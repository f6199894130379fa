package gradepost.render.chart;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.chart.StandsChart;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Property: whatever the names and places, no name is drawn upon another or off the paper. */
class PlacingTest {
  private static final String LONG = "Saint Wimmel’s Cross and Meadow";

  /** Texts as they were drawn. */
  private record Drawn(double x, double y, double width, double height) {
    boolean meets(Drawn o) {
      return x < o.x + o.width - 0.01
          && o.x < x + width - 0.01
          && y < o.y + o.height - 0.01
          && o.y < y + height - 0.01;
    }
  }

  /** Remembers the boxes of texts, and nothing else. */
  private static final class Watch implements Canvas {
    private final Fonts fonts;
    final List<Drawn> texts = new ArrayList<>();

    Watch(Fonts fonts) {
      this.fonts = fonts;
    }

    @Override
    public void line(double[] x, double[] y, Pen pen) {}

    @Override
    public void area(double[] x, double[] y, Ink ink) {}

    @Override
    public void disc(double x, double y, double radius, Ink fill, Pen rim) {}

    @Override
    public void text(double x, double y, String text, Type type, Anchor anchor, double degrees) {
      double width = fonts.width(text, type);
      double height = type.size() * 0.95;
      if (degrees == 90) {
        texts.add(new Drawn(x - height * 0.75, y, height, width));
        return;
      }
      double shift =
          switch (anchor) {
            case START -> 0;
            case MIDDLE -> -width / 2;
            case END -> -width;
          };
      texts.add(new Drawn(x + shift, y - height * 0.75, width, height));
    }

    @Override
    public void clip(double x, double y, double width, double height) {}

    @Override
    public void unclip() {}
  }

  private static void apart(List<Drawn> texts, double left, double right) {
    for (int i = 0; i < texts.size(); i++) {
      assertThat(texts.get(i).x).isGreaterThanOrEqualTo(left);
      assertThat(texts.get(i).x + texts.get(i).width).isLessThanOrEqualTo(right);
      for (int j = 0; j < i; j++) {
        assertThat(texts.get(i).meets(texts.get(j))).isFalse();
      }
    }
  }

  /** Common practice: a long platform has a mark for each length of train, yards apart. */
  @ParameterizedTest
  @ValueSource(ints = {1, 4, 12})
  void namesAndMarksOfPlatformsStandApart(int count) throws Exception {
    Fonts fonts = new Fonts();
    Random random = new Random(7 + count);
    for (int run = 0; run < 40; run++) {
      List<StandsChart.Stand> stands = new ArrayList<>();
      for (int i = 0; i < count; i++) {
        double start = -40 - 200 * random.nextDouble();
        double end = 60 * random.nextDouble();
        List<StandsChart.Mark> marks = new ArrayList<>();
        marks.add(new StandsChart.Mark("12", 0, true));
        for (int m = 2; m < 8; m++) {
          double at = start + (end - start) * random.nextDouble();
          marks.add(new StandsChart.Mark(Integer.toString(m), at, false));
        }
        stands.add(
            new StandsChart.Stand(
                LONG + ", platform 12",
                "12-car mark 112m 79ch",
                "buffer stops 222 yd in front · rear 222 yd off",
                true,
                start,
                end,
                marks,
                random.nextBoolean() ? List.of(end + 20) : List.of()));
      }
      Watch watch = new Watch(fonts);
      new StandsDrawing(
              new StandsChart("s", "stands", "says", List.of(20.0, 20.0, 20.0), stands), fonts)
          .draw(watch);
      assertThat(watch.texts).hasSizeGreaterThanOrEqualTo(4 * count);
      apart(watch.texts, 0, Drawing.FULL_WIDTH);
    }
  }
}
