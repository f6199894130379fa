package gradepost.app.issue;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.store.Archive;
import gradepost.app.store.OfficePaper;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Entry.Kept;
import gradepost.reissue.register.Leavers.Held;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.Register.By;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.font.PDType1Font;
import org.apache.pdfbox.pdmodel.font.Standard14Fonts.FontName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Property: what names people who are forgotten leaves the archive, and nothing else does. */
class NamedPapersTest {
  private static final LocalDateTime NOON = LocalDateTime.of(2026, 3, 2, 12, 0);
  private static final By CLERK = new By("a clerk", NOON);

  @TempDir Path folder;

  private static byte[] pdf(String... lines) throws Exception {
    try (PDDocument document = new PDDocument()) {
      PDPage page = new PDPage();
      document.addPage(page);
      try (PDPageContentStream text = new PDPageContentStream(document, page)) {
        text.beginText();
        text.setFont(new PDType1Font(FontName.HELVETICA), 12);
        for (String line : lines) {
          text.newLineAtOffset(0, 20);
          text.showText(line);
        }
        text.endText();
      }
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      document.save(out);
      return out.toByteArray();
    }
  }

  private static Entry issue(int number, Kept... papers) {
    return new Entry(
        "valley",
        number,
        "%064x".formatted(number),
        "a version",
        NOON.plusDays(number),
        NOON.plusDays(number),
        NOON.plusDays(30),
        number == 1 ? Optional.empty() : Optional.of(number - 1),
        number == 1 ? "" : "digest " + number,
        true,
        List.of(),
        List.of(),
        List.of(papers),
        List.of());
  }

  private static Held held(String person) {
    return new Held(
        person, LocalDate.of(2026, 3, 1), "valley", false, "a record", "sign_off_entry", 1);
  }

  @Test
  void slipsAndListsOfEarlierIssuesThatNameThemGo() throws Exception {
    Archive archive = Archive.in(folder.resolve("archive"));
    String slips = archive.keep(pdf("M Ash", "R Elm"));
    String others = archive.keep(pdf("R Elm"));
    String list = archive.keep(pdf("Tell: M", "Ash"));
    String last = archive.keep(pdf("M Ash, again"));
    String paper = archive.keep("M Ash".getBytes(StandardCharsets.UTF_8));
    Entry one = issue(1, new Kept("out.pdf", paper));
    Entry two =
        issue(
            2,
            new Kept("out.pdf", paper),
            new Kept("out-slips.pdf", slips),
            new Kept("back-slips.pdf", others),
            new Kept("out-affected.pdf", list));
    Entry three = issue(3, new Kept("out-slips.pdf", last));
    try (Register register = Register.open("jdbc:sqlite:" + folder.resolve("register.db"))) {
      register.takeIn(CLERK, one);
      register.issue(CLERK, two);
      register.issue(CLERK, three);
      NamedPapers named = new NamedPapers(archive, register, List.of(held("M Ash")));
      assertThat(named.told(true))
          .containsExactly(
              "to be removed from the archive, as it names them: out-slips.pdf of valley/2",
              "to be removed from the archive, as it names them: out-affected.pdf of valley/2",
              "out-slips.pdf still names them, as valley/3 is the latest issue; delete it when all"
                  + " are briefed: "
                  + archive.place(last),
              "copies of these papers in folders, on paper and in backups still name them: destroy"
                  + " those yourself");
      assertThat(archive.digests()).hasSize(5);
      named.remove();
      assertThat(archive.digests()).containsExactlyInAnyOrder(others, last, paper);
      assertThat(named.told(false))
          .startsWith("removed from the archive, as it named them: out-slips.pdf of valley/2");
      // What was removed is not missed; any other paper is.
      assertThat(OfficePaper.wanted(two, archive))
          .extracting(Kept::name)
          .containsExactly("out.pdf", "back-slips.pdf");
      assertThat(new NamedPapers(archive, register, List.of(held("N Oak"))).told(false)).isEmpty();
      assertThat(new NamedPapers(archive, register, List.of()).told(false)).isEmpty();
    }
  }
}
