package gradepost.drive.leg;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.drive.DemoPlans;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.grid.DrivingStrategy;
import gradepost.drive.grid.GuideChange;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.Stops;
import gradepost.task.Target;
import gradepost.task.Targets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Property: a way that takes over the stages in which a way near it is alike is the same, to the
 * last bit, as when it is worked out alone.
 */
@Tag("slow")
class SharedStagesTest {
  private static final double MOVE_M = 60;

  @Test
  @SuppressWarnings("ReferenceEquality") // shared: the very same stage
  void aWayThatTakesOverStagesIsTheSameAsWorkedOutAlone() {
    int shared = 0;
    int all = 0;
    for (Assignment assignment : DemoPlans.tried()) {
      for (LegChooser chooser : legs(assignment)) {
        Optional<LegChooser.Way> seed = chooser.guided(6, 3);
        if (seed.isEmpty()) {
          continue;
        }
        DrivingStrategy manner = seed.get().manner();
        double unitMps = assignment.route().units().speedUnitMps();
        for (GuideChange change : manner.guide().changes(unitMps, MOVE_M)) {
          DrivingStrategy other = manner.by(manner.guide().with(List.of(change)));
          LegChooser.Way near = chooser.way(other, seed.get());
          LegChooser.Way alone = chooser.way(other);
          assertThat(told(near)).isEqualTo(told(alone));
          shared += near.leg().pieces().get(0) == seed.get().leg().pieces().get(0) ? 1 : 0;
          all++;
        }
      }
    }
    // Legs that are braked once have nothing to share.
    assertThat(shared).isBetween(all / 20, all - 1);
  }

  private static List<Object> told(LegChooser.Way way) {
    List<Object> all = new ArrayList<>();
    for (ApproachSolution piece : way.leg().pieces()) {
      all.add(List.of(piece.fromM(), piece.endM(), piece.brakingM(), piece.exactBrakingM()));
      all.add(List.of(piece.shutOffM(), piece.brakingMps(), piece.found(), piece.instructions()));
    }
    all.add(way.rerun().actions());
    all.add(List.of(way.timeS(), way.rerun().energyJ(), way.idle(), way.leg().stalled()));
    return all;
  }

  private static List<LegChooser> legs(Assignment assignment) {
    Ceiling ceiling = Ceiling.of(assignment);
    TrainModels bench = new TrainModels(assignment);
    List<Target> targets = Targets.of(assignment, ceiling);
    List<LegChooser> legs = new ArrayList<>();
    double start = Stops.markM(assignment, assignment.calls().get(0));
    int from = 0;
    for (int i = 0; i < targets.size(); i++) {
      if (targets.get(i) instanceof Target.Stop) {
        List<Target> ahead = targets.subList(from, i + 1);
        legs.add(new LegChooser(assignment, bench, ceiling, start, ahead));
        start = targets.get(i).atM();
        from = i + 1;
      }
    }
    return legs;
  }
}
