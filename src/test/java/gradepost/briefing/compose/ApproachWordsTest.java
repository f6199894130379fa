package gradepost.briefing.compose;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.ApproachPage;
import gradepost.briefing.Briefing;
import gradepost.briefing.LineSheet;
import gradepost.briefing.Messages;
import gradepost.briefing.Plate;
import gradepost.briefing.SampleIssue;
import gradepost.briefing.Table;
import gradepost.briefing.word.Words;
import gradepost.drive.DemoPlans;
import gradepost.plan.Application;
import gradepost.plan.Approach;
import gradepost.plan.BrakeTest;
import gradepost.plan.Command;
import gradepost.plan.IfFaster;
import gradepost.plan.Plan;
import gradepost.plan.Run;
import gradepost.units.Rounding;
import gradepost.units.UnitStyle;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Properties of the sentences on the approach pages of the demo packs. */
@Tag("slow")
class ApproachWordsTest {

  private static Briefing briefing(Plan plan) {
    return new Composer(Messages.english())
        .compose("", List.of(plan), SampleIssue.issue(), List.of());
  }

  /**
   * Also that the speed printed is not below the one that the run has there, and that a brake that
   * is on is told.
   */
  @ParameterizedTest
  @ValueSource(ints = {0, 7})
  void aLowerSpeedMetWithoutABrakeSaysAtWhatSpeedAndWhatIfFaster(int paper) {
    Plan plan = DemoPlans.plan(paper);
    UnitStyle units = plan.assignment().path().units();
    Run run = new Run(plan.trace());
    List<ApproachPage> pages = briefing(plan).parts().get(0).approaches();
    int met = 0;
    for (int i = 0; i < pages.size(); i++) {
      Approach approach = plan.approaches().get(i);
      String says = String.join(" ", pages.get(i).unbraked());
      if (approach.brakingPointM().isPresent()) {
        assertThat(says).as(pages.get(i).title()).isEmpty();
        continue;
      }
      met++;
      double there = run.speedAt(approach.target().atM());
      assertThat(there).isLessThanOrEqualTo(approach.target().speedMps());
      boolean on =
          plan.actions().stream()
              .filter(a -> a.atM() <= approach.target().atM())
              .reduce((a, next) -> next)
              .filter(a -> a.command() instanceof Command.Brake)
              .isPresent();
      assertThat(says)
          .as(pages.get(i).title())
          .containsPattern(
              "The plan reaches it at "
                  + units.speed(there, Rounding.UP)
                  + (on ? ", (with the brake|braking since) " : " without braking\\."))
          .contains(
              "If you would be faster than "
                  + units.speed(approach.target().speedMps(), Rounding.DOWN)
                  + (on ? " there, brake harder before it." : " there, brake before it."));
      faster(pages.get(i), approach, says, units);
      String all = says + pages.get(i).ladders() + pages.get(i).chart().says();
      assertThat(all.contains("without braking")).isEqualTo(!on);
      assertThat(all).doesNotContain("No brake is planned");
      assertThat(all.contains("needs no brake")).isEqualTo(!on);
    }
    assertThat(met).isPositive();
  }

  /** A train that can be too fast is told where to brake, in every state of the rail. */
  private static void faster(ApproachPage page, Approach approach, String says, UnitStyle units) {
    IfFaster faster = approach.ifFaster().orElseThrow();
    long board = whole(approach.target().speedMps(), units);
    long most = whole(faster.mostMps(), units);
    if (faster.application().isEmpty()) {
      assertThat(most).as(page.title()).isLessThanOrEqualTo(board + 1);
      boolean over = faster.mostMps() > approach.target().speedMps();
      String there = units.speed(faster.mostMps(), Rounding.UP);
      assertThat(says).endsWith((over ? "the train" : "it") + " would be at " + there + " there.");
      assertThat(page.ladders()).hasSize(1);
      return;
    }
    assertThat(most).as(page.title()).isGreaterThan(board);
    assertThat(
            most > board + 1 || whole(faster.application().get().brakingSpeedMps(), units) > board)
        .as("no brake for one mph at a speed that the board allows")
        .isTrue();
    Application application = faster.application().get();
    String speed = units.speed(application.brakingSpeedMps(), Rounding.DOWN);
    assertThat(says)
        .contains(" At " + speed + ", the fastest possible and permitted here, brake at ")
        .contains(": first application, ")
        .contains("Last places on dry rail: ")
        .contains(" On damp rail the braking point is ")
        .contains(" On low rail the braking point is ");
    assertThat(page.ladders().get(1).title()).endsWith(" from " + speed);
    assertThat(page.ladders().get(1).rows()).hasSizeGreaterThan(4);
  }

  /** As a board and a speedometer have it. */
  private static long whole(double mps, UnitStyle units) {
    return (long) Math.floor(mps / units.speedUnitMps() + 1e-6);
  }

