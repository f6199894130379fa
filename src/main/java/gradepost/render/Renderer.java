package gradepost.render;

import gradepost.briefing.CabCards;
import gradepost.briefing.Messages;
import gradepost.briefing.Printable;
import gradepost.briefing.chart.Chart;
import gradepost.render.chart.Drawing;
import gradepost.render.chart.Drawings;
import gradepost.render.chart.Fonts;
import gradepost.render.chart.SvgCanvas;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.w3c.dom.Document;

/**
 * Lays briefings out as HTML and as PDF. Fonts and templates are read once, so one renderer for
 * many packs is fast; it serves one thread at a time, and another one for HTML.
 */
public final class Renderer {
  /** By how much the height is reduced when a card did not fit, points. */
  private static final double CUT_AGAIN_PT = 4;

  /** How often it is reduced; a single line higher than a card never fits. */
  private static final int MOST_CUTS = 8;

  private final Fonts fonts;
  private final Templates templates;
  private final Markup markup;

  /** A reader of its own, so that the page is read while the paper is laid out. */
  private final Markup screen;

  private final PdfWriter pdf;

  public Renderer(TemplateSource source, Messages messages) throws IOException {
    this(source, messages, true);
  }

  Renderer(TemplateSource source, Messages messages, boolean tagged) throws IOException {
    this.fonts = new Fonts();
    this.templates = new Templates(source, messages);
    this.markup = new Markup(fonts);
    this.screen = new Markup(fonts);
    this.pdf = new PdfWriter(fonts, tagged);
  }

  /**
   * Looks at a template or a style sheet before anything is printed.
   *
   * @param name of the file
   * @throws gradepost.render.chart.TemplateFault where it is no template, or would load from
   *     outside the paper as far as its text shows
   */
  public void look(String name, String text) throws IOException {
    templates.look(name, text);
  }

  /** One self-contained file, in UTF-8. */
  public void html(Printable briefing, OutputStream out) throws IOException {
    String page = ScreenText.whole(templates.markup(briefing, "screen", this::svg));
    screen.read(page);
    out.write("<!DOCTYPE html>\n".getBytes(StandardCharsets.UTF_8));
    out.write(page.getBytes(StandardCharsets.UTF_8));
  }

  private String svg(Chart chart) {
    Drawing drawing = Drawings.onScreen(chart, fonts);
    return SvgCanvas.svg(chart.id(), chart.name(), chart.says(), drawing, fonts);
  }

  /** Tagged and archival: PDF/A-2a and PDF/UA-1. */
  public void pdf(Printable briefing, OutputStream out) throws IOException {
    Map<String, Drawing> drawings = new LinkedHashMap<>();
    pdf.write(briefing, paper(briefing, drawings), drawings, out);
  }

  private Document paper(Printable briefing, Map<String, Drawing> drawings) throws IOException {
    String page =
        templates.markup(
            briefing,
            "paper",
            chart -> {
              Drawing drawing = Drawings.of(chart, fonts);
              drawings.put(chart.id(), drawing);
              return placeholder(chart, drawing);
            });
    return markup.read(page);
  }

  /**
   * One card a page; what does not fit continues on another card that says so. Laid out on its page
   * a card can be a little higher than it was measured: then all are cut again, for less room.
   */
  public byte[] cards(CabCards draft) throws IOException {
    List<Double> tops = pdf.tops(paper(draft, new LinkedHashMap<>()), CardCuts.edges(draft));
    for (int less = 0; ; less++) {
      CabCards cards = draft.split(CardCuts.of(draft, tops, less * CUT_AGAIN_PT));
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      pdf(cards, out);
      if (less == MOST_CUTS || pages(out.toByteArray()) == cards.cards().size()) {
        return out.toByteArray();
      }
    }
  }

  private static int pages(byte[] paper) throws IOException {
    try (PDDocument document = Loader.loadPDF(paper)) {
      return document.getNumberOfPages();
    }
  }

  /**
   * Cards laid side by side on A4 with marks to cut by; archival, for the printer.
   *
   * @param single the same cards, one a page
   */
  public void cut(CabCards cards, byte[] single, OutputStream out) throws IOException {
    Imposition.write(cards, single, out);
  }

  /** Its pages on paper of the next larger size; archival, for the printer. */
  public void enlarged(Printable document, OutputStream out) throws IOException {
    ByteArrayOutputStream pages = new ByteArrayOutputStream();
    pdf(document, pages);
    Enlarged.write(document, pages.toByteArray(), out);
  }

  private static String placeholder(Chart chart, Drawing drawing) {
    StringBuilder tag = new StringBuilder("<object type=\"chart\" id=\"");
    tag.append(chart.id()).append("\" alt=\"");
    tag.append(escaped(chart.name() + ". " + chart.says()));
    tag.append("\" style=\"width:");
    SvgCanvas.number(tag, drawing.width()).append("pt;height:");
    return SvgCanvas.number(tag, drawing.height()).append("pt\"></object>").toString();
  }

  private static String escaped(String text) {
    return text.replace("&", "&amp;").replace("<", "&lt;").replace("\"", "&quot;");
  }
}
