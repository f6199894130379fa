package gradepost.render;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Optional;

/** Where templates and style sheets come from: a depot's folder, or the jar. */
@FunctionalInterface
public interface TemplateSource {
  /** The text of a file by its name, with no folder in it; empty where there is none. */
  Optional<String> text(String name) throws IOException;

  /** The templates that come with the program. */
  static TemplateSource bundled() {
    return name -> {
      try (InputStream in =
          TemplateSource.class.getResourceAsStream("/gradepost/templates/" + name)) {
        return in == null
            ? Optional.empty()
            : Optional.of(new String(in.readAllBytes(), StandardCharsets.UTF_8));
      }
    };
  }

  /** This one, and {@code other} for what it does not have: a depot edits only what it wants. */
  default TemplateSource orElse(TemplateSource other) {
    return name -> {
      Optional<String> own = text(name);
      return own.isPresent() ? own : other.text(name);
    };
  }
}
