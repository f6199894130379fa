package gradepost.render;

import gradepost.render.chart.Canvas;
import gradepost.render.chart.Drawing;
import gradepost.render.chart.Fonts;
import gradepost.render.chart.SvgCanvas;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;

/** Writes a chart as the operators of a PDF form. */
final class PdfCanvas implements Canvas {
  private final StringBuilder out = new StringBuilder(8192);
  private final PDFont regular;
  private final PDFont bold;
  private final Fonts fonts;
  private final double height;
  private String pen = "";
  private String ink = "";

  private PdfCanvas(PDFont regular, PDFont bold, Fonts fonts, double height) {
    this.regular = regular;
    this.bold = bold;
    this.fonts = fonts;
    this.height = height;
    out.append("1 j\n");
  }

  static PDFormXObject form(
      PDDocument document, PDFont regular, PDFont bold, Fonts fonts, Drawing drawing)
      throws IOException {
    PdfCanvas canvas = new PdfCanvas(regular, bold, fonts, drawing.height());
    drawing.draw(canvas);
    PDFormXObject form = new PDFormXObject(document);
    form.setBBox(new PDRectangle((float) drawing.width(), (float) drawing.height()));
    PDResources resources = new PDResources();
    resources.put(COSName.getPDFName("R"), regular);
    resources.put(COSName.getPDFName("B"), bold);
    form.setResources(resources);
    try (OutputStream stream = form.getContentStream().createOutputStream(COSName.FLATE_DECODE)) {
      stream.write(canvas.out.toString().getBytes(StandardCharsets.ISO_8859_1));
    }
    return form;
  }

  @Override
  public void line(double[] x, double[] y, Pen pen) {
    pen(pen);
    path(x, y);
    out.append("S\n");
  }

  @Override
  public void lines(double[] x, double[] y, Pen pen) {
    pen(pen);
    for (int i = 0; i + 1 < x.length; i += 2) {
      at(x[i], y[i]).append("m\n");
      at(x[i + 1], y[i + 1]).append("l\n");
    }
    out.append("S\n");
  }

  @Override
  public void area(double[] x, double[] y, Ink ink) {
    fill(ink);
    path(x, y);
    out.append("f\n");
  }

  @Override
  public void disc(double x, double y, double radius, Ink fill, Pen rim) {
    fill(fill);
    pen(rim);
    double k = 0.5523 * radius;
    double r = radius;
    at(x + r, y).append("m\n");
    bow(x + r, y + k, x + k, y + r, x, y + r);
    bow(x - k, y + r, x - r, y + k, x - r, y);
    bow(x - r, y - k, x - k, y - r, x, y - r);
    bow(x + k, y - r, x + r, y - k, x + r, y);
    out.append("b\n");
  }

  private void bow(double x1, double y1, double x2, double y2, double x3, double y3) {
    at(x1, y1);
    at(x2, y2);
    at(x3, y3).append("c\n");
  }

  @Override
  public void text(double x, double y, String text, Type type, Anchor anchor, double degrees) {
    double shift =
        switch (anchor) {
          case START -> 0;
          case MIDDLE -> -fonts.width(text, type) / 2;
          case END -> -fonts.width(text, type);
        };
    double cos = Math.cos(Math.toRadians(degrees));
    double sin = Math.sin(Math.toRadians(degrees));
    PDFont font = type.bold() ? bold : regular;
    fill(Ink.BLACK);
    out.append("BT /").append(type.bold() ? 'B' : 'R').append(' ');
    number(type.size());
    out.append("Tf ");
    fine(cos);
    fine(sin);
    fine(-sin);
    fine(cos);
    at(x + shift * cos, y - shift * sin).append("Tm <");
    try {
      text.codePoints().forEach(font::addToSubset);
      for (byte b : font.encode(text)) {
        out.append(Character.forDigit(b >> 4 & 15, 16)).append(Character.forDigit(b & 15, 16));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    out.append("> Tj ET\n");
  }

  @Override
  public void clip(double x, double y, double width, double boxHeight) {
    out.append("q\n");
    number(x);
    number(height - y - boxHeight);
    number(width);
    number(boxHeight);
    out.append("re W n\n");
  }

  @Override
  public void unclip() {
    out.append("Q\n");
    pen = "";
    ink = "";
  }

  private void path(double[] x, double[] y) {
    for (int i = 0; i < x.length; i++) {
      at(x[i], y[i]).append(i == 0 ? "m\n" : "l\n");
    }
  }

  private StringBuilder at(double x, double y) {
    number(x);
    number(height - y);
    return out;
  }

  /** Writes only what is not so already; half of a chart would say again what was said. */
  private void pen(Pen wanted) {
    StringBuilder words = new StringBuilder();
    SvgCanvas.number(words, wanted.ink().grey).append(" G ");
    SvgCanvas.number(words, wanted.width()).append(" w [");
    for (double dash : wanted.dashes()) {
      SvgCanvas.number(words, dash).append(' ');
    }
    words.append("] 0 d\n");
    if (!pen.contentEquals(words)) {
      pen = words.toString();
      out.append(pen);
    }
  }

  private void fill(Ink wanted) {
    if (!ink.equals(wanted.name())) {
      ink = wanted.name();
      number(wanted.grey);
      out.append("g\n");
    }
  }

  private void number(double value) {
    SvgCanvas.number(out, value).append(' ');
  }

  /** Four decimals, for the turn of a text. */
  private void fine(double value) {
    long scaled = Math.round(Math.abs(value) * 10000);
    out.append(value < 0 && scaled > 0 ? "-" : "").append(scaled / 10000).append('.');
    String rest = Long.toString(10000 + scaled % 10000);
    out.append(rest, 1, 5).append(' ');
  }
}
