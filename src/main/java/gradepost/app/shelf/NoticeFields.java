package gradepost.app.shelf;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A notice that was filled in field by field, as the text that a file would have. It is then read
 * and checked like any other: what is typed is put in quotation marks, whatever it is.
 *
 * @param typed by the names of the keys; and {@code warning-forward}, {@code warning-backward},
 *     where the warning boards stand, if they do
 */
public record NoticeFields(Map<String, String> typed) {
  /** The keys in the order of the form. */
  public static final List<String> KEYS =
      List.of(
          "route",
          "reference",
          "type",
          "status",
          "from",
          "to",
          "directions",
          "lines",
          "speed",
          "normal-speed",
          "reason",
          "imposed",
          "until",
          "hours",
          "changed-from");

  /** Where the warning boards stand, by direction. */
  public static final List<String> WARNINGS = List.of("warning-forward", "warning-backward");

  private static final Pattern SECTIONED = Pattern.compile("(.+?)\\s*\\((.+)\\)");

  /** Copies the map. */
  public NoticeFields {
    typed = Map.copyOf(typed);
  }

  private String of(String key) {
    return Optional.ofNullable(typed.get(key)).orElse("").strip();
  }

  /**
   * As YAML.
   *
   * @param line that it is for; its directions are named by it
   */
  public String yaml(NoticeLine line) {
    StringBuilder out = new StringBuilder("gradepost: restrictions\nnotices:\n");
    String begin = "  - ";
    for (String key : KEYS) {
      String value = of(key);
      if (!value.isEmpty()) {
        out.append(begin).append(key).append(": ").append(written(key, value)).append('\n');
        begin = "    ";
      }
    }
    boards(line, out);
    return out.toString();
  }

  private static String written(String key, String value) {
    return switch (key) {
      case "from", "to" -> place(value);
      case "imposed", "until", "changed-from" -> quoted(value.replace('T', ' '));
      case "lines" -> "[" + quoted(value) + "]";
      default -> quoted(value);
    };
  }

  private void boards(NoticeLine line, StringBuilder out) {
    String boards =
        trio(of("warning-forward"), of("from"), of("to"), line.forward())
            + trio(of("warning-backward"), of("to"), of("from"), line.backward());
    if (!boards.isEmpty()) {
      out.append("    boards:\n").append(boards);
    }
  }

  private static String trio(String warning, String begins, String ends, String direction) {
    return warning.isEmpty()
        ? ""
        : board("warning", warning, direction)
            + board("commencement", begins, direction)
            + board("termination", ends, direction);
  }

  private static String board(String kind, String at, String direction) {
    return "      - {kind: %s, at: %s, direction: %s}\n"
        .formatted(kind, place(at), quoted(direction));
  }

  private static String place(String typed) {
    Matcher sectioned = SECTIONED.matcher(typed);
    return sectioned.matches()
        ? "{section: %s, at: %s}".formatted(quoted(sectioned.group(2)), quoted(sectioned.group(1)))
        : quoted(typed);
  }

  /** In the double quotation marks of YAML: nothing that is typed ends them. */
  private static String quoted(String text) {
    StringBuilder out = new StringBuilder("\"");
    text.codePoints()
        .forEach(
            c -> {
              if (c == '"' || c == '\\') {
                out.append('\\').appendCodePoint(c);
              } else if (c < ' '
                  || c == 0x7f
                  || (c >= 0x80 && c < 0xa0)
                  || c == 0x2028
                  || c == 0x2029) {
                out.append("\\u%04x".formatted(c));
              } else {
                out.appendCodePoint(c);
              }
            });
    return out.append('"').toString();
  }
}
