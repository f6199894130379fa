package gradepost.app.issue;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.Examples;
import gradepost.app.Changes;
import gradepost.app.store.Disk;
import gradepost.app.store.Paper;
import gradepost.briefing.Addendum;
import gradepost.briefing.CoverIssue;
import gradepost.briefing.Messages;
import gradepost.briefing.Table;
import gradepost.source.file.Input;
import gradepost.source.pack.PackFile;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Property: an emergency addendum of up to three restrictions is half a page, one of more is whole
 * pages that say so; neither loses anything that a driver must know.
 */
@Tag("slow")
class AddendumTest extends Changes {
  private static final double MM = 72 / 25.4;

  /** Two restrictions that shift most of what follows, and one that goes. */
  private static final String[] NOTICES = {
    "status: in force, from: 4m 20ch, to: 4m 40ch, lines: [Down Main], reference: T 26/201,"
        + " speed: 20 mph",
    "status: extended, from: 13m 20ch, to: 13m 04ch, lines: [Single], reference: T 26/104,"
        + " speed: 15 mph, boards: none, until: 2027-02-15 04:00",
    "status: in force, from: {section: Harbour, at: 1m 00ch}, to: {section: Harbour, at: 1m 10ch},"
        + " lines: [Down Harbour], reference: T 26/202, speed: 10 mph",
  };

  private static PackFile downOnly(PackFile pack) {
    List<Input> inputs = new ArrayList<>(pack.inputs());
    String text = new String(inputs.get(0).bytes(), StandardCharsets.UTF_8);
    int up = text.indexOf("  - direction: Up");
    int end = text.indexOf("formations:");
    text = text.substring(0, up) + text.substring(end).replace("[4-car, 8-car]", "[8-car]");
    // What the notices say stands already when it is printed.
    text = text.replaceFirst("\\n  issued: [-0-9: ]+", "\n  issued: 2026-11-25 12:00");
    text = text.replaceFirst("\\n  valid-from: [-0-9: ]+", "\n  valid-from: 2026-11-25 12:00");
    inputs.set(0, new Input(inputs.get(0).name(), text.getBytes(StandardCharsets.UTF_8)));
    return good(Disk.sources().pack(inputs));
  }

  /** Nine more that each stand alone: as many as a bad night may bring. */
  private static final String[] MORE = {
    standing("T 26/211", "2m 10ch", "2m 16ch", "Down Main"),
    standing("T 26/212", "2m 40ch", "2m 46ch", "Down Main"),
    standing("T 26/213", "3m 24ch", "3m 30ch", "Down Main"),
    standing("T 26/214", "3m 54ch", "3m 60ch", "Down Main"),
    standing("T 26/215", "4m 60ch", "4m 66ch", "Down Main"),
    standing("T 26/216", "5m 10ch", "5m 16ch", "Down Main"),
    standing("T 26/217", "13m 60ch", "13m 54ch", "Single"),
    standing("T 26/218", "12m 60ch", "12m 54ch", "Single"),
    standing("T 26/219", "12m 00ch", "11m 74ch", "Down Main"),
  };

  private static String standing(String reference, String from, String to, String line) {
    return "status: in force, reference: %s, from: %s, to: %s, lines: [%s], speed: 25 mph"
        .formatted(reference, from, to, line);
  }

  private record Made(List<String> approaches, Paper paper, String text) {}

  /** The addendum of an issue that takes in so many restrictions. */
  private Made made(int count) throws IOException {
    return made(Stream.concat(Stream.of(NOTICES), Stream.of(MORE)).limit(count).toList());
  }

  private Made made(List<String> notices) throws IOException {
    PackFile before = downOnly(valley());
    PackFile after = with(before, notices.toArray(new String[0]));
    Differences differences =
        new DifferenceFinder(Messages.english())
            .of(
                Path.of("pack-thrumble.yaml"),
                after,
                Optional.of(new LastIssue(before, List.of())));
    assertThat(differences.failures()).isEmpty();
    Paper addendum =
        new IssuePapers(new Layout(Optional.empty()), true, Concern.NOBODY)
            .of(differences, name -> {}).papers().stream()
                .filter(p -> p.name().endsWith("-addendum.pdf"))
                .findFirst()
                .orElseThrow();
    List<String> approaches =
        differences.papers().get(0).comparison().approaches().stream()
            .filter(a -> !a.renumberedOnly() && a.before().isPresent())
            .map(a -> a.before().orElseThrow().target().name())
            .toList();
    try (PDDocument pdf = Loader.loadPDF(addendum.bytes())) {
      String text = new PDFTextStripper().getText(pdf).replaceAll("\\s+", " ");
      return new Made(approaches, addendum, text);
    }
  }

  @Test
  void ofThreeIsHalfAPage() throws IOException {
    for (int count = Examples.of(NOTICES.length, 1); count <= NOTICES.length; count++) {
      Made made = made(count);
      try (PDDocument pdf = Loader.loadPDF(made.paper().bytes())) {
        assertThat(pdf.getNumberOfPages()).isEqualTo(1);
        assertThat(lowestMm(pdf)).as(count + " restrictions").isLessThan(297 / 2.0 - 3);
      }
      assertThat(made.text())
          .contains("T 26/201", "4m 20ch to 4m 40ch", "20 mph", "Do not use the figures")
          .contains("Keep this half sheet with the pack")
          .contains(made.approaches());
    }
  }

