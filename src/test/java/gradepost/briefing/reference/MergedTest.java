package gradepost.briefing.reference;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.Fact;
import gradepost.briefing.Messages;
import gradepost.briefing.Table;
import gradepost.briefing.reference.Merged.Differences;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.SortedMap;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Property: from what is merged, whoever knows his paper reads what his paper said, and nothing
 * else; what is the same on all papers stands once and without a name.
 */
class MergedTest {
  private static final List<Scope.Paper> PAPERS =
      List.of(
          new Scope.Paper("Down", "4-car", ""),
          new Scope.Paper("Down", "8-car", ""),
          new Scope.Paper("Up", "4-car", ""),
          new Scope.Paper("Up", "8-car", ""));

  private static final Scope SCOPE = new Scope(Messages.english(), PAPERS);
  private static final Merged MERGED = new Merged(SCOPE);

  /** What a reader of one paper reads of a text; nothing where it is for other papers. */
  private static Optional<String> read(String text, int paper) {
    int colon = text.indexOf(": ");
    if (colon < 0) {
      return Optional.of(text);
    }
    Scope.Paper own = PAPERS.get(paper);
    List<String> mine =
        List.of(own.direction(), own.formation(), own.direction() + " · " + own.formation());
    return Arrays.stream(text.substring(0, colon).split(" / ")).anyMatch(mine::contains)
        ? Optional.of(text.substring(colon + 2))
        : Optional.empty();
  }

  private static <T> SortedMap<Integer, T> all(List<T> of) {
    SortedMap<Integer, T> out = new TreeMap<>();
    for (int i = 0; i < of.size(); i++) {
      out.put(i, of.get(i));
    }
    return out;
  }

  private static String word(Random random) {
    return String.valueOf((char) ('a' + random.nextInt(3)));
  }

  @Test
  void ofTextsEachPaperReadsItsOwn() {
    Random random = new Random(3);
    for (int round = 0; round < 300; round++) {
      List<List<String>> papers = new ArrayList<>();
      for (int i = 0; i < PAPERS.size(); i++) {
        papers.add(random.ints(3, 0, 5).distinct().mapToObj(n -> "text " + n).toList());
      }
      List<String> merged = MERGED.lines(all(papers));
      for (int i = 0; i < PAPERS.size(); i++) {
        int paper = i;
        assertThat(merged.stream().flatMap(t -> read(t, paper).stream()))
            .containsExactlyInAnyOrderElementsOf(papers.get(i));
      }
      assertThat(merged.stream().map(t -> t.substring(t.indexOf("text")))).doesNotHaveDuplicates();
    }
  }

  @ParameterizedTest
  @EnumSource(Differences.class)
  void ofATableEachPaperReadsItsOwn(Differences differences) {
    Random random = new Random(5);
    Table.Row same = Table.Row.of("the same", "a", "x\ny");
    for (int round = 0; round < 300; round++) {
      List<Table> papers = new ArrayList<>();
      for (int i = 0; i < PAPERS.size(); i++) {
        List<Table.Row> rows = new ArrayList<>(List.of(same));
        for (int k = 0; k < 4; k++) {
          if (random.nextInt(8) > 0) {
            String lines = random.nextInt(3) == 0 ? "x" : "x\n" + word(random);
            rows.add(Table.Row.of("row " + k / 2, word(random), lines));
          }
        }
        papers.add(table(rows));
      }
      List<Table> merged = MERGED.tables(all(papers), 1, differences);
      assertThat(merged).hasSize(1);
      Table one = merged.get(0);
      for (int i = 0; i < PAPERS.size(); i++) {
        int paper = i;
        assertThat(one.rows().stream().flatMap(r -> row(r, paper).stream()))
            .as("%s of %s", papers, one)
            .containsExactlyInAnyOrderElementsOf(
                papers.get(i).rows().stream().map(Table.Row::cells).toList());
      }
      assertThat(one.rows())
          .filteredOn(r -> r.cells().get(0).contains("the same"))
          .containsExactly(same);
    }
  }

