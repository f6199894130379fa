package gradepost.render;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;

/**
 * What is printed on each page of a finished PDF, to find the page of what has no bookmark.
 *
 * @param pages their texts, each line after a line feed
 */
public record PageTexts(List<String> pages) {
  public PageTexts {
    pages = List.copyOf(pages);
  }

  /** Reads the texts of a PDF. */
  public static PageTexts of(byte[] pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      PDFTextStripper stripper = new PDFTextStripper();
      stripper.setLineSeparator("\n");
      List<String> out = new ArrayList<>();
      for (int i = 1; i <= document.getNumberOfPages(); i++) {
        stripper.setStartPage(i);
        stripper.setEndPage(i);
        out.add("\n" + stripper.getText(document));
      }
      return new PageTexts(out);
    }
  }

  /** The first page from this one on, counted from 1, on which a line begins so. */
  public Optional<Integer> lineFrom(int page, String begins) {
    for (int i = Math.max(1, page); i <= pages.size(); i++) {
      if (pages.get(i - 1).contains("\n" + begins)) {
        return Optional.of(i);
      }
    }
    return Optional.empty();
  }
}
