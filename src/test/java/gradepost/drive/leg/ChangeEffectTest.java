package gradepost.drive.leg;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.drive.OpenLine;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.grid.DrivingStrategy;
import gradepost.drive.grid.GuideChange;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.Stops;
import gradepost.task.Targets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Property: what a change of a guide is said to do, from the stretch where it makes a difference,
 * is what it does on the whole leg; on an open line that is braked for other things than the stop
 * too.
 */
@Tag("slow")
class ChangeEffectTest {
  /** So far apart two ways of the whole leg may come out, where the stretch says the same. */
  private static final double SECONDS = 1;

  private static final double SHARE = 0.01;

  @Test
  void theEffectOfAChangeIsThatOnTheWholeLeg() {
    Assignment assignment = OpenLine.repeated(2);
    Ceiling ceiling = Ceiling.of(assignment);
    TrainModels models = new TrainModels(assignment);
    double startM = Stops.markM(assignment, assignment.calls().get(0));
    LegChooser chooser =
        new LegChooser(assignment, models, ceiling, startM, Targets.of(assignment, ceiling));
    LegChooser.Way base = chooser.guided(4, 3).orElseThrow();
    double endM = base.leg().starts().get(base.leg().starts().size() - 1).state().atM();
    List<String> wrong = new ArrayList<>();
    int near = 0;
    int all = 0;
    double unitMps = assignment.route().units().speedUnitMps();
    for (GuideChange change : base.manner().guide().changes(unitMps, 60)) {
      ChangeEffect effect = chooser.effect(base, change);
      if (effect.joules() == Double.POSITIVE_INFINITY) {
        continue;
      }
      DrivingStrategy other = base.manner().by(base.manner().guide().with(List.of(change)));
      LegChooser.Way whole = chooser.way(other);
      double seconds = whole.timeS() - base.timeS();
      double joules = whole.rerun().energyJ() - base.rerun().energyJ();
      boolean same =
          Math.abs(seconds - effect.seconds()) < SECONDS
              && Math.abs(joules - effect.joules()) < SHARE * base.rerun().energyJ();
      if (!same) {
        wrong.add(change + ": " + effect + " but " + seconds + " s, " + joules + " J");
      }
      near += effect.toM() - effect.fromM() < endM / 3 ? 1 : 0;
      all++;
    }
    assertThat(wrong.size()).as(wrong.toString()).isLessThanOrEqualTo(all / 20);
    assertThat(near).isGreaterThan(all / 2);
  }
}
