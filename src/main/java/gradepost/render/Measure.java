package gradepost.render;

import com.openhtmltopdf.extend.FontContext;
import com.openhtmltopdf.pdfboxout.PdfBoxFSFont;
import com.openhtmltopdf.pdfboxout.PdfBoxTextRenderer;
import com.openhtmltopdf.render.FSFont;
import gradepost.render.chart.Fonts;
import java.util.IdentityHashMap;
import java.util.Map;
import org.apache.pdfbox.pdmodel.font.PDFont;

/**
 * Measures text for the layout by a table of widths. The library asks PDFBox, which encodes each
 * word anew: a quarter of all that a pack allocated. What the table does not hold, it still asks.
 */
final class Measure extends PdfBoxTextRenderer {
  private static final double NEAR_WHOLE = 0.01;
  private final IdentityHashMap<PDFont, Fonts.Face> faces = new IdentityHashMap<>();
  private final Fonts fonts;

  Measure(Fonts fonts, Map<Fonts.Face, PDFont> loaded) {
    this.fonts = fonts;
    loaded.forEach((face, font) -> faces.put(font, face));
  }

  @Override
  public int getWidth(FontContext context, FSFont font, String string) {
    PDFont first = ((PdfBoxFSFont) font).getFontDescriptions().get(0).getFont();
    Fonts.Face face = faces.get(first);
    double ems = face == null ? Double.NaN : fonts.latin(face, string);
    if (Double.isNaN(ems)) {
      return super.getWidth(context, font, string);
    }
    float width = (float) ems * font.getSize2D();
    double whole = Math.floor(width);
    return (int) (width - whole < NEAR_WHOLE ? whole : whole + 1);
  }
}
