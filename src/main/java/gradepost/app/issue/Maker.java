package gradepost.app.issue;

import gradepost.app.store.Digest;
import gradepost.render.chart.Fonts;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** What made an issue, as the register keeps it. */
public final class Maker {
  /** The program by its version, the templates by their digest, and the Java. */
  public static String of(Layout layout) {
    return "gradepost %s, templates %s, Java %s"
        .formatted(version(), layout.digest(), Runtime.version().feature());
  }

  /** The version of the program. */
  public static String version() {
    return Optional.ofNullable(Maker.class.getPackage().getImplementationVersion())
        .orElse("built from source");
  }

  /**
   * What the bytes of a paper hang on beside its inputs: the maker, and the fonts that come with
   * the program. Two programs with the same digest make the same papers of the same inputs.
   */
  public static String digest(Layout layout) throws IOException {
    StringBuilder all = new StringBuilder(of(layout));
    for (Fonts.Face face : Fonts.Face.values()) {
      all.append(' ').append(Digest.of(Fonts.bytes(face)));
    }
    return Digest.of(all.toString().getBytes(StandardCharsets.UTF_8));
  }

  private Maker() {}
}
