package gradepost.plan;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.SamplePlan;
import gradepost.units.UnitStyle;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Property: a train that stands short of its mark is told to start from the mark. */
class StandToldTest {
  private static final double SHORT_M = 4;

  /** Every approach ends so far short of its target. */
  private static final List<Approach> ALL =
      SamplePlan.of(UnitStyle.METRIC).approaches().stream().map(StandToldTest::endsShort).toList();

  private static Approach endsShort(Approach a) {
    return new Approach(
        a.number(),
        a.target(),
        a.fromM(),
        a.shutOffM(),
        a.brakingSpeedMps(),
        a.target().atM() - SHORT_M,
        a.actions(),
        a.applications(),
        Optional.empty(),
        a.spread(),
        a.findings());
  }

  @Test
  void aStandIsToldAtTheMark() {
    List<Approach> stops = ALL.stream().filter(a -> a.target().isStop()).toList();
    assertThat(stops).isNotEmpty();
    assertThat(stops)
        .allSatisfy(
            a -> {
              assertThat(Approach.standM(ALL, a.endM())).isEqualTo(a.target().atM());
              assertThat(Approach.standM(ALL, a.endM() - 24.9)).isEqualTo(a.target().atM());
              assertThat(Approach.standM(ALL, a.endM() + 24.9)).isEqualTo(a.target().atM());
            });
  }

  @Test
  void anyOtherPlaceIsToldAsItIs() {
    for (Approach a : ALL) {
      double at = a.target().isStop() ? a.endM() - 25.1 : a.endM();
      assertThat(Approach.standM(ALL, at)).isEqualTo(at);
    }
  }
}
