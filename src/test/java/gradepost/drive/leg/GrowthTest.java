package gradepost.drive.leg;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.drive.OpenLine;
import gradepost.drive.PlannedBefore;
import gradepost.drive.brake.TrainModels;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.Stops;
import gradepost.task.Targets;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Property: what a leg costs to plan grows with its length and no faster. Counted in metres that
 * trains were moved in all the runs of the search, on an open line once and four times end to end
 * without a stop between.
 */
@Tag("slow")
class GrowthTest {
  private static final double MOST = 4.5;

  @Test
  void fourTimesTheLengthIsFourTimesTheWork() {
    assertThat(metres(4) / metres(1)).isLessThan(MOST);
  }

  private static double metres(int times) {
    Assignment assignment = OpenLine.repeated(times);
    Ceiling ceiling = Ceiling.of(assignment);
    TrainModels models = new TrainModels(assignment);
    double startM = Stops.markM(assignment, assignment.calls().get(0));
    ChosenRun chosen =
        new RunChooser(assignment, models, new PlannedBefore().legs())
            .choose(startM, Targets.of(assignment, ceiling));
    assertThat(chosen.stallsM()).isEmpty();
    return models.odometer().metres();
  }
}