  /** A row is for a paper if its first cell is. */
  private static Optional<List<String>> row(Table.Row row, int paper) {
    return read(row.cells().get(0), paper)
        .map(
            first -> {
              List<String> cells = new ArrayList<>(List.of(first));
              row.cells().stream().skip(1).forEach(c -> cells.add(lines(c, paper)));
              return cells;
            });
  }

  private static String lines(String cell, int paper) {
    return String.join(
        "\n", Arrays.stream(cell.split("\n")).flatMap(l -> read(l, paper).stream()).toList());
  }

  private static Table table(List<Table.Row> rows) {
    List<Table.Column> columns =
        List.of(
            new Table.Column("a", "text"),
            new Table.Column("b", "text"),
            new Table.Column("c", "place"));
    return new Table("p1-t", "t", "A table", "", columns, rows, "NONE");
  }

  @Test
  void papersAreCalledByWhatTheyHaveInCommon() {
    List<Table> differ =
        List.of(
            table(List.of(Table.Row.of("1", "x", "same"))),
            table(List.of(Table.Row.of("1", "y", "same"))),
            table(List.of(Table.Row.of("1", "x", "same"))),
            table(List.of(Table.Row.of("1", "y", "same"))));
    assertThat(MERGED.tables(all(differ), 1, Differences.IN_CELLS).get(0).rows())
        .containsExactly(Table.Row.of("1", "4-car: x\n8-car: y", "same"));
    assertThat(MERGED.tables(all(differ), 1, Differences.IN_ROWS).get(0).rows())
        .containsExactly(
            Table.Row.of("4-car: 1", "x", "same"), Table.Row.of("8-car: 1", "y", "same"));
    assertThat(MERGED.lines(all(List.of(List.of("x"), List.of("x"), List.of(), List.of("x")))))
        .containsExactly("Down · 4-car / Down · 8-car / Up · 8-car: x");
    assertThat(MERGED.lines(all(List.of(List.of("x"), List.of("x"), List.of(), List.of()))))
        .containsExactly("Down: x");
    assertThat(MERGED.facts(all(List.of(List.of(new Fact("a", "1")), List.of(new Fact("a", "2"))))))
        .containsExactly(new Fact("a", "4-car: 1; 8-car: 2"));
  }

  /** What is told of a run with a brake short only is never read as of an ordinary one. */
  @Test
  void anEditionIsNamed() {
    Scope scope =
        new Scope(
            Messages.english(),
            List.of(
                new Scope.Paper("Down", "4-car", ""),
                new Scope.Paper("Down", "4-car", "EP out of use"),
                new Scope.Paper("Down", "8-car", "")));
    Merged merged = new Merged(scope);
    Fact most = new Fact("At most", "40 mph");
    assertThat(merged.facts(all(List.of(List.of(), List.of(most), List.of()))))
        .containsExactly(new Fact("At most", "EP out of use: 40 mph"));
    assertThat(merged.legend(all(List.of(List.of(), List.of(most), List.of()))))
        .containsExactly(most);
    assertThat(merged.lines(all(List.of(List.of("x"), List.of("x"), List.of()))))
        .containsExactly("4-car: x");
    assertThat(merged.lines(all(List.of(List.of("x"), List.of(), List.of("x")))))
        .containsExactly("ordinary run: x");
    assertThat(merged.lines(all(List.of(List.of("x"), List.of(), List.of()))))
        .containsExactly("4-car, ordinary run: x");
  }

  /** A paper that has nothing where another has rows is not left without its word. */
  @Test
  void anEmptyTableIsSaid() {
    List<Table> some =
        List.of(
            table(List.of(Table.Row.of("1", "x", "y"))),
            table(List.of(Table.Row.of("1", "x", "y"))),
            table(List.of()),
            table(List.of()));
    Table merged = MERGED.tables(all(some), 1, Differences.IN_CELLS).get(0);
    assertThat(merged.rows()).containsExactly(Table.Row.of("Down: 1", "x", "y"));
    assertThat(merged.note()).isEqualTo("Up: NONE");
  }
}
