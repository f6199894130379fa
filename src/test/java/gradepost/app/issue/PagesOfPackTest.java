package gradepost.app.issue;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.store.Paper;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Regression: how much paper a pack is; where this turns red a person looks at it. Property: no
 * page is more than half white, but for the last one of a sheet; measured as ink on the page
 * between its heads.
 */
@Tag("slow")
class PagesOfPackTest {
  private static final int DPI = 24;

  /** The running heads stand above and below, as shares of the height. */
  private static final double HEAD = 0.06;

  private static final double FOOT = 0.94;

  private static final int INK = 200;

  @Test
  void fourPapersAndTheirReferenceAreSoManyPagesAndNoneIsHalfWhite() throws Exception {
    List<String> white = new ArrayList<>();
    int papers = 0;
    int reference = 0;
    for (Paper paper :
        new IssuePapers(new Layout(Optional.empty()), false, Concern.NOBODY)
            .of(FrozenIssue.first(), name -> {})
            .papers()) {
      if (paper.name().endsWith(".pdf")) {
        try (PDDocument pdf = Loader.loadPDF(paper.bytes())) {
          Set<Integer> begins = begins(pdf);
          PDFRenderer renderer = new PDFRenderer(pdf);
          for (int page = 0; page < pdf.getNumberOfPages(); page++) {
            boolean last = page == pdf.getNumberOfPages() - 1 || begins.contains(page + 1);
            BufferedImage image = renderer.renderImageWithDPI(page, DPI, ImageType.GRAY);
            double filled = filled(image);
            assertThat(filled).as("%s, page %d", paper.name(), page + 1).isPositive();
            if (!last && filled < 0.5) {
              white.add("%s, page %d: %.2f".formatted(paper.name(), page + 1, filled));
            }
          }
          if (paper.name().endsWith("-reference.pdf")) {
            reference += pdf.getNumberOfPages();
          } else {
            assertThat(pdf.getNumberOfPages()).as(paper.name()).isLessThanOrEqualTo(21);
            assertThat(begins)
                .as("first page apart, a sheet is a page")
                .hasSize(pdf.getNumberOfPages() - 1);
            papers += pdf.getNumberOfPages();
          }
        }
      }
    }
    assertThat(papers).isGreaterThanOrEqualTo(60);
    assertThat(reference).isGreaterThanOrEqualTo(15);
    assertThat(papers + reference).isLessThanOrEqualTo(100);
    assertThat(white).isEmpty();
  }

  /** Pages on which a sheet begins, from 0: those that bookmarks lead to. */
  private static Set<Integer> begins(PDDocument pdf) throws IOException {
    Set<Integer> out = new TreeSet<>();
    List<PDPage> pages = new ArrayList<>();
    pdf.getPages().forEach(pages::add);
    List<PDOutlineItem> items = new ArrayList<>();
    pdf.getDocumentCatalog().getDocumentOutline().children().forEach(items::add);
    for (int i = 0; i < items.size(); i++) {
      items.get(i).children().forEach(items::add);
      out.add(pages.indexOf(items.get(i).findDestinationPage(pdf)));
    }
    assertThat(out).hasSizeGreaterThan(3).doesNotContain(-1);
    return out;
  }

  /** How far down the lowest ink stands, from 0 below the head to 1 above the foot. */
  private static double filled(BufferedImage page) {
    int top = (int) (HEAD * page.getHeight());
    int foot = (int) (FOOT * page.getHeight());
    for (int y = foot - 1; y > top; y--) {
      for (int x = 0; x < page.getWidth(); x++) {
        if (page.getRaster().getSample(x, y, 0) < INK) {
          return (double) (y - top) / (foot - top);
        }
      }
    }
    return 0;
  }
}
