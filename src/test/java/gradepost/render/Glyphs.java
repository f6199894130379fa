package gradepost.render;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;

/** Every letter of a paper with its box, read back from what was printed. */
public final class Glyphs {
  /** What a glyph covers of its size, above its line; letters without accents. */
  private static final double TALL = 0.55;

  /** Common practice: a printer in a depot leaves so much of an edge blank. */
  private static final double EDGE_PT = 4.5 * 72 / 25.4;

  private static final double TOUCH_PT = 0.3;

  /** Margins of the paper: what stands in them is repeated on every page. */
  private static final double HEAD_PT = 16.9 * 72 / 25.4;

  /** Only a sheet of A4 or more on its side is wider than this and less high. */
  private static final double A4_WIDE_PT = 600;

  private static final double FOOT_PT = 13.9 * 72 / 25.4;

  /**
   * One letter; from the upper left, in points.
   *
   * @param text the letter and the line that it stands in
   * @param lies on a sheet of A4 on its side
   * @param drawn in a chart; on sheets to cut every card is a drawing
   */
  record Glyph(
      int page,
      String letter,
      String text,
      double x,
      double y,
      double w,
      double h,
      double size,
      double fromFoot,
      boolean lies,
      boolean drawn) {
    boolean meets(Glyph o) {
      return x + TOUCH_PT < o.x + o.w
          && o.x + TOUCH_PT < x + w
          && y + TOUCH_PT < o.y + o.h
          && o.y + TOUCH_PT < y + h;
    }
  }

  static List<Glyph> of(byte[] pdf) throws IOException {
    List<Glyph> out = new ArrayList<>();
    try (PDDocument document = Loader.loadPDF(pdf)) {
      PDFTextStripper stripper = new Reader(out);
      stripper.setSuppressDuplicateOverlappingText(false);
      stripper.getText(document);
      for (Glyph g : out) {
        PDRectangle box = document.getPage(g.page - 1).getMediaBox();
        assertThat(g.x).as(g.toString()).isGreaterThan(EDGE_PT);
        assertThat(g.x + g.w).as(g.toString()).isLessThan(box.getWidth() - EDGE_PT);
        assertThat(g.y).as(g.toString()).isGreaterThan(EDGE_PT);
        assertThat(g.y + g.h).as(g.toString()).isLessThan(box.getHeight() - EDGE_PT);
      }
    }
    return out;
  }

  /** That on no page a letter stands upon another or runs off the paper. */
  public static void apart(byte[] pdf) throws IOException {
    List<Glyph> all = of(pdf);
    assertThat(all).hasSizeGreaterThan(300);
    List<String> faults = new ArrayList<>();
    for (int i = 0; i < all.size(); i++) {
      for (int j = i + 1; j < all.size() && all.get(j).page == all.get(i).page; j++) {
        if (all.get(i).meets(all.get(j))) {
          faults.add(all.get(i) + " upon " + all.get(j));
        }
      }
    }
    assertThat(faults).isEmpty();
  }

  /**
   * That on a paper for the desk every text has the size that is promised: 10 points, on the road
   * sheet, which lies on its side, 9; in charts 7 at least, in running heads and feet 8.5.
   */
  public static void legible(byte[] pdf) throws IOException {
    List<Glyph> small = new ArrayList<>();
    for (Glyph g : of(pdf)) {
      boolean running = g.y < HEAD_PT || g.fromFoot < FOOT_PT;
      double least = g.drawn ? 7 : running ? 8.5 : g.lies ? 9 : 10;
      if (g.size < least - 0.02) {
        small.add(g);
      }
    }
    assertThat(small).isEmpty();
  }

  private static final class Reader extends PDFTextStripper {
    private final List<Glyph> out;
    private int forms;
    private final Set<TextPosition> drawn = Collections.newSetFromMap(new IdentityHashMap<>());

    Reader(List<Glyph> out) {
      this.out = out;
    }

    @Override
    public void showForm(PDFormXObject form) throws IOException {
      forms++;
      super.showForm(form);
      forms--;
    }

    @Override
    protected void processTextPosition(TextPosition text) {
      if (forms > 0) {
        drawn.add(text);
      }
      super.processTextPosition(text);
    }

    @Override
    protected void endPage(PDPage page) {
      drawn.clear();
    }

    @Override
    protected void writeString(String text, List<TextPosition> glyphs) {
      for (TextPosition g : glyphs) {
        if (!g.getUnicode().isBlank()) {
          double size = g.getYScale();
          boolean upright = g.getDir() == 90;
          double along = g.getWidthDirAdj();
          double tall = size * TALL;
          double y = upright ? g.getY() - along : g.getY() - tall;
          out.add(
              new Glyph(
                  getCurrentPageNo(),
                  g.getUnicode(),
                  text,
                  upright ? g.getX() - tall : g.getX(),
                  y,
                  upright ? tall : along,
                  upright ? along : tall,
                  size,
                  g.getPageHeight() - g.getY(),
                  g.getPageWidth() > A4_WIDE_PT && g.getPageHeight() < A4_WIDE_PT,
                  drawn.contains(g)));
        }
      }
    }
  }

  private Glyphs() {}
}
