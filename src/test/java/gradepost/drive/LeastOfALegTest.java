package gradepost.drive;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.route.Direction;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Property: what a way needs at least counts its movements as the way itself does. */
class LeastOfALegTest {
  @Test
  void theStandAtTheEndIsNoMovement() {
    Assignment assignment = Mill.assignment(Direction.FORWARD, "4-car");
    Ceiling ceiling = Ceiling.of(assignment);
    double start = Stops.markM(assignment, assignment.calls().get(0));
    List<Target> all = Targets.of(assignment, ceiling);
    int stop = 0;
    while (!(all.get(stop) instanceof Target.Stop)) {
      stop++;
    }
    LegChooser chooser =
        new LegChooser(assignment, new Bench(assignment), ceiling, start, all.subList(0, stop + 1));
    LegChooser.Way way = chooser.guided(2, 3).orElseThrow();
    assertThat(way.movements()).isEqualTo(way.rerun().actions().size() - 1);
    assertThat(chooser.leastJ(way)).isPositive();
  }
}
