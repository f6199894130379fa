package gradepost.app.author;

import gradepost.source.Schemas;
import gradepost.source.file.FileKind;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The keys of a kind of file, explained. */
public final class KeyHelp {
  private static final int DEEPEST = 8;

  /**
   * A key.
   *
   * @param in the keys within which it stands, joined by full stops; empty text at the top
   * @param required whether it has to be there
   * @param words what may stand behind it, where only some words may
   */
  public record KeyRow(String in, String key, String says, boolean required, List<String> words) {
    /** Copies the list. */
    public KeyRow {
      words = List.copyOf(words);
    }
  }

  /** The kinds of file that have keys. */
  public static List<String> kinds() {
    return Arrays.stream(FileKind.values()).map(FileKind::word).toList();
  }

  /** Every key of a kind, in the order of its table; none where the word is of no kind. */
  public static List<KeyRow> of(String kind) {
    Optional<FileKind> known =
        Arrays.stream(FileKind.values()).filter(k -> k.word().equals(kind)).findFirst();
    Map<String, KeyRow> out = new LinkedHashMap<>();
    known.ifPresent(k -> walk(Schemas.of(k), "", 0, out));
    return List.copyOf(out.values());
  }

  /** A schema is a tree of maps and lists, whatever its branches are called. */
  private static void walk(Map<?, ?> schema, String in, int depth, Map<String, KeyRow> out) {
    if (depth > DEEPEST) {
      return;
    }
    List<?> required = schema.get("required") instanceof List<?> names ? names : List.of();
    if (schema.get("properties") instanceof Map<?, ?> keys) {
      keys.forEach(
          (key, value) -> {
            if (value instanceof Map<?, ?> each) {
              add(in, String.valueOf(key), each, required.contains(key), out);
              walk(each, in.isEmpty() ? "" + key : in + "." + key, depth + 1, out);
            }
          });
    }
    if (schema.get("items") instanceof Map<?, ?> items) {
      walk(items, in, depth + 1, out);
    }
    for (String branch : List.of("anyOf", "allOf")) {
      if (schema.get(branch) instanceof List<?> any) {
        any.forEach(
            each -> {
              if (each instanceof Map<?, ?> one) {
                walk(one, in, depth + 1, out);
              }
            });
      }
    }
  }

  private static void add(
      String in, String key, Map<?, ?> value, boolean required, Map<String, KeyRow> out) {
    KeyRow known = out.get(in + "." + key);
    Set<String> words = new LinkedHashSet<>(known == null ? List.of() : known.words());
    words.addAll(words(value));
    String says = value.get("description") instanceof String text ? text : "";
    if (known != null && !known.says().isEmpty()) {
      says = known.says();
    }
    out.put(
        in + "." + key,
        new KeyRow(
            in,
            key,
            says,
            required && (known == null || known.required()),
            new ArrayList<>(words)));
  }

  private static List<String> words(Map<?, ?> value) {
    List<String> out = new ArrayList<>();
    if (value.get("enum") instanceof List<?> words) {
      words.forEach(word -> out.add(String.valueOf(word)));
    }
    if (value.get("const") instanceof String word) {
      out.add(word);
    }
    if (value.get("anyOf") instanceof List<?> any) {
      any.forEach(each -> out.addAll(each instanceof Map<?, ?> one ? words(one) : List.of()));
    }
    return out;
  }

  private KeyHelp() {}
}