  /**
   * Up a terminal platform the brake goes on more than once: each time is a question of its own.
   */
  @ParameterizedTest
  @ValueSource(ints = {0, 1, 4, 5, 8})
  void everyApplicationIsCalledByWhatItIsForAndHasItsAnswerAndItsLadder(int paper) {
    Plan plan = DemoPlans.plan(paper);
    UnitStyle units = plan.assignment().path().units();
    List<ApproachPage> pages = briefing(plan).parts().get(0).approaches();
    int stepped = 0;
    for (int i = 0; i < pages.size(); i++) {
      ApproachPage page = pages.get(i);
      List<Application> applications = plan.approaches().get(i).applications();
      List<String> keys =
          page.actions().stream()
              .filter(ApproachPage.ActionLine::key)
              .map(ApproachPage.ActionLine::todo)
              .toList();
      assertThat(page.points()).as(page.title()).hasSameSizeAs(applications);
      assertThat(keys).as(page.title()).hasSameSizeAs(applications).doesNotHaveDuplicates();
      assertThat(page.points()).noneMatch(p -> p.question().isEmpty() || p.answer().isEmpty());
      if (applications.size() < 2) {
        boolean faster = plan.approaches().get(i).faster().isPresent();
        assertThat(page.ladders()).hasSize(faster ? 2 : 1);
        assertThat(keys).noneMatch(k -> k.contains(" for ") || k.contains(" to "));
        continue;
      }
      stepped++;
      assertThat(page.headline())
          .contains(
              " Braking from "
                  + units.speed(applications.get(0).brakingSpeedMps(), Rounding.DOWN)
                  + ". ");
      assertThat(page.chart().track().fromM()).isLessThan(applications.get(0).brakingPointM());
      for (int k = 0; k < applications.size(); k++) {
        ladder(page, k, applications.get(k), units);
      }
    }
    assertThat(stepped).isEqualTo(1);
  }

  private static void ladder(ApproachPage page, int k, Application application, UnitStyle units) {
    String purpose =
        application.target().speedMps() > 0
            ? "for " + units.speed(application.target().speedMps(), Rounding.DOWN)
            : "to a stand";
    String number = page.points().get(k).number();
    ApproachPage.ActionLine line =
        page.actions().stream().filter(a -> a.number().equals(number)).findFirst().orElseThrow();
    assertThat(line.todo().split(", main ", -1)[0]).isEqualTo("first application " + purpose);
    Table ladder = page.ladders().get(k);
    assertThat(ladder.title()).isEqualTo("If the brake fails at action " + number + ", " + purpose);
    String stands = application.forStep() ? "to a stand: last place for " : "last place for ";
    assertThat(ladder.rows().stream().map(r -> r.cells().get(0)))
        .contains(stands + "Auto full service", stands + "emergency");
    assertThat(ladder.rows()).allMatch(r -> r.cells().size() == ladder.columns().size());
    assertThat(page.points().get(k).question()).contains(" fails at action " + number + ":");
  }

  /** It is told beside the place too: with its speeds, or that there is no room. */
  @Test
  void aRunningBrakeTestIsAnnouncedWithItsSpeedsOrWithoutRoom() {
    Plan plan = DemoPlans.plan(0);
    assertThat(plan.brakeTests()).extracting(BrakeTest::made).containsExactly(true, false);
    assertThat(test(with(plan, plan.brakeTests().get(0))))
        .contains("running brake test at about 30 mph: planned from ");
    assertThat(test(with(plan, plan.brakeTests().get(1))))
        .contains("running brake test at about 30 mph: no room here (planned ");
  }

  /** Where it has no room, its row names the other place, and the row there names it. */
  @Test
  void aRunningBrakeTestWithoutRoomIsToldWhereItIsMadeInstead() {
    Plan plan =
        IntStream.range(0, 8)
            .mapToObj(DemoPlans::plan)
            .filter(p -> p.brakeTests().stream().anyMatch(t -> instead(t).isPresent()))
            .findFirst()
            .orElseThrow();
    BrakeTest test =
        plan.brakeTests().stream().filter(t -> instead(t).isPresent()).findFirst().orElseThrow();
    Words words = new Words(Messages.english(), plan.assignment().path());
    String there = words.place(instead(test).orElseThrow().atM());
    List<LineSheet.Row> rows =
        briefing(plan).parts().get(0).line().stream().flatMap(s -> s.rows().stream()).toList();
    assertThat(rows).anyMatch(r -> r.toString().contains("no room here") && says(r, there));
    assertThat(rows)
        .anyMatch(
            r ->
                r.place().equals(there)
                    && says(r, "brake test of " + words.place(test.atM()) + ": shut off"));
  }

  private static boolean says(LineSheet.Row row, String what) {
    return row.what().stream().anyMatch(w -> w.contains(what));
  }

  private static Optional<BrakeTest.Instead> instead(BrakeTest test) {
    return test.noRoom().flatMap(BrakeTest.NoRoom::instead);
  }

