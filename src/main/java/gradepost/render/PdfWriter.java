package gradepost.render;

import com.openhtmltopdf.extend.FSObjectDrawer;
import com.openhtmltopdf.extend.FSObjectDrawerFactory;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.pdfboxout.PDFontSupplier;
import com.openhtmltopdf.pdfboxout.PdfBoxOutputDevice;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder.PdfAConformance;
import com.openhtmltopdf.render.Box;
import com.openhtmltopdf.util.XRLog;
import gradepost.briefing.Printable;
import gradepost.render.chart.Drawing;
import gradepost.render.chart.Fonts;
import gradepost.render.chart.TemplateFault;
import java.awt.Rectangle;
import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.jspecify.annotations.Nullable;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** Lays markup out on pages and puts the charts in as forms. */
final class PdfWriter {
  static {
    XRLog.setLoggingEnabled(false);
  }

  private final Fonts fonts;
  private final boolean tagged;
  private final byte[] profile = profile();

  /**
   * @param tagged level A and PDF/UA; else level U, to measure what the tags cost
   */
  PdfWriter(Fonts fonts, boolean tagged) {
    this.fonts = fonts;
    this.tagged = tagged;
  }

  static byte[] profile() {
    return ICC_Profile.getInstance(ColorSpace.CS_sRGB).getData();
  }

  void write(Printable briefing, Document page, Map<String, Drawing> drawings, OutputStream out)
      throws IOException {
    try (PDDocument document = new PDDocument()) {
      layOut(document, page, drawings, PdfBoxRenderer::createPDFWithoutClosing);
      PdfIdentity.stamp(document, briefing);
      document.save(out);
    }
  }

  /** How far down the run of text, in points, each of these elements begins; nothing is painted. */
  List<Double> tops(Document page, List<String> ids) throws IOException {
    List<Double> out = new ArrayList<>();
    try (PDDocument document = new PDDocument()) {
      layOut(
          document,
          page,
          Map.of(),
          laid -> {
            for (String id : ids) {
              Box box = laid.getSharedContext().getBoxById(id);
              if (box == null) {
                throw new IOException("a draft has no " + id);
              }
              out.add((double) box.getAbsY() / laid.getDotsPerPoint());
            }
          });
    }
    return out;
  }

  /** What is done with a document that is laid out. */
  private interface Use {
    void of(PdfBoxRenderer laid) throws IOException;
  }

  private void layOut(PDDocument document, Document page, Map<String, Drawing> drawings, Use use)
      throws IOException {
    Map<Fonts.Face, PDFont> loaded = new EnumMap<>(Fonts.Face.class);
    PdfRendererBuilder builder = new PdfRendererBuilder();
    builder.usePDDocument(document);
    SharedArtifacts artifacts = new SharedArtifacts();
    builder.usePageSupplier((d, width, height, n, shadow) -> artifacts.page(d, width, height));
    for (Fonts.Face face : Fonts.Face.values()) {
      PDFont font = PDType0Font.load(document, fonts.font(face), true);
      loaded.put(face, font);
      builder.useFont(
          new PDFontSupplier(font),
          Fonts.FAMILY,
          face.weight,
          face.italic ? FontStyle.ITALIC : FontStyle.NORMAL,
          true);
    }
    builder.usePdfAConformance(tagged ? PdfAConformance.PDFA_2_A : PdfAConformance.PDFA_2_U);
    builder.usePdfUaAccessibility(tagged);
    builder.useColorProfile(profile);
    builder.useUnicodeLineBreaker(new LineBreaks());
    builder.withProducer("gradepost");
    List<TemplateFault> faults = new ArrayList<>();
    builder.useObjectDrawerFactory(new Charts(document, loaded, drawings, faults));
    builder.withW3cDocument(page, "");
    builder.useUriResolver((base, address) -> resolved(address, faults));
    layOut(
        builder,
        new Measure(fonts, loaded),
        laid -> {
          use.of(laid);
          if (!faults.isEmpty()) {
            throw faults.get(0);
          }
        });
  }

  /** What a style hides from {@link Loads} is found where it is used. */
  private static @Nullable String resolved(@Nullable String address, List<TemplateFault> faults) {
    if (address == null || Loads.within(address)) {
      return address;
    }
    faults.add(Loads.fault(address));
    return null;
  }

  /**
   * With only Java's own services to be found: looking through all libraries for an XML writer
   * takes a tenth of the time, and none of them is wanted.
   */
  private static void layOut(PdfRendererBuilder builder, Measure measure, Use use)
      throws IOException {
    Thread self = Thread.currentThread();
    ClassLoader before = self.getContextClassLoader();
    self.setContextClassLoader(ClassLoader.getPlatformClassLoader());
    try (PdfBoxRenderer renderer = builder.buildPdfRenderer()) {
      renderer.getSharedContext().setTextRenderer(measure);
      renderer.layout();
      use.of(renderer);
    } finally {
      self.setContextClassLoader(before);
    }
  }

  private static boolean isChart(Element element) {
    return element.getAttribute("type").equals("chart");
  }

  private final class Charts implements FSObjectDrawerFactory {
    private final PDDocument document;
    private final Map<Fonts.Face, PDFont> loaded;
    private final Map<String, Drawing> drawings;
    private final List<TemplateFault> faults;

    Charts(
        PDDocument document,
        Map<Fonts.Face, PDFont> loaded,
        Map<String, Drawing> drawings,
        List<TemplateFault> faults) {
      this.document = document;
      this.loaded = loaded;
      this.drawings = drawings;
      this.faults = faults;
    }

    @Override
    public boolean isReplacedObject(Element element) {
      boolean known = drawings.containsKey(element.getAttribute("id"));
      if (isChart(element) && !known) {
        faults.add(new TemplateFault("the templates have a chart that nobody drew"));
      }
      return isChart(element) && known;
    }

    @Override
    public FSObjectDrawer createDrawer(Element element) {
      String id = element.getAttribute("id");
      Drawing drawing = drawings.get(id);
      PDFont regular = loaded.get(Fonts.Face.REGULAR);
      PDFont bold = loaded.get(Fonts.Face.BOLD);
      if (drawing == null || regular == null || bold == null) {
        throw new IllegalStateException("nothing to draw for " + id);
      }
      return (e, x, y, width, height, device, context, dotsPerPixel) -> {
        try {
          PdfBoxOutputDevice pdf = (PdfBoxOutputDevice) device;
          float dots = pdf.getDotsPerPoint();
          pdf.drawPdfAsImage(
              PdfCanvas.form(document, regular, bold, fonts, drawing),
              new Rectangle((int) x, (int) y, (int) width, (int) height),
              (float) drawing.width() * dots,
              (float) drawing.height() * dots);
        } catch (IOException io) {
          throw new UncheckedIOException(io);
        }
        return Map.of();
      };
    }
  }
}
