package gradepost.briefing.line;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.Messages;
import gradepost.briefing.word.Words;
import gradepost.drive.DemoPlans;
import gradepost.route.JunctionRoute;
import gradepost.task.Assignment;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Points that a train comes over from behind diverge for nobody in it. */
class JunctionWaysTest {
  /** The demo valley down and up, the demo coast out and in, by what their ways are named. */
  @ParameterizedTest
  @CsvSource({
    "8, Ferrow Junction, Harbour, false",
    "10, Ferrow Junction, Harbour, true",
    "8, Brackhythe Points, Platform 1, false",
    "10, Brackhythe Points, Platform 2, true",
    "10, Ferrow End, Up Main to Single, true",
    "10, Eddle Points, Bridge Single to Up Harbour, false",
    "10, Cinderhowe End, Single to Up Main, false",
    "4, Ormel points, Platform 1, false",
    "6, Ormel points, Platform 2, true",
    "6, Norrquay End, Coast Single to In Main, false",
    "4, Hollin siding, Works siding, false",
    "6, Hollin siding, Works siding, false"
  })
  void aWayOfThisTrainIsTrailingWhereItLiesBeforeThePoints(
      int plan, String junction, String way, boolean trailing) {
    Assignment assignment = DemoPlans.assignments().get(plan);
    Lineside lineside = new Lineside(assignment, new Words(Messages.english(), assignment.path()));
    JunctionWays ways = new JunctionWays(assignment, lineside);
    Stream<Boolean> found =
        ways.junctions().stream()
            .filter(j -> j.what().name().equals(junction))
            .flatMap(
                j ->
                    j.what().routes().stream()
                        .filter((JunctionRoute r) -> r.name().equals(way))
                        .map(r -> ways.trailing(r, j)));
    assertThat(found).containsExactly(trailing);
  }
}
