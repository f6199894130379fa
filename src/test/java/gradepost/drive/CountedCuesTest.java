package gradepost.drive;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.plan.Application;
import gradepost.plan.Approach;
import gradepost.plan.Plan;
import gradepost.plan.Run;
import gradepost.route.Route;
import gradepost.route.place.Extent;
import gradepost.task.Assignment;
import gradepost.told.InstructionSheet;
import gradepost.told.PrintedApplication;
import gradepost.told.Seen;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What a driver counts from at a braking point stands where the train is so long before it. */
class CountedCuesTest {
  /** One of the applications of a plan, as it is told. */
  private record Told(Application of, PrintedApplication told) {
    Stream<Seen.Thing> things() {
      return Stream.of(told.cues().seen().day(), told.cues().seen().night())
          .flatMap(Optional::stream);
    }
  }

  private static List<Told> applications(Plan plan) {
    List<Told> out = new ArrayList<>();
    List<InstructionSheet> sheets = plan.told().sheets();
    for (int i = 0; i < sheets.size(); i++) {
      Approach approach = plan.approaches().get(i);
      for (int k = 0; k < approach.applications().size(); k++) {
        out.add(new Told(approach.applications().get(k), sheets.get(i).applications().get(k)));
      }
    }
    return out;
  }

  /** Every place on the line that goes by this name, distances run. */
  private static double[] places(Assignment assignment, Seen.Thing thing) {
    Route route = assignment.route();
    gradepost.route.Path path = assignment.path();
    Stream<Double> all =
        switch (thing.kind()) {
          case LANDMARK ->
              route.landmarks().stream()
                  .filter(l -> l.name().equals(thing.name()))
                  .map(l -> path.metresAt(l.location()));
          case SIGNAL ->
              route.signals().stream()
                  .filter(s -> s.id().equals(thing.name()))
                  .map(s -> path.metresAt(s.location()));
          case MAGNET ->
              route.signals().stream()
                  .filter(s -> s.id().equals(thing.name()))
                  .map(s -> path.metresAt(s.aws().orElseThrow()));
          case BRIDGE ->
              route.structures().stream()
                  .filter(s -> s.name().equals(thing.name()))
                  .map(s -> near(path, s.extent()));
          case RAMP ->
              route.stations().stream()
                  .flatMap(s -> s.platforms().stream())
                  .filter(p -> p.number().equals(thing.name()))
                  .map(p -> near(path, p.extent()));
          case STAND -> Stream.<Double>empty();
        };
    return all.mapToDouble(d -> d).toArray();
  }

  private static double near(gradepost.route.Path path, Extent extent) {
    return Math.min(path.metresAt(extent.from()), path.metresAt(extent.to()));
  }

  @Test
  void aCountIsWhatTheRunTakesAndNoLongerThanThePolicys() {
    int counted = 0;
    for (Assignment assignment : DemoPlans.tried()) {
      Plan plan = DemoPlans.plan(assignment);
      double most = assignment.policy().practice().line().cueWithin().seconds();
      Run run = new Run(plan.trace());
      for (Told told : applications(plan)) {
        double at = told.of().brakingPointM();
        for (Seen.Thing thing : told.things().filter(t -> t.count().isPresent()).toList()) {
          long count = thing.count().get().seconds();
          counted++;
          assertThat(count).isBetween(1L, (long) most);
          assertThat(
                  DoubleStream.of(places(assignment, thing))
                      .map(m -> run.timeAt(at) - run.timeAt(m) - count))
              .as(thing + " before " + at)
              .anySatisfy(over -> assertThat(over).isCloseTo(0.5, within(0.5 + 1e-6)));
        }
      }
    }
    assertThat(counted).isGreaterThan(8 * DemoPlans.tried().size());
  }

  /** Ten of the twelve applications of the valley down have something lit or heard. */
  @Test
  void theDemoLineIsSurveyedByNight() {
    List<Told> all = applications(DemoPlans.plan(8));
    assertThat(all).hasSizeGreaterThanOrEqualTo(12);
    assertThat(all.stream().filter(t -> t.told().cues().seen().night().isPresent()))
        .hasSizeGreaterThanOrEqualTo(10);
  }

  @Test
  void aLineWithoutASurveyHasNone() {
    Assignment base = FrozenPlans.assignments().get(0);
    Route bare =
        Changed.in(
            Changed.in(Changed.in(base.route(), "landmarks", List.of()), "structures", List.of()),
            "signals",
            List.of());
    Plan plan = Planner.plan(Changed.in(base, "route", bare));
    List<Told> all = applications(plan);
    assertThat(all).isNotEmpty();
    assertThat(all).allMatch(t -> t.told().cues().seen().night().isEmpty());
    // A platform ramp is all that is left to see by day.
    assertThat(all.stream().flatMap(Told::things))
        .allMatch(thing -> thing.kind() == Seen.Kind.RAMP);
  }
}
