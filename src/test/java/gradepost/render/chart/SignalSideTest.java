package gradepost.render.chart;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.chart.TrackStrip;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A signal is drawn on its side of the line; names beside an axis are left out only as needed. */
class SignalSideTest {
  /** Keeps the heads of the signals, and what is written. */
  private static final class Drawn implements Canvas {
    private final List<Double> heads = new ArrayList<>();
    private final List<String> written = new ArrayList<>();

    @Override
    public void line(double[] x, double[] y, Pen pen) {}

    @Override
    public void area(double[] x, double[] y, Ink ink) {}

    @Override
    public void disc(double x, double y, double radius, Ink fill, Pen rim) {
      heads.add(y);
    }

    @Override
    public void text(double x, double y, String text, Type type, Anchor anchor, double degrees) {
      written.add(text);
    }

    @Override
    public void clip(double x, double y, double width, double height) {}

    @Override
    public void unclip() {}
  }

  private static TrackStrip strip(boolean left) {
    return new TrackStrip(
        0,
        1000,
        new TrackStrip.Names("1 in", "curves", "line"),
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        List.of(new TrackStrip.Sign(500, "A 1", TrackStrip.Kind.SIGNAL, left)));
  }

  @Test
  void aSignalStandsAboveTheLineOnTheLeftAndBelowItOnTheRight() throws Exception {
    double middle = 20 + TrackBands.LINE / 2;
    for (boolean left : new boolean[] {true, false}) {
      Drawn drawn = new Drawn();
      Scale x = new Scale(0, 1000, 0, 500);
      new TrackBands(strip(left), x, new Fonts(), 500).line(drawn, 20);
      assertThat(drawn.heads).singleElement().matches(y -> left ? y < middle : y > middle);
    }
  }

  /** Of five names that crowd before the edge three are kept, and the one that must stay. */
  @Test
  void theFewestNamesAreLeftOut() throws Exception {
    List<Flags.Flag> flags =
        List.of(
            new Flags.Flag(326, "platform ramp, Brackhythe platform 1", false, 1),
            new Flags.Flag(384, "platform canopy begins", false, 1),
            new Flags.Flag(413, "parcels office door lamp", false, 1),
            new Flags.Flag(441, "station clock, lit", false, 1),
            new Flags.Flag(452, "barrow crossing lamp", false, 1),
            new Flags.Flag(452, "4-car mark", true, 3));
    Drawn drawn = new Drawn();
    Flags.of(flags, 20, 490, new Fonts()).draw(drawn, 0);
    assertThat(drawn.written).contains("4-car mark").hasSize(4);
  }
}
