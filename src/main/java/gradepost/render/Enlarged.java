package gradepost.render;

import gradepost.briefing.Printable;
import java.io.IOException;
import java.io.OutputStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.multipdf.LayerUtility;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.util.Matrix;

/**
 * Pages on paper of the next larger size, A4 on A3: for a wall. PDF/A-2b, not tagged; who reads on
 * a screen has the pack.
 */
final class Enlarged {
  /**
   * From one size of the A series to the next: its sides are as one to the root of two (ISO 216).
   */
  private static final float LARGER = (float) Math.sqrt(2);

  static void write(Printable document, byte[] pages, OutputStream out) throws IOException {
    try (PDDocument from = Loader.loadPDF(pages);
        PDDocument to = new PDDocument()) {
      LayerUtility layers = new LayerUtility(to);
      for (int i = 0; i < from.getNumberOfPages(); i++) {
        PDRectangle small = from.getPage(i).getMediaBox();
        PDPage page =
            new PDPage(new PDRectangle(small.getWidth() * LARGER, small.getHeight() * LARGER));
        to.addPage(page);
        try (PDPageContentStream content = new PDPageContentStream(to, page)) {
          PDFormXObject form = Untagged.page(layers, from, i);
          content.transform(Matrix.getScaleInstance(LARGER, LARGER));
          content.drawForm(form);
        }
      }
      Untagged.identify(document, to, " A3");
      to.save(out);
    }
  }

  private Enlarged() {}
}
