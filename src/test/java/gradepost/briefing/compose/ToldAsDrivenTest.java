package gradepost.briefing.compose;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import gradepost.briefing.ApproachPage;
import gradepost.briefing.Briefing;
import gradepost.briefing.Fact;
import gradepost.briefing.LineSheet;
import gradepost.briefing.Messages;
import gradepost.briefing.Part;
import gradepost.briefing.SampleIssue;
import gradepost.briefing.Table;
import gradepost.briefing.word.Words;
import gradepost.drive.DemoPlans;
import gradepost.plan.Action;
import gradepost.plan.Application;
import gradepost.plan.Plan;
import gradepost.plan.Run;
import gradepost.plan.fallback.Latest;
import gradepost.route.Junction;
import gradepost.route.JunctionRoute;
import gradepost.stock.BrakeSystem;
import gradepost.task.CeilingStep;
import gradepost.task.Target;
import gradepost.units.Rounding;
import gradepost.units.UnitStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What every page of the demo packs tells of one thing is the same, and none of it flatters. */
@Tag("slow")
class ToldAsDrivenTest {
  private record Paper(Plan plan, Part part) {}

  private static List<Paper> papers = List.of();

  @BeforeAll
  static void plan() {
    papers =
        List.of(0, 3, 5, 7, 9).stream()
            .map(i -> DemoPlans.plan(i))
            .map(p -> new Paper(p, briefing(p).parts().get(0)))
            .toList();
  }

  private static Briefing briefing(Plan plan) {
    return new Composer(Messages.english())
        .compose("", List.of(plan), SampleIssue.issue(), List.of());
  }

  /** Behind that place it says nothing that could still be acted on. */
  @Test
  void aBackstopStandsBeforeTheLastPlaceOfTheNextBrake() {
    int landmarks = 0;
    int clocks = 0;
    for (Paper paper : papers) {
      for (int i = 0; i < paper.part().approaches().size(); i++) {
        ApproachPage page = paper.part().approaches().get(i);
        List<Application> applications = paper.plan().approaches().get(i).applications();
        for (int k = 0; k < applications.size(); k++) {
          List<Fact> goBy = page.points().get(k).goBy();
          Fact last = goBy.get(goBy.size() - 1);
          assertThat(last.label()).as(page.title()).startsWith("too late if not braking");
          if (last.label().endsWith(" by")) {
            landmarks++;
            Application a = applications.get(k);
            assertThat(a.brakingPointM() + a.cues().backstopAfterM())
                .as(page.title())
                .isLessThanOrEqualTo(lastOfFallback(a) + 0.01);
          } else {
            clocks++;
            assertThat(last.value()).contains("no landmark in time");
          }
        }
      }
    }
    assertThat(landmarks).isGreaterThan(3);
    assertThat(clocks).isGreaterThan(3);
  }

  private static double lastOfFallback(Application application) {
    return application.told().get(0).ladder().stream()
        .filter(r -> r.brake().role() == BrakeSystem.Role.FALLBACK)
        .map(r -> ((Latest.Point) r.latest()).exactM())
        .findFirst()
        .orElseThrow();
  }

  @Test
  void theRearIsClearOnTheLineWhereItIsAndNotBefore() {
    int met = 0;
    for (Paper paper : papers) {
      List<String> clear =
          rows(paper).stream()
              .filter(r -> r.what().stream().anyMatch(t -> t.startsWith("rear clear")))
              .map(LineSheet.Row::place)
              .toList();
      Words words = new Words(Messages.english(), paper.plan().assignment().path());
      List<String> rises = new ArrayList<>();
      List<CeilingStep> steps = paper.plan().ceiling();
      for (int i = 1; i < steps.size(); i++) {
        if (steps.get(i).speedMps() > steps.get(i - 1).speedMps()) {
          rises.add(words.placePast(steps.get(i).fromM()));
        }
      }
      assertThat(clear).containsExactlyElementsOf(rises);
      met += clear.size();
    }
    assertThat(met).isGreaterThan(10);
  }

  private static List<LineSheet.Row> rows(Paper paper) {
    return paper.part().line().stream().flatMap(s -> s.rows().stream()).toList();
  }

