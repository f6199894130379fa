package gradepost.render;

import gradepost.briefing.CabCards;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import javax.xml.transform.TransformerException;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.multipdf.LayerUtility;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDMetadata;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.color.PDOutputIntent;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.util.Matrix;
import org.apache.xmpbox.XMPMetadata;
import org.apache.xmpbox.schema.PDFAIdentificationSchema;
import org.apache.xmpbox.type.BadFieldValueException;
import org.apache.xmpbox.xml.XmpSerializer;

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
            PDFormXObject form = layers.importPageAsForm(from, first + i);
            // Untagged here: what points into the tree of the single cards would point nowhere.
            form.getCOSObject().removeItem(org.apache.pdfbox.cos.COSName.STRUCT_PARENTS);
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
      identify(cards, to);
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

  private static void identify(CabCards cards, PDDocument to) throws IOException {
    try {
      XMPMetadata xmp = XMPMetadata.createXMPMetadata();
      PDFAIdentificationSchema archival = xmp.createAndAddPDFAIdentificationSchema();
      archival.setPart(2);
      archival.setConformance("B");
      xmp.createAndAddDublinCoreSchema().setTitle(cards.title());
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      new XmpSerializer().serialize(xmp, bytes, true);
      PDMetadata metadata = new PDMetadata(to);
      metadata.importXMPMetadata(bytes.toByteArray());
      to.getDocumentCatalog().setMetadata(metadata);
      to.getDocumentCatalog().setLanguage(cards.language());
      to.getDocumentInformation().setTitle(cards.title());
      PDOutputIntent intent = new PDOutputIntent(to, new ByteArrayInputStream(PdfWriter.profile()));
      intent.setInfo("sRGB");
      intent.setOutputCondition("sRGB");
      intent.setOutputConditionIdentifier("sRGB");
      to.getDocumentCatalog().addOutputIntent(intent);
      to.setDocumentId(PdfIdentity.id(cards.issue().fingerprint() + cards.title() + " A4"));
    } catch (TransformerException | BadFieldValueException e) {
      throw new IOException(e);
    }
  }

  private Imposition() {}
}
