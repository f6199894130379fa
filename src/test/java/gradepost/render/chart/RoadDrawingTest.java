package gradepost.render.chart;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.Messages;
import gradepost.briefing.RoadSheet;
import gradepost.briefing.SampleIssue;
import gradepost.briefing.chart.RoadChart;
import gradepost.briefing.chart.RunChart;
import gradepost.briefing.compose.Composer;
import gradepost.drive.DemoPlans;
import gradepost.drive.Planner;
import gradepost.drive.RandomLines;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Property: nothing that the road sheet is to show is left out for want of room. */
@Tag("slow")
class RoadDrawingTest {
  /** Keeps the texts. */
  private static final class Texts implements Canvas {
    private final List<String> found = new ArrayList<>();

    @Override
    public void line(double[] x, double[] y, Pen pen) {}

    @Override
    public void area(double[] x, double[] y, Ink ink) {}

    @Override
    public void disc(double x, double y, double radius, Ink fill, Pen rim) {}

    @Override
    public void text(double x, double y, String text, Type type, Anchor anchor, double degrees) {
      found.add(text);
    }

    @Override
    public void clip(double x, double y, double width, double height) {}

    @Override
    public void unclip() {}
  }

  @Test
  void everyBrakingPointStationAndRestrictionIsNamed() throws IOException {
    Fonts fonts = new Fonts();
    int points = 0;
    for (RoadSheet sheet : (Iterable<RoadSheet>) sheets()::iterator) {
      Texts texts = new Texts();
      RoadChart chart = sheet.chart();
      Drawings.of(chart, fonts).draw(texts);
      assertThat(texts.found)
          .containsAll(chart.points().stream().map(RunChart.Point::number).toList())
          .containsAll(chart.stations().stream().map(RoadChart.Station::name).toList())
          .containsAll(chart.temporary().stream().map(RoadChart.Restricted::text).toList());
      points += chart.points().size();
    }
    assertThat(points).isGreaterThan(30);
  }

  private static Stream<RoadSheet> sheets() {
    return Stream.concat(
            IntStream.of(0, 4, 9).mapToObj(DemoPlans::plan),
            IntStream.rangeClosed(1, 4)
                .mapToObj(seed -> Planner.plan(RandomLines.of(seed).assignment())))
        .flatMap(
            plan ->
                new Composer(Messages.english())
                    .compose("", List.of(plan), SampleIssue.issue(), List.of()).parts().stream())
        .flatMap(part -> part.road().stream());
  }
}