  /** A stand has a row of its own, at the mark; so has the start; the times make up the run. */
  @Test
  void aTrainStandsWhereItsPageSaysAndTheTimesAddUp() {
    for (Paper paper : papers) {
      List<LineSheet.Row> rows = rows(paper);
      for (int i = 0; i < paper.part().approaches().size(); i++) {
        if (!(paper.plan().approaches().get(i).target() instanceof Target.Stop stop)) {
          continue;
        }
        List<ApproachPage.ActionLine> actions = paper.part().approaches().get(i).actions();
        LineSheet.Row stands =
            rows.stream()
                .filter(
                    c ->
                        c.what()
                            .toString()
                            .startsWith("[" + stop.name() + ", " + stop.markText() + ", after "))
                .findFirst()
                .orElseThrow();
        assertThat(stands.place()).isEqualTo(actions.get(actions.size() - 1).where());
        assertThat(stands.speed()).isEqualTo("0");
        assertThat(stands.todo()).containsExactly("stop, hold brake");
        if (i + 1 < paper.part().approaches().size()) {
          LineSheet.Row starts = rows.get(rows.indexOf(stands) + 1);
          assertThat(starts.place()).isEqualTo(stands.place());
          assertThat(starts.todo().toString()).startsWith("[power: ");
          assertThat(starts.what()).containsExactly("start");
          ApproachPage.ActionLine start = paper.part().approaches().get(i + 1).actions().get(0);
          assertThat(start.where()).isEqualTo(stands.place());
          assertThat(stands.what().toString()).contains(", for ");
        }
      }
      Pattern after = Pattern.compile("\\[.*, after (\\d+) min (\\d+) s");
      List<Double> seconds =
          rows.stream()
              .map(r -> after.matcher(r.what().toString()))
              .filter(Matcher::find)
              .map(m -> 60 * Double.parseDouble(m.group(1)) + Double.parseDouble(m.group(2)))
              .toList();
      List<Double> stood =
          paper.plan().actions().stream()
              .filter(a -> a.command().isStand())
              .map(Action::timeS)
              .toList();
      assertThat(seconds).hasSameSizeAs(stood);
      for (int leg = 0; leg < stood.size(); leg++) {
        double before = leg == 0 ? 0 : stood.get(leg - 1);
        assertThat(seconds.get(leg)).isCloseTo(stood.get(leg) - before, within(0.5 + 1e-9));
      }
      assertThat(stood.get(stood.size() - 1)).isCloseTo(paper.plan().runningTimeS(), within(1e-6));
    }
  }

  /** Rounded down, a train at the permissible speed would look as if it kept a margin. */
  @Test
  void whereALowerSpeedBeginsTheSpeedIsRoundedUp() {
    int falls = 0;
    for (Paper paper : papers) {
      Run run = new Run(paper.plan().trace());
      UnitStyle units = paper.plan().assignment().path().units();
      List<CeilingStep> steps = paper.plan().ceiling();
      for (int i = 1; i < steps.size(); i++) {
        CeilingStep step = steps.get(i);
        if (step.speedMps() >= steps.get(i - 1).speedMps()) {
          continue;
        }
        String says = "permissible speed " + units.speed(step.speedMps(), Rounding.DOWN) + ": ";
        String place =
            units.mileage(
                paper.plan().assignment().path().locationAt(step.fromM() + 1e-6).mileage());
        List<LineSheet.Row> there =
            rows(paper).stream()
                .filter(c -> c.what().stream().anyMatch(w -> w.startsWith(says)))
                .filter(c -> c.place().equals(place))
                .toList();
        for (LineSheet.Row cue : there) {
          double true_ = run.speedAt(step.fromM());
          assertThat(Double.parseDouble(cue.speed()))
              .as(cue.toString())
              .isGreaterThanOrEqualTo(true_ / units.speedUnitMps() - 1e-6);
          falls++;
        }
      }
    }
    assertThat(falls).isGreaterThan(10);
  }

  /** A chart is told as it is: nothing is said of curves that may lie the other way. */
  @Test
  void whoDoesNotSeeTheChartIsToldWhereTheRunIs() {
    for (Paper paper : papers) {
      for (int i = 0; i < paper.part().approaches().size(); i++) {
        ApproachPage page = paper.part().approaches().get(i);
        Target target = paper.plan().approaches().get(i).target();
        assertThat(page.chart().says()).doesNotContain("to the right of");
        if (!page.points().isEmpty()) {
          assertThat(page.chart().says())
              .contains(target instanceof Target.Stop ? "stops at the mark" : " is down to ")
              .contains(" Last places: EP ");
        }
      }
    }
  }

  /**
   * The signal of another junction leads elsewhere; a way of the other direction is none; and what
   * the train is booked over is not seldom met.
   */
  @Test
  void aRouteThatIsNotBookedIsShownByTheJunctionsOwnSignal() {
    for (Paper paper : papers) {
      var assignment = paper.plan().assignment();
      List<String> seldom =
          paper.part().seldom().rows().stream().map(r -> r.cells().get(1)).toList();
      for (Junction junction : assignment.route().junctions()) {
        JunctionRoute booked =
            assignment.junctionRoutes().getOrDefault(junction.name(), junction.routes().get(0));
        assertThat(seldom)
            .noneMatch(
                s -> s.contains(junction.name()) && s.contains("route " + booked.name() + ","));
      }
    }
    assertThat(seldom(0, "Ferrow Junction"))
        .singleElement()
        .asString()
        .startsWith("Ferrow Junction: route ")
        .contains("|FJ 62 at 11m 30ch: ");
  }