  /** Who still drives by the old plan may be faster there than the new one. */
  @Test
  void aRestrictionThatTheNewPlanMeetsWithoutABrakeHasAPointToo() throws IOException {
    assertThat(made(List.of(standing("T 26/221", "3m 12ch", "3m 18ch", "Down Main"))).text())
        .contains(
            "T 26/221, not in your pack: the new plan does not brake."
                + " If you are faster than 25 mph, brake at 75 yd to board, on any rail.");
  }

  /** Cut at the middle it would lose rows: it says that it is whole, and all is on it. */
  @Test
  void ofMoreIsWholeSheets() throws IOException {
    for (int count : Examples.of(0, 1) == 1 ? new int[] {4, 12} : new int[] {12}) {
      Made made = made(count);
      int pages;
      try (PDDocument pdf = Loader.loadPDF(made.paper().bytes())) {
        pages = pdf.getNumberOfPages();
      }
      assertThat(pages).as(count + " restrictions").isEqualTo(count > 4 ? 2 : 1);
      assertThat(made.text())
          .contains("Restrictions on this addendum: " + count + ". Do not cut it.")
          .doesNotContain("half sheet")
          .contains(made.approaches());
      Stream.concat(Stream.of(NOTICES), Stream.of(MORE))
          .limit(count)
          .map(n -> n.replaceFirst(".*reference: (T 26/\\d+),.*", "$1"))
          .forEach(reference -> assertThat(made.text()).contains(reference));
    }
  }

  /** Three, but of many words: cut at the middle it would lose the last of them. */
  @Test
  void ofThreeThatDoNotFindRoomIsAWholeSheet() throws IOException {
    List<String> wordy =
        Stream.of(MORE[2], MORE[4], MORE[7])
            .map(n -> n.replace("T 26/", "Week 48 of 2026 second edition track section item "))
            .toList();
    Made made = made(wordy);
    assertThat(made.text())
        .contains("Restrictions on this addendum: 3. Do not cut it.", "item 213", "item 218")
        .doesNotContain("half sheet");
    try (PDDocument pdf = Loader.loadPDF(made.paper().bytes())) {
      assertThat(pdf.getNumberOfPages()).isEqualTo(1);
      assertThat(lowestMm(pdf)).isGreaterThan(297 / 2.0 - 15);
    }
  }

  /** More than one page: each row whole on one of them, under the headings, and pages counted. */
  @Test
  void whatOnePageDoesNotHoldGoesOnOnTheNext() throws IOException {
    List<Table.Row> rows = new ArrayList<>();
    for (int i = 1; i <= 40; i++) {
      String reference = "T 26/%03d".formatted(i);
      String old = reference + " stood here before,\n3m 24ch to 3m 30ch,\n25 mph";
      rows.add(Table.Row.of(reference, "3m 24ch to 3m 30ch", "25 mph", "since then", "none", old));
    }
    Messages messages = Messages.english();
    List<Table.Column> columns =
        Stream.of(messages.text("table.stands.columns").split("\\|"))
            .map(heading -> new Table.Column(heading.replace("@", ""), "text"))
            .toList();
    CoverIssue issue = Issue.of(valley(), Task.of(valley()).get(0).assignment());
    Addendum addendum =
        new Addendum(
            "en-GB",
            "addendum",
            "addendum",
            "Issue 3",
            issue,
            "Thrumble Valley",
            "printed",
            List.of(new Table("stands", "stands", "In force", "", columns, rows, "NONE")),
            "",
            List.of("a note"),
            messages.text("addendum.whole", 40));
    Paper paper = new Layout(Optional.empty()).pdf("long", addendum);
    try (PDDocument pdf = Loader.loadPDF(paper.bytes())) {
      assertThat(pdf.getNumberOfPages()).isGreaterThan(1);
      PDFTextStripper stripper = new PDFTextStripper();
      List<String> seen = new ArrayList<>();
      for (int page = 1; page <= pdf.getNumberOfPages(); page++) {
        stripper.setStartPage(page);
        stripper.setEndPage(page);
        String text = stripper.getText(pdf).replaceAll("\\s+", " ");
        assertThat(text).contains("Emergency addendum");
        // The words under the table may stand on a last page of their own.
        assertThat(text.contains("Notice Where Speed")).isEqualTo(text.contains("T 26/"));
        Matcher old = Pattern.compile("(T 26/\\d+) stood here before, .*? 25 mph").matcher(text);
        while (old.find()) {
          seen.add(old.group(1));
        }
      }
      assertThat(seen).isEqualTo(rows.stream().map(r -> r.cells().get(0)).toList());
    }
  }

  /** Where the lowest text lies that is not the foot of the page, from the upper edge. */
  static double lowestMm(PDDocument pdf) throws IOException {
    List<Double> lows = new ArrayList<>();
    PDFTextStripper stripper =
        new PDFTextStripper() {
          @Override
          protected void writeString(String text, List<TextPosition> glyphs) {
            glyphs.forEach(g -> lows.add(g.getYDirAdj() / MM));
          }
        };
    stripper.writeText(pdf, new StringWriter());
    return lows.stream().filter(mm -> mm < 280).mapToDouble(mm -> mm).max().orElseThrow();
  }
}
