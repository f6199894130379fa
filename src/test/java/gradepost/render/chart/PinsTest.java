package gradepost.render.chart;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.ApproachPage;
import gradepost.briefing.Briefing;
import gradepost.briefing.Messages;
import gradepost.briefing.SampleIssue;
import gradepost.briefing.compose.Composer;
import gradepost.drive.DemoPlans;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Property: every numbered action of an approach page is on its chart, once. */
@Tag("slow")
class PinsTest {
  /** Keeps the rings, and the number in each. */
  private static final class Rings implements Canvas {
    private final List<double[]> middles = new ArrayList<>();
    private final List<String> numbers = new ArrayList<>();

    @Override
    public void line(double[] x, double[] y, Pen pen) {}

    @Override
    public void area(double[] x, double[] y, Ink ink) {}

    @Override
    public void disc(double x, double y, double radius, Ink fill, Pen rim) {
      if (radius == ApproachDrawing.RING) {
        assertThat(middles)
            .noneMatch(m -> Math.hypot(m[0] - x, m[1] - y) < 2 * ApproachDrawing.RING);
        middles.add(new double[] {x, y});
      }
    }

    @Override
    public void text(double x, double y, String text, Type type, Anchor anchor, double degrees) {
      if (!middles.isEmpty()
          && x == middles.get(middles.size() - 1)[0]
          && numbers.size() < middles.size()) {
        numbers.add(text);
      }
    }

    @Override
    public void clip(double x, double y, double width, double height) {}

    @Override
    public void unclip() {}
  }

  @ParameterizedTest
  @MethodSource("gradepost.drive.DemoPlans#numbers")
  void everyActionIsOnTheChart(int assignment) throws Exception {
    Briefing briefing =
        new Composer(Messages.english())
            .compose("", List.of(DemoPlans.plan(assignment)), SampleIssue.issue(), List.of());
    Fonts fonts = new Fonts();
    int actions = 0;
    for (ApproachPage page : briefing.parts().get(0).approaches()) {
      Rings rings = new Rings();
      new ApproachDrawing(page.chart(), fonts).draw(rings);
      assertThat(rings.numbers)
          .as(page.title())
          .containsExactlyInAnyOrderElementsOf(
              page.actions().stream().map(ApproachPage.ActionLine::number).toList());
      actions += page.actions().size();
    }
    assertThat(actions).isGreaterThan(40);
  }
}
