package gradepost.render.chart;

/** Writes a chart as SVG. Inks follow the page's own colours, so that a dark page inverts it. */
public final class SvgCanvas implements Canvas {
  private final StringBuilder out = new StringBuilder(8192);
  private final String prefix;
  private final Fonts fonts;
  private int clips;

  /**
   * @param prefix makes ids unique on the page
   * @param fonts those of the paper
   */
  SvgCanvas(String prefix, Fonts fonts) {
    this.prefix = prefix;
    this.fonts = fonts;
  }

  /** The drawing as an SVG element with a title and a description. */
  public static String svg(String id, String title, String says, Drawing drawing, Fonts fonts) {
    SvgCanvas canvas = new SvgCanvas(id, fonts);
    drawing.draw(canvas);
    StringBuilder svg = new StringBuilder(canvas.out.length() + 512);
    svg.append("<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" viewBox=\"0 0 ");
    number(svg, drawing.width()).append(' ');
    number(svg, drawing.height()).append("\" width=\"");
    number(svg, drawing.width()).append("\" height=\"");
    number(svg, drawing.height()).append("\" aria-labelledby=\"");
    svg.append(id).append("-title ").append(id).append("-desc\"><title id=\"").append(id);
    escape(svg.append("-title\">"), title).append("</title><desc id=\"").append(id);
    escape(svg.append("-desc\">"), says).append("</desc>");
    return svg.append(canvas.out).append("</svg>").toString();
  }

  @Override
  public void line(double[] x, double[] y, Pen pen) {
    out.append("<polyline fill=\"none\" points=\"");
    points(x, y);
    out.append('"');
    stroke(pen);
    out.append("/>");
  }

  @Override
  public void lines(double[] x, double[] y, Pen pen) {
    if (x.length == 0) {
      return;
    }
    out.append("<path fill=\"none\" d=\"");
    for (int i = 0; i < x.length; i++) {
      number(out.append(i % 2 == 0 ? 'M' : 'L'), x[i]).append(',');
      number(out, y[i]);
    }
    out.append('"');
    stroke(pen);
    out.append("/>");
  }

  @Override
  public void area(double[] x, double[] y, Ink ink) {
    out.append("<polygon points=\"");
    points(x, y);
    out.append('"');
    fill(ink);
    out.append("/>");
  }

  @Override
  public void disc(double x, double y, double radius, Ink fill, Pen rim) {
    out.append("<circle cx=\"");
    number(out, x).append("\" cy=\"");
    number(out, y).append("\" r=\"");
    number(out, radius).append('"');
    fill(fill);
    stroke(rim);
    out.append("/>");
  }

  /** As wide as on paper in any font: another one is squeezed, so that names stay apart. */
  @Override
  public void text(double x, double y, String text, Type type, Anchor anchor, double degrees) {
    out.append("<text x=\"");
    number(out, x).append("\" y=\"");
    number(out, y).append("\" font-size=\"");
    number(out, type.size()).append("\" lengthAdjust=\"spacingAndGlyphs\" textLength=\"");
    number(out, fonts.width(text, type)).append('"');
    if (type.bold()) {
      out.append(" font-weight=\"700\"");
    }
    switch (anchor) {
      case START -> {}
      case MIDDLE -> out.append(" text-anchor=\"middle\"");
      case END -> out.append(" text-anchor=\"end\"");
    }
    if (degrees != 0) {
      out.append(" transform=\"rotate(");
      number(out, -degrees).append(' ');
      number(out, x).append(' ');
      number(out, y).append(")\"");
    }
    escape(out.append('>'), text).append("</text>");
  }

  @Override
  public void clip(double x, double y, double width, double height) {
    String id = prefix + "-clip" + clips++;
    out.append("<clipPath id=\"").append(id).append("\"><rect x=\"");
    number(out, x).append("\" y=\"");
    number(out, y).append("\" width=\"");
    number(out, width).append("\" height=\"");
    number(out, height).append("\"/></clipPath><g clip-path=\"url(#").append(id).append(")\">");
  }

  @Override
  public void unclip() {
    out.append("</g>");
  }

  private void points(double[] x, double[] y) {
    for (int i = 0; i < x.length; i++) {
      if (i > 0) {
        out.append(' ');
      }
      number(out, x[i]).append(',');
      number(out, y[i]);
    }
  }

  private void stroke(Pen pen) {
    out.append(" class=\"s-").append(name(pen.ink())).append("\" stroke-width=\"");
    number(out, pen.width()).append('"');
    if (pen.dashes().length > 0) {
      out.append(" stroke-dasharray=\"");
      for (int i = 0; i < pen.dashes().length; i++) {
        if (i > 0) {
          out.append(' ');
        }
        number(out, pen.dashes()[i]);
      }
      out.append('"');
    }
  }

  private void fill(Ink ink) {
    out.append(" style=\"fill:var(--").append(name(ink)).append(")\"");
  }

  private static String name(Ink ink) {
    return switch (ink) {
      case BLACK -> "ink";
      case DARK -> "dark";
      case PALE -> "pale";
      case FAINT -> "faint";
      case BAND -> "band";
      case PAPER -> "paper";
    };
  }

  /** Two decimals, without a locale and without needless noughts. */
  public static StringBuilder number(StringBuilder out, double value) {
    long hundredths = Math.round(value * 100);
    if (hundredths < 0) {
      out.append('-');
      hundredths = -hundredths;
    }
    out.append(hundredths / 100);
    long rest = hundredths % 100;
    if (rest > 0) {
      out.append('.').append(rest / 10);
      if (rest % 10 > 0) {
        out.append(rest % 10);
      }
    }
    return out;
  }

  private static StringBuilder escape(StringBuilder out, String text) {
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      switch (c) {
        case '<' -> out.append("&lt;");
        case '>' -> out.append("&gt;");
        case '&' -> out.append("&amp;");
        case '"' -> out.append("&quot;");
        default -> out.append(c);
      }
    }
    return out;
  }
}
