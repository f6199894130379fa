package gradepost.app;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.LineSheet;
import gradepost.briefing.Messages;
import gradepost.briefing.Part;
import gradepost.briefing.SampleIssue;
import gradepost.briefing.chart.LineChart;
import gradepost.briefing.compose.Composer;
import gradepost.briefing.word.ActionWords;
import gradepost.briefing.word.Words;
import gradepost.drive.DemoPlans;
import gradepost.plan.Plan;
import gradepost.plan.Step;
import gradepost.plan.Telling;
import gradepost.task.Assignment;
import gradepost.told.InstructionSheet;
import gradepost.told.PrintedApplication;
import gradepost.told.PrintedCase;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Property: the sheets of the line tell the whole plan, once, and each fits its page. */
@Tag("slow")
class LineSheetsTest {
  private record Told(String name, Plan plan, Part part) {}

  /** From line to line on paper, and what a row takes beside its lines, CSS pixels. */
  private static final int LINE_PX = 14;

  private static final int ROW_PX = 1;

  private static final List<Told> PAPERS = papers();

  private static List<Told> papers() {
    List<Told> out = new ArrayList<>();
    for (Assignment assignment : DemoPlans.tried()) {
      Plan plan = DemoPlans.plan(assignment);
      Part part =
          new Composer(Messages.english())
              .compose("", List.of(plan), SampleIssue.issue(), List.of())
              .parts()
              .get(0);
      out.add(new Told("demo " + assignment.direction(), plan, part));
    }
    SmallLines.papers().forEach(p -> out.add(new Told(p.name(), p.plan(), p.part())));
    return out;
  }

  private static List<LineSheet.Row> rows(Told told) {
    return told.part().line().stream().flatMap(s -> s.rows().stream()).toList();
  }

  /** The number of a braking point stands before its instruction. */
  private static String plain(String todo) {
    return todo.replaceFirst("^\\(\\d+\\) ", "");
  }

  private static final Pattern EARLIER = Pattern.compile("; on ([^;]*) rail at (.*)$");

  /**
   * What an instruction is for, where a page has several, and on which rails it comes earlier, is
   * said in it and not asked here.
   */
  private static String bare(String todo) {
    return EARLIER
        .matcher(plain(todo))
        .replaceFirst("")
        .replaceFirst("^(first application|.*?) (to a stand|for \\d+ [^ ,]+)", "$1");
  }

  /** Told of each application whose place is another on some rail: the earliest of them. */
  @Test
  void whereAnotherRailBrakesEarlierTheLineTellsThePlace() {
    int many = 0;
    for (Told paper : PAPERS) {
      Words words = new Words(Messages.english(), paper.plan().assignment().path());
      List<String> expected = new ArrayList<>();
      for (InstructionSheet sheet : paper.plan().told().sheets()) {
        double targetM = paper.plan().approaches().get(sheet.number() - 1).target().atM();
        for (PrintedApplication a : sheet.begun()) {
          double firstM = words.grid().metres(a.point(), targetM);
          double earliestM = firstM;
          String place = "";
          for (PrintedCase rail : a.cases()) {
            if (rail.point().isPresent()) {
              double atM = words.grid().metres(rail.point().get().place(), targetM);
              if (atM < earliestM - 0.5) {
                earliestM = atM;
                place = plain(words.place(rail.point().get().place(), sheet.target()));
              }
            }
          }
          if (!place.isEmpty()) {
            expected.add(place);
          }
        }
      }
      List<String> places =
          rows(paper).stream()
              .flatMap(r -> r.todo().stream())
              .map(t -> EARLIER.matcher(plain(t)))
              .filter(Matcher::find)
              .map(m -> m.group(2))
              .toList();
      assertThat(places).as(paper.name()).containsExactlyElementsOf(expected);
      many += places.size();
    }
    assertThat(many).isGreaterThan(15);
  }

  @Test
  void everyInstructionStandsOnTheLineOnce() {
    for (Told told : PAPERS) {
      Words words = new Words(Messages.english(), told.plan().assignment().path());
      ActionWords orders = new ActionWords(words, told.plan().assignment().stock());
      List<String> asked =
          Step.of(told.plan().actions()).stream()
              .map(s -> orders.whole(Telling.order(words.grid(), s), Optional.empty()))
              .map(LineSheetsTest::bare)
              .toList();
      assertThat(rows(told).stream().flatMap(r -> r.todo().stream()).map(LineSheetsTest::bare))
          .as(told.name())
          .containsExactlyElementsOf(asked);
    }
  }

