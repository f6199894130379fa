package gradepost.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Property: what has ended leaves the papers, and what it covered is never without a sheet. */
@Tag("slow")
class RestrictionsEndTest {
  @TempDir Path folder;
  private Clerk clerk;

  @BeforeEach
  void office() throws Exception {
    clerk = new Clerk(folder).at("2026-11-29T09:00");
  }

  private static String text(Path pdf) throws Exception {
    try (var document = Loader.loadPDF(pdf.toFile())) {
      return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
    }
  }

  private Path issue(int number, String paper) {
    return folder.resolve("papers/0000-issue-%d/0000-out-3-car%s".formatted(number, paper));
  }

  /** Thirty lies over forty until tomorrow morning; then forty stands alone for weeks. */
  @Test
  void aRestrictionThatIsCoveredKeepsAPaperOfItsOwn() throws Exception {
    clerk.inForce(Clerk.entry("T 12", 900, 1400, 40, "2026-11-26 04:00", "2026-12-24 04:00"));
    clerk.enter();
    String over = Clerk.entry("T 15", 800, 1100, 30, "2026-11-28 04:00", "2026-11-30 04:00");
    String said = clerk.notice(0, "over", over);
    assertThat(said)
        .contains("sheet T 12: covered for a time; its sheet is in the paper called “from 2026")
        .doesNotContain("nothing left to brake for here");

    Path later = issue(2, "-from-2026-11-30-04-00.pdf");
    assertThat(later).exists();
    assertThat(text(issue(2, ".pdf")))
        .contains("DRAFT 2 · valid 2026-11-29 09:00 to 2026-11-30 04:00")
        .contains("put this paper away", "“from 2026-11-30 04:00”", "it has the approach to T 12");
    assertThat(text(later))
        .contains("Use it only From", "T 15 has ended. Brake for T 12 by this paper.")
        .contains("3-car, from 2026-11-30 04:00");

    clerk.at("2026-11-30T09:00");
    assertThat(clerk.office(0, "reissue", clerk.routes.toString(), "--out", clerk.papers()))
        .contains("0000: the papers still show what has ended: T 15; to take it out: reissue");
    said =
        clerk.office(
            0,
            "reissue",
            clerk.routes.toString(),
            "--as-of",
            "2026-11-30",
            "--out",
            clerk.papers());
    assertThat(said)
        .contains("0000: issue 3 takes the place of 2", "T 15: 30 km/h, ended 2026-11-30 04:00")
        .contains("sheet T 12: sheet not in the last issue");
    assertThat(issue(3, "-from-2026-11-30-04-00.pdf")).doesNotExist();
    assertThat(text(issue(3, ".pdf")))
        .contains("Temporary restrictions: 40 km/h, 0.90 km to 1.40 km, until 2026-12-24 04:00")
        .doesNotContain("30 km/h, 0.80 km", "put this paper away");
  }
}
