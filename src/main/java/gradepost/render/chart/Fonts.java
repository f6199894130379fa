package gradepost.render.chart;

import java.io.IOException;
import java.io.InputStream;
import java.util.EnumMap;
import java.util.Map;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/**
 * The embedded faces, parsed once. Not for use by two threads at a time: a font is read lazily.
 *
 * <p>The processing of glyph substitutions (GSUB) is off: a pack needs none, and it costs ten times
 * all the rest.
 */
public final class Fonts {
  public static final String FAMILY = "Source Sans 3";

  /** A face that is embedded. */
  public enum Face {
    REGULAR("SourceSans3_400Regular.ttf", 400, false),
    ITALIC("SourceSans3_400Regular_Italic.ttf", 400, true),
    SEMIBOLD("SourceSans3_600SemiBold.ttf", 600, false),
    BOLD("SourceSans3_700Bold.ttf", 700, false);

    final String file;
    public final int weight;
    public final boolean italic;

    Face(String file, int weight, boolean italic) {
      this.file = file;
      this.weight = weight;
      this.italic = italic;
    }
  }

  private static final int LATIN = 0x250;
  private static final int SOFT_HYPHEN = 0xad;
  private final Map<Face, TrueTypeFont> faces = new EnumMap<>(Face.class);
  private final Map<Face, CmapLookup> lookups = new EnumMap<>(Face.class);
  private final Map<Face, double[]> widths = new EnumMap<>(Face.class);

  public Fonts() throws IOException {
    for (Face face : Face.values()) {
      TrueTypeFont font = new TTFParser().parse(new RandomAccessReadBuffer(bytes(face)));
      font.setEnableGsub(false);
      faces.put(face, font);
      lookups.put(face, font.getUnicodeCmapLookup());
    }
    for (Face face : Face.values()) {
      double[] table = new double[LATIN];
      for (int c = 0; c < LATIN; c++) {
        table[c] = Character.isISOControl(c) || c == SOFT_HYPHEN ? Double.NaN : advance(face, c);
      }
      widths.put(face, table);
    }
  }

  /** The file of a face, as it comes with the program. */
  public static byte[] bytes(Face face) throws IOException {
    try (InputStream in = Fonts.class.getResourceAsStream("/gradepost/fonts/" + face.file)) {
      if (in == null) {
        throw new IOException("font " + face.file + " is missing");
      }
      return in.readAllBytes();
    }
  }

  /** A face, read when it is first asked for. */
  public TrueTypeFont font(Face face) {
    TrueTypeFont font = faces.get(face);
    if (font == null) {
      throw new IllegalStateException("no face " + face);
    }
    return font;
  }

  private double advance(Face face, int codePoint) {
    try {
      TrueTypeFont font = font(face);
      return font.getAdvanceWidth(glyph(face, codePoint)) / (double) font.getUnitsPerEm();
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  private int glyph(Face face, int codePoint) {
    CmapLookup lookup = lookups.get(face);
    return lookup == null ? 0 : lookup.getGlyphId(codePoint);
  }

  /** Width of a text in points. */
  public double width(String text, Canvas.Type type) {
    Face face = type.bold() ? Face.BOLD : Face.REGULAR;
    double sum = latin(face, text);
    if (Double.isNaN(sum)) {
      sum = text.codePoints().mapToDouble(c -> advance(face, c)).sum();
    }
    return sum * type.size();
  }

  /** Width of a text in ems; not a number where it has more than plain printed Latin letters. */
  public double latin(Face face, String text) {
    double[] table = table(face);
    double sum = 0;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      sum += c < LATIN ? table[c] : Double.NaN;
    }
    return sum;
  }

  private double[] table(Face face) {
    double[] table = widths.get(face);
    if (table == null) {
      throw new IllegalStateException("no face " + face);
    }
    return table;
  }

  /**
   * Checks that every character can be printed in every face.
   *
   * @throws MissingGlyphException naming the first that cannot
   */
  public void require(String text) throws MissingGlyphException {
    for (int i = 0; i < text.length(); ) {
      int c = text.codePointAt(i);
      i += Character.charCount(c);
      if ((c >= 0x20 && c < 0x7f) || c == '\n' || c == '\t' || c == '\r') {
        continue;
      }
      for (Face face : Face.values()) {
        if (glyph(face, c) == 0) {
          throw new MissingGlyphException(c, text.strip());
        }
      }
    }
  }
}
