package gradepost.app.issue;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.Changes;
import gradepost.app.store.Disk;
import gradepost.app.store.Paper;
import gradepost.briefing.Messages;
import gradepost.source.file.Input;
import gradepost.source.pack.Amendment;
import gradepost.source.pack.PackFile;
import java.io.IOException;
import java.io.StringWriter;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Property: no addendum can be read as in force before its hour. What changes later has the row
 * until then and the row from then, under the hour in the largest type.
 */
@Tag("slow")
class AddendumHoursTest extends Changes {
  private static final LocalDateTime PRINTED = LocalDateTime.of(2026, 11, 28, 5, 54);
  private static final LocalDateTime NEXT_WEEK = LocalDateTime.of(2026, 12, 5, 4, 0);
  private PackFile before;

  /** A line on which one restriction stands. */
  @BeforeEach
  void standing() throws IOException {
    before = with(pack(packs.get(0)), notice("in force", "30 km/h", ""));
  }

  private static String notice(String status, String speed, String more) {
    return "status: %s, from: 0.900 km, to: 1.100 km, directions: Out, reference: T 1, speed: %s%s"
        .formatted(status, speed, more.isEmpty() ? "" : ", " + more);
  }

  private static PackFile issued(PackFile pack, LocalDateTime validFrom) {
    List<Input> inputs = new ArrayList<>(pack.inputs());
    Input own = inputs.get(0);
    inputs.set(
        0,
        new Input(
            own.name(),
            Amendment.issue(
                own.bytes(), 2, PRINTED, validFrom, PRINTED, "1", Optional.of("a checker"))));
    return good(Disk.sources().pack(inputs));
  }

  private static Differences differences(PackFile before, PackFile after) throws IOException {
    return new DifferenceFinder(Messages.english())
        .of(packName(), after, Optional.of(new LastIssue(before, List.of())));
  }

  private static java.nio.file.Path packName() {
    return java.nio.file.Path.of("0000.yaml");
  }

  /** All papers of the reissue, in words, by the end of their names. */
  private static String text(PackFile before, PackFile after, String paper) throws IOException {
    try (PDDocument pdf = Loader.loadPDF(paper(before, after, paper).bytes())) {
      return new PDFTextStripper().getText(pdf).replaceAll("\\s+", " ");
    }
  }

  private static Paper paper(PackFile before, PackFile after, String paper) throws IOException {
    Differences differences = differences(before, after);
    assertThat(differences.failures()).isEmpty();
    return new IssuePapers(new Layout(Optional.empty()), true, Concern.NOBODY)
        .of(differences, name -> {}).all().stream()
            .filter(p -> p.name().endsWith(paper))
            .findFirst()
            .orElseThrow();
  }

  @Test
  void anEasingToComeHasTheRowUntilThenAndTheRowFromThen() throws IOException {
    PackFile after = issued(with(before, notice("eased", "45 km/h", "")), NEXT_WEEK);
    assertThat(text(before, after, "-addendum.pdf"))
        .contains("In force from 2026-12-05 04:00")
        .contains("T 1 until 2026-12-05 04:00 0.90 km to 1.10 km 30 km/h")
        .contains(
            "T 1 from 2026-12-05 04:00, until further notice 0.90 km to 1.10 km 45 km/h PAPER ONLY")
        .contains("From 2026-12-05 04:00, not before:")
        .doesNotContain("2026-11-24 04:00, until further notice", "from now");
    assertThat(text(before, after, "-slips.pdf"))
        .contains("was 30 km/h, 0.90 km to 1.10 km; 45 km/h from 2026-12-05 04:00 until further");
    assertThat(text(before, after, "-supplement.pdf"))
        .contains("Do not change any sheet before 2026-12-05 04:00. Then put these sheets");
  }

  @Test
  void theHourIsInTheLargestType() throws IOException {
    PackFile after = issued(with(before, notice("eased", "45 km/h", "")), NEXT_WEEK);
    TreeMap<Float, String> sizes = new TreeMap<>();
    try (PDDocument pdf = Loader.loadPDF(paper(before, after, "-addendum.pdf").bytes())) {
      PDFTextStripper stripper =
          new PDFTextStripper() {
            @Override
            protected void writeString(String text, List<TextPosition> glyphs) {
              sizes.merge(glyphs.get(0).getFontSizeInPt(), text.strip(), (a, b) -> a + " " + b);
            }
          };
      stripper.writeText(pdf, new StringWriter());
    }
    assertThat(sizes.lastEntry().getValue()).isEqualTo("In force from 2026-12-05 04:00");
    assertThat(sizes.lastKey()).isGreaterThanOrEqualTo(19);
  }

  @Test
  void afterItsHourAnEasingHasTheRowThatItReplaced() throws IOException {
    PackFile after =
        issued(with(before, notice("eased", "45 km/h", "changed-from: 2026-11-27 04:00")), PRINTED);
    assertThat(text(before, after, "-addendum.pdf"))
        .contains("In force from 2026-11-27 04:00")
        .contains("45 km/h 2026-11-27 04:00, further notice", "T 1, 0.90 km to 1.10 km, 30")
        .doesNotContain("not before:");
  }

