package gradepost.drive;

import gradepost.drive.brake.PointLimits;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.check.TestRoom;
import gradepost.drive.grid.RunningTest;
import gradepost.drive.leg.ChosenRun;
import gradepost.drive.leg.DrivenLeg;
import gradepost.drive.leg.LegChooser;
import gradepost.plan.Action;
import gradepost.plan.BrakeTest.Instead;
import gradepost.plan.BrakeTest.NoRoom;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * Where a running brake test is made instead, if there is no room for it at its place: the next
 * place of its leg at which a run that makes it was worked out.
 */
final class TestPlaces {
  /** Places are tried so far apart, m. */
  private static final double APART_M = 200;

  private final Assignment assignment;
  private final TrainModels bench;
  private final Ceiling ceiling;
  private final Map<Tried, Optional<Instead>> known = new HashMap<>();

  /** What an answer depends on. */
  private record Tried(double testM, double legFromM, PointLimits limits) {}

  TestPlaces(Assignment assignment, TrainModels bench, Ceiling ceiling) {
    this.assignment = assignment;
    this.bench = bench;
    this.ceiling = ceiling;
  }

  /** Why each test that a run does not make has no room, by the distance run of its place. */
  Map<Double, NoRoom> without(ChosenRun run) {
    Map<Double, NoRoom> out = new HashMap<>();
    for (DrivenLeg leg : run.driven()) {
      for (TestRoom.Missing missing : leg.tests().without()) {
        RunningTest test = missing.test();
        Optional<Instead> instead =
            known.computeIfAbsent(
                new Tried(test.atM(), leg.fromM(), leg.limits()), k -> instead(leg, test));
        out.put(test.atM(), missing.why().with(instead));
      }
    }
    return out;
  }

  private Optional<Instead> instead(DrivenLeg leg, RunningTest test) {
    double endM = leg.targets().get(leg.targets().size() - 1).atM();
    double last = test.atM();
    for (double from = last + APART_M; from < endM; from += APART_M) {
      double at = assignment.path().printedAtOrAfter(from);
      if (at > last && at < endM) {
        last = at;
        Optional<Instead> room = room(leg, new RunningTest(assignment, bench, test.place(), at));
        if (room.isPresent()) {
          return room;
        }
      }
    }
    return Optional.empty();
  }

  private Optional<Instead> room(DrivenLeg leg, RunningTest test) {
    List<RunningTest> tests = new ArrayList<>(leg.tests().made());
    if (tests.stream().anyMatch(t -> t.atM() < test.overM() && test.offM() < t.overM())) {
      return Optional.empty();
    }
    tests.add(test);
    LegChooser chooser =
        new LegChooser(assignment, bench, ceiling, leg.fromM(), leg.targets(), leg.limits(), tests);
    List<Supplier<LegChooser.Way>> ways =
        List.of(() -> chooser.way(leg.way().manner()), chooser::own, chooser::fastest);
    for (Supplier<LegChooser.Way> way : ways) {
      LegChooser.Way tried = way.get();
      if (tried.stands()) {
        List<Action> actions = tried.rerun().actions();
        return TestRoom.madeAt(actions, test.atM())
            .map(i -> new Instead(test.atM(), actions.get(i).speedMps()));
      }
    }
    return Optional.empty();
  }
}