  /** What is a state is not told as an order. */
  @Test
  void aStateIsNoOrder() {
    for (Told told : PAPERS) {
      assertThat(rows(told).stream().flatMap(r -> r.todo().stream()))
          .as(told.name())
          .noneMatch(t -> t.contains("rear clear") || t.contains("power is off"))
          .noneMatch(t -> t.contains("permissible") || t.contains("test at about"));
    }
  }

  @Test
  void everyRowHasTheHeightOfItsLinesAndTheSheetIsFilled() {
    for (Told told : PAPERS) {
      for (LineSheet sheet : told.part().line()) {
        assertThat(sheet.rows()).as(sheet.title()).isNotEmpty();
        int top = 0;
        for (int i = 0; i < sheet.rows().size(); i++) {
          LineSheet.Set set = sheet.rows().get(i).set();
          assertThat(String.join(" ", set.place()))
              .isEqualTo(i == 0 ? place(sheet, 0) : below(place(sheet, i - 1), place(sheet, i)));
          assertThat(String.join(" ", set.todo()))
              .isEqualTo(String.join(" ", sheet.rows().get(i).todo()));
          int high =
              set.beside()
                  ? Math.max(set.what().size(), set.todo().size())
                  : set.what().size() + set.todo().size();
          int lines = Math.max(set.place().size(), high);
          assertThat(set.heightPx())
              .as("%s, %s: %s", told.name(), sheet.title(), sheet.rows().get(i))
              .isGreaterThanOrEqualTo(ROW_PX + LINE_PX * lines);
          assertThat(sheet.chart().levels().get(i).topPx()).isEqualTo(top);
          top += set.heightPx();
        }
        assertThat(top).as(sheet.title()).isEqualTo(sheet.chart().heightPx());
      }
    }
  }

  private static String place(LineSheet sheet, int row) {
    return sheet.rows().get(row).place();
  }

  /** A section is named in the first of the rows in it that have to name it. */
  private static String below(String above, String place) {
    int name = place.indexOf(" (");
    boolean named = name >= 0 && above.endsWith(place.substring(name));
    return named ? place.substring(0, name) : place;
  }

  @Test
  void sheetsFollowOneAnotherAndAreNamedOnce() {
    for (Told told : PAPERS) {
      double at = 0;
      Set<String> titles = new HashSet<>();
      for (LineSheet sheet : told.part().line()) {
        LineChart chart = sheet.chart();
        assertThat(chart.track().fromM()).as(sheet.title()).isEqualTo(at);
        at = chart.track().toM();
        assertThat(sheet.title()).startsWith("Line: ");
        assertThat(titles.add(sheet.title())).as(sheet.title()).isTrue();
        double last = chart.track().fromM();
        for (LineChart.Level level : chart.levels()) {
          assertThat(level.atM()).isGreaterThanOrEqualTo(last - 1e-6);
          assertThat(level.atM()).isLessThanOrEqualTo(at + 1e-6);
          last = level.atM();
        }
      }
      assertThat(at).isEqualTo(told.plan().assignment().path().lengthM());
    }
  }

  /** The points of a sheet are numbered from 1, on the drawing as in the rows. */
  @Test
  void brakingPointsHaveTheNumbersOfTheirRows() {
    int points = 0;
    for (Told told : PAPERS) {
      for (LineSheet sheet : told.part().line()) {
        List<String> numbers =
            sheet.rows().stream()
                .flatMap(r -> r.todo().stream())
                .filter(t -> t.startsWith("("))
                .map(t -> t.substring(1, t.indexOf(')')))
                .toList();
        assertThat(sheet.chart().points()).extracting(p -> p.number()).isEqualTo(numbers);
        points += numbers.size();
      }
      long begun = told.plan().told().sheets().stream().mapToLong(s -> s.begun().size()).sum();
      long drawn = told.part().line().stream().mapToLong(s -> s.chart().points().size()).sum();
      assertThat(drawn).as(told.name()).isEqualTo(begun);
    }
    assertThat(points).isGreaterThan(40);
  }

  /** An approach is a step away: its rows lead to its plate, or to the lower speeds. */
  @Test
  void instructionsLeadToTheirPage() {
    for (Told told : PAPERS) {
      Set<String> pages = new HashSet<>();
      told.part().plates().forEach(a -> pages.add(a.id()));
      told.part().lower().ifPresent(t -> pages.add(told.part().id() + "-lower"));
      assertThat(rows(told).stream().filter(r -> !r.todo().isEmpty()))
          .as(told.name())
          .allMatch(r -> pages.contains(r.link()));
      assertThat(rows(told).stream().filter(r -> !r.link().isEmpty()))
          .allMatch(r -> pages.contains(r.link()));
    }
  }
}
