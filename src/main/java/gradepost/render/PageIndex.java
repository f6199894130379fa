package gradepost.render;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineNode;

/** On which page of a finished PDF each of its bookmarks leads. */
public final class PageIndex {

  /** Page numbers from 1, in the order of the bookmarks, each before those under it. */
  public static List<Integer> pages(byte[] pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      List<Integer> out = new ArrayList<>();
      PDOutlineNode outline = document.getDocumentCatalog().getDocumentOutline();
      if (outline != null) {
        walk(document, outline, out);
      }
      return out;
    }
  }

  private static void walk(PDDocument document, PDOutlineNode node, List<Integer> out)
      throws IOException {
    for (PDOutlineItem item : node.children()) {
      PDPage page = item.findDestinationPage(document);
      out.add(page == null ? 0 : document.getPages().indexOf(page) + 1);
      walk(document, item, out);
    }
  }

  private PageIndex() {}
}
