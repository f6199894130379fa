package gradepost.briefing;

import gradepost.text.Catalogue;
import java.io.IOException;
import java.io.Reader;
import java.util.Optional;
import java.util.Set;

/**
 * Every text of a pack, by key. Another language or house style is another file with the same keys.
 *
 * <p>A text may hold {@code {0}} to {@code {9}}; nothing else in it is special.
 */
public final class Messages {
  private static final Messages ENGLISH =
      new Messages(Catalogue.beside(Messages.class, "messages.properties"));

  private final Catalogue texts;

  private Messages(Catalogue texts) {
    this.texts = texts;
  }

  /** The texts that come with the program. */
  public static Messages english() {
    return ENGLISH;
  }

  /** Texts in the format of Java properties. */
  public static Messages read(Reader reader) throws IOException {
    return new Messages(Catalogue.read(reader));
  }

  /** Every key. */
  public Set<String> keys() {
    return texts.keys();
  }

  /** Whether there is a text for a key. */
  public boolean has(String key) {
    return texts.has(key);
  }

  /** The text with its holes open. */
  public String raw(String key) {
    return texts.raw(key);
  }

  /**
   * The text with its holes filled.
   *
   * @throws IllegalArgumentException when there is none, or a hole has nothing to fill it
   */
  public String text(String key, Object... holes) {
    return texts.text(
        key,
        name -> {
          int hole = name.charAt(0) - '0';
          return name.length() == 1 && hole >= 0 && hole < holes.length
              ? Optional.of(String.valueOf(holes[hole]))
              : Optional.empty();
        });
  }
}
