package gradepost.render;

import freemarker.cache.TemplateLoader;
import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** Hands templates to FreeMarker: plain names only, read once. */
final class SourceLoader implements TemplateLoader {
  private record Found(String name, String text) {}

  private final TemplateSource source;

  SourceLoader(TemplateSource source) {
    this.source = source;
  }

  @Override
  public @Nullable Object findTemplateSource(String name) throws IOException {
    if (name.contains("/") || name.contains("\\")) {
      return null;
    }
    Optional<String> text = source.text(name);
    return text.isPresent() ? new Found(name, text.get()) : null;
  }

  @Override
  public long getLastModified(Object found) {
    return 0;
  }

  @Override
  public Reader getReader(Object found, String encoding) {
    return new StringReader(((Found) found).text());
  }

  @Override
  public void closeTemplateSource(Object found) {}
}
