package gradepost.briefing;

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

/**
 * Every text of a pack, by key. Another language or house style is another file with the same keys.
 *
 * <p>A text may hold {@code {0}} to {@code {9}}; nothing else in it is special.
 */
public final class Messages {
  private static final String ENGLISH = "messages.properties";

  private final Map<String, String> texts;

  private Messages(Map<String, String> texts) {
    this.texts = texts;
  }

  /** The texts that come with the program. */
  public static Messages english() {
    try (InputStream in = Messages.class.getResourceAsStream(ENGLISH)) {
      if (in == null) {
        throw new IllegalStateException(ENGLISH + " is missing");
      }
      return read(new InputStreamReader(in, StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Texts in the format of Java properties. */
  public static Messages read(Reader reader) throws IOException {
    Properties properties = new Properties();
    properties.load(reader);
    Map<String, String> texts = new TreeMap<>();
    properties.forEach((key, value) -> texts.put(key.toString(), value.toString()));
    return new Messages(texts);
  }

  public Set<String> keys() {
    return Set.copyOf(texts.keySet());
  }

  public boolean has(String key) {
    return texts.containsKey(key);
  }

  /** The text with its holes open. */
  public String raw(String key) {
    return Optional.ofNullable(texts.get(key)).orElse("");
  }

  /**
   * The text with its holes filled.
   *
   * @throws IllegalArgumentException when there is none, or a hole has nothing to fill it
   */
  public String text(String key, Object... holes) {
    String text = texts.get(key);
    if (text == null) {
      throw new IllegalArgumentException("no text for " + key);
    }
    if (text.indexOf('{') < 0) {
      return text;
    }
    StringBuilder out = new StringBuilder(text.length() + 32);
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == '{' && i + 2 < text.length() && text.charAt(i + 2) == '}') {
        int hole = text.charAt(i + 1) - '0';
        if (hole < 0 || hole >= holes.length) {
          throw new IllegalArgumentException(key + " wants {" + text.charAt(i + 1) + "}");
        }
        out.append(holes[hole]);
        i += 2;
      } else {
        out.append(c);
      }
    }
    return out.toString();
  }
}
