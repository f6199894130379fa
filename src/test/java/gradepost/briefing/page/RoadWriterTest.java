package gradepost.briefing.page;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.Examples;
import gradepost.briefing.ApproachPage;
import gradepost.briefing.Messages;
import gradepost.briefing.Part;
import gradepost.briefing.RoadSheet;
import gradepost.briefing.SampleIssue;
import gradepost.briefing.Table;
import gradepost.briefing.chart.RunChart;
import gradepost.briefing.chart.TrackStrip;
import gradepost.briefing.compose.Composer;
import gradepost.briefing.word.Words;
import gradepost.drive.DemoPlans;
import gradepost.drive.LongLine;
import gradepost.drive.Planner;
import gradepost.drive.RandomLines;
import gradepost.plan.Application;
import gradepost.plan.Approach;
import gradepost.plan.CaseResult;
import gradepost.plan.Plan;
import gradepost.told.PrintedApplication;
import gradepost.told.PrintedCase;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Properties of the road sheets: each row says what the page of its approach says. */
@Tag("slow")
class RoadWriterTest {

  private static Part part(Plan plan) {
    return new Composer(Messages.english())
        .compose("", List.of(plan), SampleIssue.issue(), List.of())
        .parts()
        .get(0);
  }

  private static List<Table.Row> rows(Part part) {
    return part.road().stream().flatMap(r -> r.table().rows().stream()).toList();
  }

  private static final List<Plan> PLANS =
      Stream.concat(
              IntStream.of(0, 4, 9).mapToObj(DemoPlans::plan),
              IntStream.rangeClosed(1, Examples.of(2, 4))
                  .mapToObj(seed -> Planner.plan(RandomLines.of(seed).assignment())))
          .toList();

  @Test
  void everyApproachWithABrakeHasOneRowAsItsPageTellsIt() {
    int compared = 0;
    for (Plan plan : PLANS) {
      Part part = part(plan);
      List<ApproachPage> braked =
          part.approaches().stream()
              .filter(p -> p.actions().stream().anyMatch(ApproachPage.ActionLine::key))
              .toList();
      List<Table.Row> rows = rows(part);
      assertThat(rows.stream().map(r -> r.cells().get(0)).toList())
          .isEqualTo(braked.stream().map(ApproachPage::number).toList());
      for (int i = 0; i < rows.size(); i++) {
        ApproachPage page = braked.get(i);
        ApproachPage.ActionLine brake =
            page.actions().stream().filter(ApproachPage.ActionLine::key).findFirst().orElseThrow();
        List<String> cells = rows.get(i).cells();
        assertThat(cells.get(1)).startsWith(page.title());
        assertThat(brake.where()).endsWith(cells.get(2));
        assertThat(cells.get(5)).isEqualTo(brake.speed());
        assertThat(cells.get(6)).isEqualTo(brake.gauge().replaceAll(" (psi|bar)", ""));
        assertThat(rows.get(i).link()).isEqualTo(page.id());
        compared++;
      }
    }
    assertThat(compared).isGreaterThan(30);
  }

  /** Each other rail has a column of its own: its point, or that all is as on the planned rail. */
  @Test
  void eachOtherRailHasItsOwnPoint() {
    int told = 0;
    int same = 0;
    for (Plan plan : PLANS) {
      Words words = new Words(Messages.english(), plan.assignment().path());
      Part part = part(plan);
      List<String> heads =
          part.road().get(0).table().columns().stream().map(Table.Column::heading).toList();
      for (Table.Row row : rows(part)) {
        Approach approach = plan.approaches().get(Integer.parseInt(row.cells().get(0)) - 1);
        Application first =
            approach.applications().stream()
                .filter(a -> a.brakingPointM() >= approach.fromM())
                .findFirst()
                .orElseThrow();
        for (CaseResult rail : first.cases().subList(1, first.cases().size())) {
          String cell = row.cells().get(heads.indexOf("if " + rail.adhesion().name()));
          String at = rail.plannedM().map(m -> words.placeTo(m, approach.target())).orElse("–");
          if (cell.endsWith("the same")) {
            assertThat(at).isEqualTo(row.cells().get(2));
            same++;
          } else {
            assertThat(cell).endsWith(rail.plannedM().isPresent() ? at : "▲ no point");
            told++;
          }
        }
      }
    }
    assertThat(told).isGreaterThan(30);
    assertThat(same).isGreaterThan(10);
  }