  /** The notice's own hour comes before that of the issue. */
  @Test
  void theHourOfTheNoticeWins() throws IOException {
    PackFile after =
        issued(
            with(before, notice("eased", "45 km/h", "changed-from: 2026-12-02 04:00")), NEXT_WEEK);
    assertThat(text(before, after, "-addendum.pdf"))
        .contains("In force from 2026-12-02 04:00", "T 1 until 2026-12-02 04:00")
        .doesNotContain("In force from 2026-12-05");
  }

  @Test
  void aWithdrawalToComeLeavesTheRestrictionUntilThen() throws IOException {
    PackFile after = issued(with(before, notice("withdrawn", "30 km/h", "")), NEXT_WEEK);
    assertThat(text(before, after, "-addendum.pdf"))
        .contains("In force from 2026-12-05 04:00")
        .contains("T 1 until 2026-12-05 04:00 0.90 km to 1.10 km 30 km/h")
        .contains("T 1 from 2026-12-05 04:00 0.90 km to 1.10 km withdrawn");
  }

  /** No hours lie between the old end and the extension, however late the issue is valid. */
  @Test
  void anExtensionTakesOverWhereTheOldEndIs() throws IOException {
    PackFile ends =
        with(pack(packs.get(0)), notice("in force", "30 km/h", "until: 2026-12-01 04:00"));
    PackFile after =
        issued(with(ends, notice("extended", "30 km/h", "until: 2027-01-15 04:00")), NEXT_WEEK);
    assertThat(text(ends, after, "-addendum.pdf"))
        .contains("In force from 2026-12-01 04:00")
        .contains("T 1 until 2026-12-01 04:00")
        .contains("T 1 from 2026-12-01 04:00, until 2027-01-15 04:00");
  }

  @Test
  void aRestrictionToBeImposedSaysThatNoneStandsUntilThen() throws IOException {
    PackFile bare = pack(packs.get(0));
    String planned = notice("planned", "30 km/h", "").replace("T 1", "T 2");
    PackFile after =
        issued(
            with(bare, planned + ", until: 2027-01-15 04:00", planned("T 3", "2026-12-03 22:00")),
            PRINTED);
    assertThat(text(bare, after, "-addendum.pdf"))
        .contains("In force from 2026-11-24 04:00", "T 2 0.90 km to 1.10 km 30 km/h")
        .contains("In force from 2026-12-03 22:00")
        .contains("T 3 until 2026-12-03 22:00 2.00 km to 2.10 km no restriction under this notice")
        .contains("T 3 from 2026-12-03 22:00, until further notice 2.00 km to 2.10 km 25 km/h")
        .contains("Each applies from the hour of its notice above, not before:");
  }

  private static String planned(String reference, String imposed) {
    return "status: planned, from: 2.000 km, to: 2.100 km, directions: Out, reference: %s,"
            .formatted(reference)
        + " speed: 25 km/h, imposed: "
        + imposed;
  }

  /** What says that it may be cut at the middle has nothing below it. */
  @Test
  void threeToComeAreHalfAPageOrSayThatTheyAreNot() throws IOException {
    PackFile bare = pack(packs.get(0));
    int half = 0;
    for (int count = 1; count <= 3; count++) {
      String[] all = new String[count];
      for (int i = 0; i < count; i++) {
        all[i] =
            "status: planned, from: 2.%d00 km, to: 2.%d50 km, directions: Out, reference: T 26/10%d,"
                    .formatted(i, i, i)
                + " speed: 25 km/h, imposed: 2026-12-0"
                + (i + 1)
                + " 22:00";
      }
      PackFile after = issued(with(bare, all), PRINTED);
      try (PDDocument pdf = Loader.loadPDF(paper(bare, after, "-addendum.pdf").bytes())) {
        if (new PDFTextStripper().getText(pdf).contains("Keep this half sheet")) {
          half++;
          assertThat(AddendumTest.lowestMm(pdf)).isLessThan(297 / 2.0 - 3);
        }
      }
    }
    assertThat(half).isBetween(1, 2);
  }

  /** Its trains would be told the higher speed while the lower one stands. */
  @Test
  void anIssueThatIsValidBeforeTheChangeIsRefused() throws IOException {
    for (String status : List.of("eased", "withdrawn")) {
      PackFile after =
          issued(
              with(before, notice(status, "45 km/h", "changed-from: 2026-12-05 04:00")), PRINTED);
      assertThat(differences(before, after).failures())
          .anyMatch(
              f ->
                  f.endsWith(
                      "T 1 changes only from 2026-12-05 04:00, but the pack is valid from"
                          + " 2026-11-28 05:54; allowed: a pack valid from that hour or"
                          + " later\n  Maybe reissue --valid-from '2026-12-05 04:00'"));
      PackFile then =
          issued(
              with(before, notice(status, "45 km/h", "changed-from: 2026-12-05 04:00")), NEXT_WEEK);
      assertThat(differences(before, then).failures()).isEmpty();
    }
  }
}
