package gradepost.app.issue;

import java.util.Optional;

/** What made an issue, as the register keeps it. */
public final class Maker {
  /** The program by its version, the templates by their digest, and the Java. */
  public static String of(Layout layout) {
    String version =
        Optional.ofNullable(Maker.class.getPackage().getImplementationVersion())
            .orElse("built from source");
    return "gradepost %s, templates %s, Java %s"
        .formatted(version, layout.digest(), Runtime.version().feature());
  }

  private Maker() {}
}
