package gradepost.render;

import java.io.IOException;
import java.io.OutputStream;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.text.PDFTextStripper;

/**
 * Pages of several papers in one file, for the printer. A paper that is wanted several times is
 * held once. Such a file is not tagged: on a screen the papers themselves are read.
 */
public final class Bound implements AutoCloseable {
  private final PDDocument all = new PDDocument();
  private final Map<String, PDDocument> papers = new LinkedHashMap<>();

  /**
   * Puts in all pages of a paper.
   *
   * @param key by which the same paper is known again
   * @return how many pages
   */
  public int add(String key, byte[] pdf) throws IOException {
    return add(open(key, pdf), 0, Integer.MAX_VALUE);
  }

  /**
   * Puts in the pages from the one that has some words on it up to the next that has a mark.
   *
   * @return how many pages; none where no page has the words
   */
  public int addFrom(String key, byte[] pdf, String words, String mark) throws IOException {
    PDDocument paper = open(key, pdf);
    int from = -1;
    int to = paper.getNumberOfPages();
    for (int i = 0; i < paper.getNumberOfPages() && to == paper.getNumberOfPages(); i++) {
      List<String> lines = lines(paper, i + 1);
      if (from < 0 && lines.contains(words)) {
        from = i;
      } else if (from >= 0 && lines.stream().anyMatch(line -> line.contains(mark))) {
        to = i;
      }
    }
    return from < 0 ? 0 : add(paper, from, to);
  }

  private static List<String> lines(PDDocument paper, int page) throws IOException {
    PDFTextStripper stripper = new PDFTextStripper();
    stripper.setStartPage(page);
    stripper.setEndPage(page);
    List<String> lines = new ArrayList<>();
    stripper
        .getText(paper)
        .lines()
        .forEach(line -> lines.add(line.strip().replaceAll("\\s+", " ")));
    return lines;
  }

  private PDDocument open(String key, byte[] pdf) throws IOException {
    PDDocument known = papers.get(key);
    if (known == null) {
      known = Loader.loadPDF(pdf);
      papers.put(key, known);
    }
    return known;
  }

  private int add(PDDocument paper, int from, int to) throws IOException {
    int pages = 0;
    for (int i = from; i < Math.min(to, paper.getNumberOfPages()); i++) {
      all.importPage(paper.getPage(i)).getCOSObject().removeItem(COSName.ANNOTS);
      pages++;
    }
    return pages;
  }

  /** Fills up a sheet that is printed on both sides, so that what follows begins on another. */
  public void turn() {
    int pages = all.getNumberOfPages();
    if (pages % 2 == 1) {
      all.addPage(new PDPage(all.getPage(pages - 1).getMediaBox()));
    }
  }

  /** How many pages there are. */
  public int pages() {
    return all.getNumberOfPages();
  }

  /** Writes the file; the same pages give the same bytes. */
  public void write(OutputStream out) throws IOException {
    all.setDocumentId(0L);
    all.save(out);
  }

  @Override
  public void close() throws IOException {
    all.close();
    for (PDDocument paper : papers.values()) {
      paper.close();
    }
  }
}
