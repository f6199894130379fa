package gradepost.app;

import static gradepost.app.Depot.NOON;
import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.store.Answer;
import gradepost.app.store.Progress;
import gradepost.render.Glyphs;
import gradepost.units.UnitStyle;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Property: where twelve cues and more stand in one mile and names are as long as they get, no text
 * of any paper stands upon another or is cut off, and the strip names everything.
 */
@Tag("long")
class DensestMileIT {
  @TempDir Path folder;

  static List<Arguments> papers() {
    return List.of(
        Arguments.of(UnitStyle.MILES, "A5 portrait"),
        Arguments.of(UnitStyle.METRIC, "A6 landscape"),
        Arguments.of(UnitStyle.MILES, "A6 portrait"),
        Arguments.of(UnitStyle.METRIC, "A5 landscape"));
  }

  @ParameterizedTest
  @MethodSource("papers")
  void nothingOverlapsAndNothingIsCut(UnitStyle units, String cards) throws Exception {
    Path pack = DensestMile.pack(folder.resolve("routes"), units, cards);
    Answer first =
        new Brief(Optional.empty(), Brief.Wish.PAPERS, Progress.SILENT)
            .of(List.of(pack), folder.resolve("papers"));
    assertThat(first.problems()).noneMatch(p -> p.contains(": error: "));
    Path notice = DensestMile.notice(folder.resolve("routes"), units);
    Answer second =
        new Depot(folder).reissue(NOON, List.of(pack), Optional.of(notice), true, false);
    assertThat(second.problems()).noneMatch(p -> p.contains("error: "));

    List<Path> pdfs = new ArrayList<>(first.written());
    pdfs.addAll(second.written());
    pdfs.removeIf(p -> !p.toString().endsWith(".pdf"));
    for (String kind :
        new String[] {
          "-car.pdf",
          "-reference.pdf",
          "-cards.pdf",
          "-to-cut.pdf",
          "-sign-off.pdf",
          "-keys.pdf",
          "-supplement.pdf",
          "-addendum.pdf",
          "-slips.pdf",
          "-affected.pdf"
        }) {
      assertThat(pdfs).as(kind).anyMatch(p -> p.toString().endsWith(kind));
    }
    for (Path pdf : pdfs) {
      Glyphs.apart(Files.readAllBytes(pdf));
      if (!pdf.toString().contains("-cards")) {
        Glyphs.legible(Files.readAllBytes(pdf));
      }
    }
    for (Path html : first.written()) {
      if (html.toString().endsWith("-car.html")) {
        theLineNamesEverything(Files.readString(html));
        everyActionIsOnItsChart(Files.readString(html));
      }
    }
  }

  private static void everyActionIsOnItsChart(String html) {
    Pattern ring = Pattern.compile("<circle[^>]*r=\"5\\.4\"[^>]*/>\\s*<text[^>]*>(\\d+)<");
    Pattern row = Pattern.compile("<tr class=\"row[^>]*><td class=\"number\"><b>(\\d+)</b>");
    int actions = 0;
    for (String sheet : html.split("<div class=\"page ", -1)) {
      if (sheet.startsWith("plate")) {
        List<String> told = all(row, sheet);
        List<String> drawn = new ArrayList<>(all(ring, sheet));
        assertThat(drawn).doesNotHaveDuplicates().containsAll(told);
        drawn.removeAll(told);
        assertThat(drawn)
            .as("only what comes before the first row")
            .allMatch(n -> told.isEmpty() || Integer.parseInt(n) < Integer.parseInt(told.get(0)));
        actions += told.size();
      }
    }
    assertThat(actions).isGreaterThan(10);
  }

  private static List<String> all(Pattern pattern, String text) {
    return pattern.matcher(text).results().map(m -> m.group(1)).toList();
  }

  private static void theLineNamesEverything(String html) {
    String[] sheets = html.split("<div class=\"page ", -1);
    String line =
        Arrays.stream(sheets)
            .filter(s -> s.startsWith("line\" id=\"p1-line"))
            .collect(Collectors.joining());
    for (String name : DensestMile.NAMED) {
      assertThat(line.replaceAll("<[^>]*>", " ")).contains(name);
    }
  }
}
