package gradepost.briefing.reissue;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.briefing.ApproachPage;
import gradepost.briefing.Briefing;
import gradepost.briefing.Change;
import gradepost.briefing.Messages;
import gradepost.briefing.Part;
import gradepost.briefing.Reference;
import gradepost.briefing.SampleIssue;
import gradepost.briefing.SamplePlan;
import gradepost.briefing.compose.Composer;
import gradepost.render.Papers;
import gradepost.render.Renderer;
import gradepost.render.TemplateSource;
import gradepost.units.UnitStyle;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Bars in the margin of an approach page: beside what differs, and nothing else. */
@Tag("slow")
class ChangeMarksTest {
  private static final Briefing NOW =
      new Composer(Messages.english())
          .compose("", List.of(SamplePlan.of(UnitStyle.MILES)), SampleIssue.issue(), List.of());

  /** The issue before, in which the third approach had other words. */
  private static Briefing before() {
    Part part = NOW.parts().get(0);
    List<ApproachPage> pages = new ArrayList<>(part.approaches());
    ApproachPage p = pages.get(2);
    pages.set(
        2,
        new ApproachPage(
            p.id(),
            p.number(),
            p.title(),
            p.target(),
            "Other words.",
            p.marks(),
            p.chart(),
            p.actions(),
            p.unbraked(),
            p.points(),
            p.ladders(),
            p.bySpeed(),
            p.spread(),
            List.of("Something that was found then."),
            p.plate(),
            List.of()));
    Part old =
        new Part(
            part.id(),
            part.title(),
            part.head(),
            part.summary(),
            part.road(),
            part.train(),
            part.line(),
            pages,
            part.lower(),
            part.tables(),
            part.seldom(),
            part.hazards(),
            part.notSupplied(),
            part.answeredFor());
    return new Briefing(
        NOW.language(),
        NOW.title(),
        NOW.subject(),
        NOW.issueLine(),
        NOW.issue(),
        NOW.files(),
        NOW.cover(),
        NOW.changes(),
        NOW.reading(),
        List.of(old));
  }

  @Test
  void headlineAndFindingsThatDifferHaveABar() throws IOException {
    Briefing marked = new ChangeMarks(Messages.english()).marked(NOW, before(), Map.of());
    List<ApproachPage> pages = marked.parts().get(0).approaches();
    assertThat(pages.get(2).changed()).containsExactly("headline", "findings");
    pages.stream()
        .filter(p -> !p.equals(pages.get(2)))
        .forEach(p -> assertThat(p.changed()).as(p.title()).isEmpty());
    ByteArrayOutputStream html = new ByteArrayOutputStream();
    new Renderer(TemplateSource.bundled(), Messages.english()).html(marked, html);
    String page = html.toString(StandardCharsets.UTF_8).replace('\u00a0', ' ');
    int bars = page.split("<div class=\"barred\">", -1).length - 1;
    assertThat(pages.get(2).plate()).isPresent();
    assertThat(bars).isEqualTo(2);
    assertThat(page)
        .containsPattern(
            "<div class=\"barred\">\\s*<h3>" + Pattern.quote(pages.get(2).title()) + "</h3>");
  }

  @Test
  void whatChangedIsOfTheIssueThatTellsIt() {
    Map<String, Integer> since = Map.of("p1-line1", 1);
    Briefing marked = new ChangeMarks(Messages.english()).marked(manyChanges(), before(), since);
    assertThat(marked.cover().contents())
        .filteredOn(e -> since.containsKey(e.anchor()))
        .extracting(e -> e.anchor() + " " + e.issue())
        .containsExactly("p1-line1 1");
    Reference reference = Papers.reference(SamplePlan.of(UnitStyle.MILES), manyChanges());
    assertThat(ChangeMarks.marked(reference, reference, Map.of("reading", 2)).contents())
        .extracting(e -> e.anchor() + " " + e.issue())
        .startsWith("changes 3", "reading 2", "runs 3");
  }

  private static Briefing manyChanges() {
    return new Composer(Messages.english())
        .compose(
            "",
            List.of(SamplePlan.of(UnitStyle.MILES)),
            SampleIssue.issue(),
            Collections.nCopies(9, new Change("kind", "place", "text")));
  }

  /** The bar is inside of what is printed: what hangs over the edge of the text is not. */
  @Test
  void theBarIsPrinted() throws IOException {
    Briefing marked = new ChangeMarks(Messages.english()).marked(NOW, before(), Map.of());
    assertThat(darkAtTheEdge(marked)).isGreaterThan(darkAtTheEdge(NOW) + 15);
  }

  /** Just inside of the frame of a plate, in dots of 72 to the inch. */
  private static final int EDGE = 48;

  /** Dots, of 72 to the inch, that are dark at the edge of the text of the third approach. */
  private static int darkAtTheEdge(Briefing briefing) throws IOException {
    ByteArrayOutputStream pdf = new ByteArrayOutputStream();
    new Renderer(TemplateSource.bundled(), Messages.english()).pdf(briefing, pdf);
    try (PDDocument document = Loader.loadPDF(pdf.toByteArray())) {
      PDFTextStripper stripper = new PDFTextStripper();
      int number = 1;
      String head = briefing.parts().get(0).approaches().get(2).title();
      for (String text = ""; !text.startsWith(head); number++) {
        assertThat(number).as(head).isLessThanOrEqualTo(document.getNumberOfPages());
        stripper.setStartPage(number);
        stripper.setEndPage(number);
        text = stripper.getText(document);
      }
      BufferedImage page =
          new PDFRenderer(document).renderImageWithDPI(number - 2, 72, ImageType.GRAY);
      int dark = 0;
      for (int y = 0; y < page.getHeight(); y++) {
        dark += page.getRaster().getSample(EDGE, y, 0) < 100 ? 1 : 0;
      }
      return dark;
    }
  }
}
