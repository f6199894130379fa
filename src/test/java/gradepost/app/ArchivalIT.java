package gradepost.app;

import static gradepost.app.Depot.NOON;
import static org.assertj.core.api.Assertions.assertThat;

import gradepost.Examples;
import gradepost.app.store.Answer;
import gradepost.app.store.Progress;
import gradepost.pack.PaperKind;
import gradepost.render.Glyphs;
import gradepost.render.PdfTest;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.verapdf.pdfa.flavours.PDFAFlavour;

/**
 * Validation by veraPDF: every kind of paper is PDF/A-2a and PDF/UA-1; sheets to cut PDF/A-2b.
 * Property: every text has the size that is promised and stands clear of all others. In an ordinary
 * run of one paper of a line, and one of each kind.
 */
class ArchivalIT {
  @TempDir Path folder;

  /**
   * @param elsewhere kinds that another test judges, in an ordinary run
   */
  private static void allComply(List<Path> written, Set<String> elsewhere, String... kinds)
      throws Exception {
    List<Path> pdfs = written.stream().filter(p -> p.toString().endsWith(".pdf")).toList();
    for (String kind : kinds) {
      assertThat(pdfs).as(kind).anyMatch(p -> p.getFileName().toString().endsWith(kind));
    }
    int papers = 0;
    Set<String> judged = new HashSet<>();
    for (Path pdf : pdfs) {
      String name = pdf.getFileName().toString();
      if (name.endsWith("-car.pdf")) {
        PdfTest.roadIsOnPageTwo(Files.readAllBytes(pdf));
        papers++;
      }
      boolean first = judged.add(kind(name, kinds));
      boolean here = first && elsewhere.stream().noneMatch(name::endsWith);
      if (!here && Examples.of(0, 1) == 0) {
        continue;
      }
      Glyphs.apart(Files.readAllBytes(pdf));
      if (!pdf.toString().contains("-cards")) {
        Glyphs.legible(Files.readAllBytes(pdf));
      }
      if (name.endsWith("-to-cut.pdf")) {
        PdfTest.complies(Files.readAllBytes(pdf), PDFAFlavour.PDFA_2_B);
      } else {
        PdfTest.complies(Files.readAllBytes(pdf), PDFAFlavour.PDFA_2_A);
        PdfTest.complies(Files.readAllBytes(pdf), PDFAFlavour.PDFUA_1);
      }
    }
    assertThat(papers).isPositive();
  }

  /** Of each route a paper of each kind, at the least, is judged in an ordinary run. */
  private static String kind(String name, String... kinds) {
    String longest =
        Stream.of(kinds)
            .filter(name::endsWith)
            .max(Comparator.comparingInt(String::length))
            .orElse("");
    return name.substring(0, name.indexOf('-')) + longest;
  }

  @Test
  void whatABriefMakes() throws Exception {
    Answer answer =
        new Brief(
                Optional.empty(),
                Brief.Wish.PAPERS.with(Set.of(PaperKind.SIGN_OFF, PaperKind.CARDS)),
                Progress.SILENT)
            .of(
                List.of(
                        OneCourse.in(folder.resolve("routes")),
                        Path.of("routes/ormel-coast/pack-ormel.yaml"),
                        Path.of("routes/thrumble-valley/pack-thrumble.yaml"))
                    .subList(Examples.of(0, 1), Examples.of(1, 3)),
                folder.resolve("papers"));
    allComply(
        answer.written(),
        Set.of(),
        "-car.pdf",
        "-reference.pdf",
        "-sign-off.pdf",
        "-sign-off-keys.pdf",
        "-cards.pdf",
        "-to-cut.pdf");
  }

  @Test
  void whatAReissueMakes() throws Exception {
    Path routes = folder.resolve("routes");
    new SyntheticNetwork(routes, 2).packs(2, 7);
    Path notice = folder.resolve("notice.yaml");
    Files.writeString(notice, SyntheticNetwork.notice("T 1", 0, "Out", 900, 30));
    Answer answer =
        new Depot(folder).reissue(NOON, List.of(routes), Optional.of(notice), true, false);
    allComply(
        answer.written(),
        Set.of("-car.pdf", "-reference.pdf"),
        "-car.pdf",
        "-reference.pdf",
        "-supplement.pdf",
        "-addendum.pdf",
        "-slips.pdf",
        "-affected.pdf");
  }
}
