package gradepost.app;

import java.util.Optional;

/** What made an issue, as the register keeps it. */
final class Maker {
  static String of(Layout layout) {
    String version =
        Optional.ofNullable(Maker.class.getPackage().getImplementationVersion())
            .orElse("built from source");
    return "gradepost %s, templates %s, Java %s"
        .formatted(version, layout.digest(), Runtime.version().feature());
  }

  private Maker() {}
}
