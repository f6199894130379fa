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
import gradepost.plan.Approach;
import gradepost.plan.Plan;
import gradepost.told.InstructionSheet;
import gradepost.told.PrintedAnswer;
import gradepost.told.PrintedApplication;
import gradepost.told.PrintedBrake;
import gradepost.told.PrintedCase;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
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

  /** Every line; where it has no number it is that of another rail. */
  private static List<Table.Row> lines(Part part) {
    return part.road().stream().flatMap(r -> r.table().rows().stream()).toList();
  }

  /** The first line of each approach. */
  private static List<Table.Row> rows(Part part) {
    return lines(part).stream().filter(r -> !r.cells().get(0).isEmpty()).toList();
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

  /**
   * Whatever the rail, a line tells a place no later than its point and its last place for the next
   * brake, and marks what that brake does not do; where it is one rail's own line, just that point.
   */
  @Test
  void eachRailHasALineThatIsNoLaterThanItsOwnPoint() {
    int own = 0;
    int shared = 0;
    int asPlanned = 0;
    for (Plan plan : PLANS) {
      Words words = new Words(Messages.english(), plan.assignment().path());
      Part part = part(plan);
      int last = columns(part).indexOf("Auto last");
      List<Table.Row> lines = lines(part);
      for (int i = 0; i < lines.size(); i++) {
        Table.Row first = lines.get(i);
        if (first.cells().get(0).isEmpty()) {
          continue;
        }
        Approach approach = plan.approaches().get(Integer.parseInt(first.cells().get(0)) - 1);
        InstructionSheet sheet = plan.told().sheets().get(approach.number() - 1);
        PrintedApplication told = sheet.begun().get(0);
        boolean more = i + 1 < lines.size() && lines.get(i + 1).cells().get(0).isEmpty();
        String name = more ? lines.get(i + 1).cells().get(1) : "";
        for (PrintedCase rail : told.cases().subList(1, told.cases().size())) {
          boolean planned = !more || name.contains("(" + rail.rail() + " as ");
          Table.Row line = planned ? first : lines.get(i + 1);
          boolean several = name.contains(" or ");
          assertThat(planned || name.contains(rail.rail())).isTrue();
          if (rail.point().isEmpty()) {
            assertThat(line.cells().get(2)).isEqualTo("▲ no point");
            continue;
          }
          String at = words.place(rail.point().get().place(), sheet.target());
          if (planned || !several) {
            assertThat(line.cells().get(2)).isEqualTo(at);
          }
          String printed = line.cells().get(2);
          double lineM = metres(plan, sheet, told, printed);
          assertThat(lineM)
              .isLessThanOrEqualTo(
                  words.grid().metres(rail.point().get().place(), approach.target().atM()) + 0.01);
          if (rail.toUse().filter(a -> !a.holds()).isPresent()) {
            assertThat(line.grave()).isTrue();
          }
          if (last >= 0 && !sheet.forStep(told)) {
            lastM(words, approach, rail)
                .ifPresent(
                    m ->
                        assertThat(earliestLast(words, approach, told, line.cells().get(last)))
                            .isLessThanOrEqualTo(m + 0.01));
          }
          own += !planned && !several ? 1 : 0;
          shared += several ? 1 : 0;
          asPlanned += planned ? 1 : 0;
        }
      }
    }
    assertThat(own).isGreaterThan(10);
    assertThat(shared).isGreaterThan(10);
    assertThat(asPlanned).isGreaterThan(10);
  }

  private static List<String> columns(Part part) {
    return part.road().get(0).table().columns().stream().map(Table.Column::heading).toList();
  }

  /** Where a printed point lies: it is that of one of the rails. */
  private static double metres(
      Plan plan, InstructionSheet sheet, PrintedApplication told, String printed) {
    Words words = new Words(Messages.english(), plan.assignment().path());
    double targetM = plan.approaches().get(sheet.number() - 1).target().atM();
    return told.cases().stream()
        .flatMap(c -> c.point().stream())
        .filter(p -> words.place(p.place(), sheet.target()).equals(printed))
        .mapToDouble(p -> words.grid().metres(p.place(), targetM))
        .max()
        .orElseThrow();
  }

  private static Optional<Double> lastM(Words words, Approach approach, PrintedCase rail) {
    return rail.ladder().stream()
        .filter(r -> r.brake().kind() == PrintedBrake.Kind.FALLBACK)
        .findFirst()
        .flatMap(
            r ->
                r.latest()
                    .match(
                        at -> Optional.of(words.grid().metres(at.place(), approach.target().atM())),
                        nowhere -> Optional.empty()));
  }

  private static double earliestLast(
      Words words, Approach approach, PrintedApplication told, String printed) {
    if (printed.startsWith("▲")) {
      return Double.NEGATIVE_INFINITY;
    }
    return told.cases().stream()
        .flatMap(c -> lastM(words, approach, c).stream())
        .filter(m -> words.placeTo(m, approach.target()).equals(printed))
        .findFirst()
        .orElseThrow();
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

  /**
   * Where a brake is borne that passes the mark, and a further one would hold, the page says so.
   */
  @Test
  void whereEmergencyIsNotToBeUsedOnAnotherRailThePageSaysSo() {
    int said = 0;
    for (Plan plan : PLANS) {
      List<ApproachPage> pages = part(plan).approaches();
      for (int i = 0; i < pages.size(); i++) {
        InstructionSheet sheet = plan.told().sheets().get(i);
        for (int k = 0; k < sheet.begun().size(); k++) {
          PrintedApplication told = sheet.begun().get(k);
          String notes = String.join(" ", pages.get(i).points().get(k).answer());
          for (PrintedCase rail : told.cases()) {
            boolean borne =
                !rail.equals(told.told())
                    && rail.point().isPresent()
                    && rail.toUse().filter(a -> !a.holds() && a.suffices()).isPresent()
                    && rail.answers().stream().anyMatch(PrintedAnswer::holds)
                    && sheet.target().buffers().isEmpty();
            assertThat(
                    notes.matches(".*On [^.]*\\b" + rail.rail() + "\\b[^.]* rail .*Do not use.*"))
                .as(pages.get(i).title() + ": " + notes)
                .isEqualTo(borne);
            said += borne ? 1 : 0;
          }
        }
      }
    }
    assertThat(said).isGreaterThan(0);
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
      List<String> own =
          sheet.table().rows().stream()
              .map(r -> r.cells().get(0))
              .filter(n -> !n.isEmpty())
              .toList();
      assertThat(own).hasSizeBetween(1, RoadWriter.MOST_ROWS);
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