  /** A signal has a row with its braking, or is named once among what is not supplied. */
  @Test
  void aSignalWithoutAKnownCautionIsNamedOnce() {
    int named = 0;
    for (Paper paper : papers) {
      List<String> rows =
          paper.part().tables().stream()
              .filter(t -> t.name().equals("cautions"))
              .flatMap(t -> t.rows().stream())
              .map(r -> r.cells().get(0))
              .toList();
      List<String> without =
          paper.plan().signals().stream()
              .filter(s -> s.caution().isEmpty())
              .map(s -> s.signal().id())
              .toList();
      List<String> with =
          paper.plan().signals().stream()
              .filter(s -> s.caution().isPresent())
              .map(s -> s.signal().id())
              .toList();
      assertThat(rows).containsExactlyElementsOf(with).isNotEmpty();
      for (String id : without) {
        assertThat(paper.part().notSupplied())
            .as(id)
            .filteredOn(t -> t.startsWith("Cautions: ") && t.matches(".*[ ,]" + id + "[,.].*"))
            .hasSize(1);
        named++;
      }
    }
    assertThat(named).isPositive();
  }

  /** A hazard of every run is told on its plate, not as what is seldom met. */
  @Test
  void whatIsMetOnEveryRunIsNotSeldomMet() {
    int hazards = 0;
    for (Paper paper : papers) {
      List<String> pages = paper.part().approaches().stream().map(ApproachPage::id).toList();
      assertThat(paper.part().seldom().rows()).noneMatch(r -> pages.contains(r.link()));
      for (Table.Row row : paper.part().hazards().rows()) {
        assertThat(pages).contains(row.link());
        assertThat(row.cells().get(2))
            .isEqualTo(paper.part().approaches().get(pages.indexOf(row.link())).title());
        ApproachPage page = paper.part().approaches().get(pages.indexOf(row.link()));
        assertThat(page.plate()).as(page.title()).isPresent();
        List<String> told = new ArrayList<>(page.findings());
        told.add(page.marks());
        assertThat(told)
            .as(page.title())
            .anyMatch(
                t ->
                    row.cells().get(1).endsWith(t)
                        || (t.contains("buffer stops") && row.cells().get(1).contains("buffer")));
        hazards++;
      }
    }
    assertThat(hazards).isGreaterThan(papers.size());
  }

  private static List<String> seldom(int paper, String holding) {
    return papers.get(paper).part().seldom().rows().stream()
        .map(r -> r.cells().get(1) + "|" + r.cells().get(2))
        .filter(r -> r.contains(holding))
        .toList();
  }

  @Test
  void whatIsMissingIsListedAndWhatIsThereIsNot() {
    for (Paper paper : papers) {
      assertThat(paper.part().notSupplied())
          .noneMatch(n -> n.contains("checked on") || n.startsWith("Accepted"))
          .anyMatch(n -> n.startsWith("Boards at the lineside: none given for "))
          .anyMatch(n -> n.startsWith("Cautions: no known signal warns of signals "))
          .anyMatch(n -> n.startsWith("Cues by night or in fog: none near "));
      assertThat(paper.part().answeredFor()).anyMatch(n -> n.contains("checked on"));
    }
  }

  /** A question may ask what the gauges show with the pipe charged. */
  @Test
  void theGaugeTableHasTheChargedPipeAndTheBrakeThatNoPipeGoverns() {
    Table pipe =
        papers.get(0).part().train().tables().stream()
            .filter(t -> t.name().equals("pipe"))
            .findFirst()
            .orElseThrow();
    assertThat(pipe.rows().get(0).cells())
        .containsExactly("Auto", "none: charged", "70 psi", "0 psi");
    assertThat(pipe.rows().get(pipe.rows().size() - 1).cells())
        .containsExactly("EP", "–", "70 psi", "as applied, up to 50 psi");
  }

  /** A bare number beside that of the action could be read as either. */
  @Test
  void aNumberedNotchIsCalledANotch() {
    assertThat(
            papers.get(3).part().approaches().stream()
                .flatMap(a -> a.actions().stream())
                .map(ApproachPage.ActionLine::todo)
                .filter(t -> t.startsWith("power: ")))
        .isNotEmpty()
        .allMatch(t -> t.startsWith("power: notch "));
  }

  /** An action's place is told by what it is so far from. */
  @Test
  void aDistanceSaysToWhat() {
    for (Paper paper : papers) {
      for (ApproachPage page : paper.part().approaches()) {
        for (ApproachPage.ActionLine line : page.actions()) {
          assertThat(line.where()).doesNotEndWith(" before");
        }
      }
    }
  }
}