  /** Where another rail wants another brake, the sentence in the largest type says so. */
  @Test
  void theAnswerToAFailureNamesTheBrakeOfEachRail() {
    int others = 0;
    for (Plan plan : PLANS) {
      Words words = new Words(Messages.english(), plan.assignment().path());
      List<ApproachPage> pages = part(plan).approaches();
      for (int i = 0; i < pages.size(); i++) {
        List<PrintedApplication> begun = plan.told().sheets().get(i).begun();
        for (int k = 0; k < begun.size(); k++) {
          String does = pages.get(i).points().get(k).firstAnswer().toLowerCase(Locale.ROOT);
          Set<String> brakes = new HashSet<>();
          for (PrintedCase rail : begun.get(k).cases()) {
            if (rail.point().isPresent() && rail.toUse().isPresent()) {
              String brake = words.called(rail.toUse().get().brake());
              assertThat(does).contains(brake.toLowerCase(Locale.ROOT));
              brakes.add(brake);
            }
          }
          others += brakes.size() > 1 ? 1 : 0;
        }
      }
    }
    assertThat(others).isGreaterThan(0);
  }

  /** Each page without a row is named below the rows, or is among the lower speeds. */
  @Test
  void eachPageWithoutABrakingPointIsNamedBelowTheRows() {
    int named = 0;
    for (Plan plan : PLANS) {
      Part part = part(plan);
      List<String> numbers = rows(part).stream().map(r -> r.cells().get(0)).toList();
      String notes =
          part.road().stream().flatMap(r -> r.notes().stream()).collect(Collectors.joining(" "));
      for (ApproachPage page : part.plates()) {
        if (!numbers.contains(page.number())) {
          assertThat(notes).contains(page.title());
          named++;
        }
      }
    }
    assertThat(named).isGreaterThan(3);
  }

  @Test
  void aLongRoadIsCutAtStopsIntoSheetsOfTwelveRowsAtMost() {
    Plan plan = Planner.plan(LongLine.assignment(130));
    List<RoadSheet> sheets = part(plan).road();
    assertThat(sheets.size()).isGreaterThan(1);
    List<Double> stops =
        plan.approaches().stream()
            .filter(a -> a.target().isStop())
            .map(a -> a.target().atM())
            .toList();
    double endM = sheets.get(0).chart().track().fromM();
    List<String> numbers = new ArrayList<>();
    for (RoadSheet sheet : sheets) {
      TrackStrip track = sheet.chart().track();
      assertThat(track.fromM()).isEqualTo(endM);
      endM = track.toM();
      assertThat(sheet.table().rows()).hasSizeBetween(1, RoadWriter.MOST_ROWS);
      List<String> own = sheet.table().rows().stream().map(r -> r.cells().get(0)).toList();
      assertThat(sheet.chart().points().stream().map(RunChart.Point::number)).isEqualTo(own);
      assertThat(sheet.chart().points())
          .allMatch(p -> p.atM() >= track.fromM() && p.atM() <= track.toM());
      numbers.addAll(own);
    }
    assertThat(endM).isEqualTo(plan.assignment().path().lengthM());
    assertThat(numbers).doesNotHaveDuplicates();
    sheets.stream()
        .limit(sheets.size() - 1L)
        .forEach(s -> assertThat(stops).contains(s.chart().track().toM()));
  }
}
