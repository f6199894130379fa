package gradepost.render;

import gradepost.briefing.CabCards;
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
 * Cards side by side on A4. The sheets are for the guillotine: PDF/A-2b, not tagged; who reads on a
 * screen has the single cards.
 */
final class Imposition {
  private static final float MM = 72 / 25.4f;
  private static final float MARK = 4 * MM;

  static void write(CabCards cards, byte[] single, OutputStream out) throws IOException {
    CabCards.Format format = cards.format();
    try (PDDocument from = Loader.loadPDF(single);
        PDDocument to = new PDDocument()) {
      LayerUtility layers = new LayerUtility(to);
      int each = format.across() * format.down();
      for (int first = 0; first < from.getNumberOfPages(); first += each) {
        PDRectangle a4 = PDRectangle.A4;
        PDRectangle box = format.sheetLies() ? new PDRectangle(a4.getHeight(), a4.getWidth()) : a4;
        PDPage page = new PDPage(box);
        to.addPage(page);
        try (PDPageContentStream content = new PDPageContentStream(to, page)) {
          for (int i = 0; i < each && first + i < from.getNumberOfPages(); i++) {
            PDFormXObject form = Untagged.page(layers, from, first + i);
            content.saveGraphicsState();
            content.transform(
                Matrix.getTranslateInstance(
                    left(format, box, i % format.across()),
                    bottom(format, box, i / format.across())));
            content.drawForm(form);
            content.restoreGraphicsState();
          }
          marks(content, format, box);
        }
      }
      Untagged.identify(cards, to, " A4");
      to.save(out);
    }
  }

  private static float left(CabCards.Format format, PDRectangle sheet, int column) {
    float width = format.widthMm() * MM;
    return (sheet.getWidth() - format.across() * width) / 2 + column * width;
  }

  private static float bottom(CabCards.Format format, PDRectangle sheet, int row) {
    float height = format.heightMm() * MM;
    return (sheet.getHeight() + format.down() * height) / 2 - (row + 1) * height;
  }

  /** Short strokes where the sheet is cut, at its edges and between the cards. */
  private static void marks(PDPageContentStream content, CabCards.Format format, PDRectangle sheet)
      throws IOException {
    content.setLineWidth(0.4f);
    for (int column = 1; column < format.across(); column++) {
      float x = left(format, sheet, column);
      stroke(content, x, 0, x, MARK);
      stroke(content, x, sheet.getHeight(), x, sheet.getHeight() - MARK);
    }
    for (int row = 0; row < format.down() - 1; row++) {
      float y = bottom(format, sheet, row);
      stroke(content, 0, y, MARK, y);
      stroke(content, sheet.getWidth(), y, sheet.getWidth() - MARK, y);
    }
  }

  private static void stroke(PDPageContentStream content, float x1, float y1, float x2, float y2)
      throws IOException {
    content.moveTo(x1, y1);
    content.lineTo(x2, y2);
    content.stroke();
  }

  private Imposition() {}
}
