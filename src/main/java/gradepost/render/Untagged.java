package gradepost.render;

import gradepost.briefing.Printable;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import javax.xml.transform.TransformerException;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.multipdf.LayerUtility;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDMetadata;
import org.apache.pdfbox.pdmodel.graphics.color.PDOutputIntent;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.xmpbox.XMPMetadata;
import org.apache.xmpbox.schema.PDFAIdentificationSchema;
import org.apache.xmpbox.type.BadFieldValueException;
import org.apache.xmpbox.xml.XmpSerializer;

/** Sheets that are laid out of finished pages, for the printer alone: archival, without tags. */
final class Untagged {

  /** A page to be drawn on such a sheet. */
  static PDFormXObject page(LayerUtility layers, PDDocument from, int index) throws IOException {
    PDFormXObject form = layers.importPageAsForm(from, index);
    // What points into the tree of the single pages would point nowhere.
    form.getCOSObject().removeItem(COSName.STRUCT_PARENTS);
    return form;
  }

  /**
   * Says what the document is.
   *
   * @param size told apart by it from the same pages in another size
   */
  static void identify(Printable document, PDDocument to, String size) throws IOException {
    try {
      XMPMetadata xmp = XMPMetadata.createXMPMetadata();
      PDFAIdentificationSchema archival = xmp.createAndAddPDFAIdentificationSchema();
      archival.setPart(2);
      archival.setConformance("B");
      xmp.createAndAddDublinCoreSchema().setTitle(document.title());
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      new XmpSerializer().serialize(xmp, bytes, true);
      PDMetadata metadata = new PDMetadata(to);
      String text = bytes.toString(StandardCharsets.UTF_8).replace("\r\n", "\n");
      metadata.importXMPMetadata(text.getBytes(StandardCharsets.UTF_8));
      to.getDocumentCatalog().setMetadata(metadata);
      to.getDocumentCatalog().setLanguage(document.language());
      to.getDocumentInformation().setTitle(document.title());
      PDOutputIntent intent = new PDOutputIntent(to, new ByteArrayInputStream(PdfWriter.profile()));
      intent.setInfo("sRGB");
      intent.setOutputCondition("sRGB");
      intent.setOutputConditionIdentifier("sRGB");
      to.getDocumentCatalog().addOutputIntent(intent);
      to.setDocumentId(PdfIdentity.id(document.issue().fingerprint() + document.title() + size));
    } catch (TransformerException | BadFieldValueException e) {
      throw new IOException(e);
    }
  }

  private Untagged() {}
}
