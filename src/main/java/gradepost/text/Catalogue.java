package gradepost.text;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;
import java.util.Properties;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;

/** Texts by key. A text may hold named holes; nothing else in it is special. */
public final class Catalogue {
  private final Map<String, Text> texts;

  private Catalogue(Map<String, Text> texts) {
    this.texts = texts;
  }

  /**
   * The texts of a file that lies beside a class, in the format of Java properties.
   *
   * @throws IllegalStateException when there is no such file
   */
  public static Catalogue beside(Class<?> neighbour, String file) {
    try (InputStream in = neighbour.getResourceAsStream(file)) {
      if (in == null) {
        throw new IllegalStateException(file + " is missing");
      }
      return read(new InputStreamReader(in, StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Texts in the format of Java properties. */
  public static Catalogue read(Reader reader) throws IOException {
    Properties properties = new Properties();
    properties.load(reader);
    Map<String, Text> texts = new TreeMap<>();
    properties.forEach((key, value) -> texts.put(key.toString(), Text.of(value.toString())));
    return new Catalogue(texts);
  }

  /** Every key. */
  public Set<String> keys() {
    return Set.copyOf(texts.keySet());
  }

  /** Whether there is a text for a key. */
  public boolean has(String key) {
    return texts.containsKey(key);
  }

  /** The text with its holes open; empty where there is none. */
  public String raw(String key) {
    return Optional.ofNullable(texts.get(key)).map(Text::raw).orElse("");
  }

  /** The names of the holes of a text; none where there is no text. */
  public Set<String> holes(String key) {
    return Optional.ofNullable(texts.get(key)).map(t -> Set.copyOf(t.holes())).orElse(Set.of());
  }

  /**
   * The text with its holes filled.
   *
   * @param values by the names of the holes
   * @throws TextFault when there is no text, or a hole has nothing to fill it
   */
  public String text(String key, Map<String, String> values) {
    return text(key, name -> Optional.ofNullable(values.get(name)));
  }

  /**
   * The text with its holes filled.
   *
   * @param value what stands in a hole, by its name
   * @throws TextFault when there is no text, or a hole has nothing to fill it
   */
  public String text(String key, Function<String, Optional<String>> value) {
    return Optional.ofNullable(texts.get(key))
        .orElseThrow(() -> new TextFault("no text for " + key))
        .filled(key, value);
  }
}