  /** Only what is the same in place and pressures is called the same. */
  @Test
  void aPointOnAnotherRailIsTheSameOnlyWithItsPressures() {
    int same = 0;
    int otherwise = 0;
    for (int i = 0; i < 8; i++) {
      for (ApproachPage page : briefing(DemoPlans.plan(i)).parts().get(0).approaches()) {
        for (String other :
            page.plate().flatMap(Plate::brakeAt).map(Plate.BrakeAt::others).orElse(List.of())) {
          Optional<Table> fails =
              page.plate()
                  .flatMap(Plate::fails)
                  .filter(t -> t.rows().get(0).cells().get(0).endsWith("works, brake at"));
          for (String rail : other.split(" rail ", 2)[0].split(" and ", -1)) {
            Optional<Boolean> alike = fails.map(t -> onRail(t, rail).equals(onRail(t, "dry")));
            if (other.endsWith(" rail the same")) {
              same++;
              assertThat(alike.orElse(true)).as(page.title() + ": " + other).isTrue();
            } else if (other.endsWith("other pressures")) {
              otherwise++;
              assertThat(alike.orElse(false)).as(page.title() + ": " + other).isFalse();
            }
          }
        }
      }
    }
    assertThat(same).isGreaterThan(10);
    assertThat(otherwise).isPositive();
  }

  private static String onRail(Table ladder, String rail) {
    for (int i = 1; i < ladder.columns().size(); i++) {
      if (List.of(ladder.columns().get(i).heading().split("[^a-z]+")).contains(rail)) {
        return ladder.rows().get(0).cells().get(i);
      }
    }
    throw new IllegalArgumentException(rail);
  }

  /** On the page in whose range it lies, and there alone. */
  @Test
  void thePageOfARunningBrakeTestSaysWhetherItIsInItsFigures() {
    Plan plan = DemoPlans.plan(0);
    List<ApproachPage> pages = briefing(plan).parts().get(0).approaches();
    double from = 0;
    for (int i = 0; i < pages.size(); i++) {
      double to = plan.approaches().get(i).target().atM();
      double begin = from;
      List<BrakeTest> lie =
          plan.brakeTests().stream().filter(t -> t.atM() > begin && t.atM() <= to).toList();
      ApproachPage page = pages.get(i);
      assertThat(page.headline().contains("This page’s figures include it"))
          .as(page.title())
          .isEqualTo(lie.stream().anyMatch(BrakeTest::made));
      assertThat(page.actions().stream().anyMatch(l -> l.todo().startsWith("running brake test")))
          .as(page.title())
          .isEqualTo(lie.stream().anyMatch(BrakeTest::made));
      assertThat(
              page.findings().stream()
                  .anyMatch(f -> f.contains("This page’s figures do not include ")))
          .as(page.title())
          .isEqualTo(lie.stream().anyMatch(t -> !t.made()));
      from = to;
    }
  }

  /** What the row of a braking point names is what stands below it, and near enough to judge. */
  @ParameterizedTest
  @ValueSource(ints = {0, 3, 7, 11})
  void theRowOfABrakingPointNamesItsCues(int paper) {
    Plan plan = DemoPlans.plan(paper);
    List<ApproachPage> pages = briefing(plan).parts().get(0).approaches();
    int none = 0;
    for (int i = 0; i < pages.size(); i++) {
      ApproachPage page = pages.get(i);
      for (ApproachPage.Point point : page.points()) {
        String see =
            page.actions().stream()
                .filter(a -> a.number().equals(point.number()))
                .findFirst()
                .orElseThrow()
                .see();
        String day = point.goBy().get(0).value();
        if (see.equals("–")) {
          assertThat(day).as(page.title()).isEqualTo("NONE in reach");
        } else {
          String seen =
              see.contains(" (night: ") ? see.substring(0, see.indexOf(" (night: ")) : see;
          assertThat(day).as(page.title()).startsWith(seen);
        }
        boolean byNight = day.endsWith(", by night or in fog too");
        assertThat(byNight || point.goBy().get(1).label().equals("by night or in fog"))
            .as(page.title())
            .isTrue();
        none += !byNight && point.goBy().get(1).value().equals("NONE") ? 1 : 0;
      }
    }
    assertThat(none).isPositive();
  }

  /** The same plan with this running brake test alone. */
  private static Plan with(Plan plan, BrakeTest test) {
    return new Plan(
        plan.assignment(),
        plan.ceiling(),
        plan.approaches(),
        plan.actions(),
        plan.trace(),
        plan.runningTimeS(),
        plan.energyJ(),
        plan.handleMovements(),
        plan.fastest(),
        plan.failures(),
        plan.signals(),
        List.of(test),
        plan.figures());
  }

  private static String test(Plan plan) {
    return briefing(plan).parts().get(0).line().stream()
        .flatMap(s -> s.rows().stream())
        .map(LineSheet.Row::toString)
        .filter(c -> c.contains("running brake test at about"))
        .findFirst()
        .orElseThrow();
  }
}
