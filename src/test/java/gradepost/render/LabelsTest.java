package gradepost.render;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.CoverIssue;
import gradepost.briefing.Labels;
import gradepost.briefing.Messages;
import gradepost.briefing.reissue.LabelWriter;
import gradepost.briefing.reissue.LabelWriter.Addressed;
import gradepost.briefing.reissue.LabelWriter.Given;
import gradepost.pack.IssueDetails;
import java.io.ByteArrayOutputStream;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Property: every label holds its own words, and none runs into its neighbour. */
class LabelsTest {
  private static final LocalDateTime NOON = LocalDateTime.of(2026, 11, 25, 12, 0);
  private static final Messages MESSAGES = Messages.english();
  private static final double POINTS_A_MM = 72 / 25.4;

  private static CoverIssue issue() {
    return new CoverIssue(
        "valley",
        new IssueDetails(
            4,
            NOON,
            NOON,
            NOON.plusDays(30),
            Optional.empty(),
            NOON,
            "",
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            List.of()),
        "ab".repeat(32),
        List.of());
  }

  private static List<Addressed> people() {
    List<Addressed> people = new ArrayList<>();
    people.add(new Addressed("A Brannock", "North", List.of(new Given("valley/4", List.of("12")))));
    people.add(new Addressed("mess room", "", List.of(new Given("valley/4", List.of()))));
    List<Given> many = new ArrayList<>();
    for (int i = 1; i <= 20; i++) {
      many.add(new Given("branch-line-" + i + "/3", List.of("1", "2", "3")));
    }
    people.add(new Addressed("WILHELMINA WAMMERSWALD-MCMAMMOTH", "WWWWWWWWWW DEPOT", many));
    people.add(new Addressed("M".repeat(200), "M".repeat(80), many.subList(0, 1)));
    for (int i = 0; i < 30; i++) {
      people.add(
          new Addressed("Driver " + i, "South", List.of(new Given("coast/9", List.of("7")))));
    }
    return people;
  }

  @ParameterizedTest
  @CsvSource({"3, 8", "1, 1", "4, 12", "2, 7"})
  void eachLabelHoldsItsOwnWords(int across, int down) throws Exception {
    Labels.Grid grid = new Labels.Grid(across, down);
    Labels labels = new LabelWriter(MESSAGES, grid).of(issue(), people(), 2);
    ByteArrayOutputStream pdf = new ByteArrayOutputStream();
    new Renderer(TemplateSource.bundled(), MESSAGES).pdf(labels, pdf);
    Map<Integer, StringBuilder> read = new TreeMap<>();
    for (Glyphs.Glyph glyph : Glyphs.of(pdf.toByteArray())) {
      double x = glyph.x() / POINTS_A_MM;
      double y = glyph.y() / POINTS_A_MM;
      int column = (int) (x / grid.widthMm());
      int row = (int) (y / grid.heightMm());
      assertThat(x + glyph.w() / POINTS_A_MM)
          .as(glyph.toString())
          .isLessThan((column + 1) * grid.widthMm());
      assertThat(y + glyph.h() / POINTS_A_MM)
          .as(glyph.toString())
          .isLessThan((row + 1) * grid.heightMm());
      int place = ((glyph.page() - 1) * down + row) * across + column;
      read.computeIfAbsent(place, k -> new StringBuilder()).append(glyph.letter());
    }
    List<Labels.Label> all = labels.sheets().stream().flatMap(List::stream).toList();
    for (int i = 0; i < all.size(); i++) {
      Labels.Label label = all.get(i);
      assertThat(read.getOrDefault(i, new StringBuilder()).toString().replace(" ", ""))
          .isEqualTo(
              (String.join("", label.name()) + label.under() + String.join("", label.lines()))
                  .replace(" ", ""));
    }
    assertThat(all.get(0)).isEqualTo(Labels.Label.FREE);
    assertThat(all.get(2).lines()).containsExactly("valley/4, for copy 12");
    assertThat(all.get(3).lines()).containsExactly("valley/4, slip only");
    assertThat(
            all.stream()
                .filter(l -> String.join("", l.name()).startsWith("WIL"))
                .flatMap(l -> l.lines().stream())
                .collect(Collectors.joining(" ")))
        .isEqualTo(
            IntStream.rangeClosed(1, 20)
                .mapToObj("branch-line-%d/3, for copies 1, 2, 3"::formatted)
                .collect(Collectors.joining(" ")));
  }
}
