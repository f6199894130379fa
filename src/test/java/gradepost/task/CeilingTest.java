package gradepost.task;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.drive.Mill;
import gradepost.route.place.Direction;
import gradepost.units.Speed;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Property: a restriction is obeyed by the front at its board and until the rear has cleared its
 * end (British practice, read in secondary sources); overlapping ones give the lowest.
 */
class CeilingTest {

  @Test
  void aRestrictionEndsWhenTheRearHasClearedIt() {
    Assignment four = Mill.assignment(Direction.FORWARD, "4-car");
    Assignment eight = Mill.assignment(Direction.FORWARD, "8-car");
    double begins = four.path().metresAt(Mill.at(1, 65));
    double ends = four.path().metresAt(Mill.at(2, 12));
    for (Assignment assignment : List.of(four, eight)) {
      Ceiling ceiling = Ceiling.of(assignment);
      double clear = ends + assignment.formation().lengthM();
      double slow = Speed.ofMph(25).metresPerSecond();
      double fast = Speed.ofMph(60).metresPerSecond();
      assertThat(ceiling.speedAt(begins - 0.01)).isEqualTo(fast);
      assertThat(ceiling.speedAt(begins + 0.01)).isEqualTo(slow);
      assertThat(ceiling.speedAt(clear - 0.01)).isEqualTo(slow);
      assertThat(ceiling.speedAt(clear + 0.01)).isEqualTo(fast);
    }
  }

  @Test
  void aLongerTrainNeverClearsEarlier() {
    Ceiling four = Ceiling.of(Mill.assignment(Direction.BACKWARD, "4-car"));
    Ceiling eight = Ceiling.of(Mill.assignment(Direction.BACKWARD, "8-car"));
    for (double at = 0; at < 8000; at += 7) {
      assertThat(eight.speedAt(at)).isLessThanOrEqualTo(four.speedAt(at));
    }
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void overlappingLimitsGiveTheStaircaseOfTheLowest(long seed) {
    Random random = new Random(seed);
    List<Ceiling.Limit> limits = new ArrayList<>();
    limits.add(new Ceiling.Limit(-1e9, 1e9, 40, "line"));
    for (int i = 0; i < 12; i++) {
      double from = random.nextDouble() * 1000;
      limits.add(
          new Ceiling.Limit(
              from, from + random.nextDouble() * 300, 5 + random.nextInt(30), "r" + i));
    }
    Ceiling ceiling = Ceiling.lowest(limits, 1000);
    for (double at = 0.5; at < 1000; at += 1.37) {
      double place = at;
      double lowest =
          limits.stream()
              .filter(l -> l.fromM() <= place && place < l.toM())
              .mapToDouble(Ceiling.Limit::speedMps)
              .min()
              .orElseThrow();
      assertThat(ceiling.speedAt(at)).isCloseTo(lowest, within(0.0));
    }
    double end = 0;
    for (CeilingStep step : ceiling.steps()) {
      assertThat(step.fromM()).isEqualTo(end);
      end = step.toM();
    }
    assertThat(end).isEqualTo(1000);
  }
}
