package gradepost.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A text with named holes, {@code {place}}; a name is made of small letters, digits and hyphens.
 *
 * @param raw as it stands in its file
 * @param between what stands before, between and behind the holes: one more than there are holes
 * @param holes their names, in their order
 */
record Text(String raw, List<String> between, List<String> holes) {
  private static final Pattern HOLE = Pattern.compile("\\{([a-z0-9-]+)\\}");

  Text {
    between = List.copyOf(between);
    holes = List.copyOf(holes);
  }

  static Text of(String raw) {
    List<String> between = new ArrayList<>();
    List<String> holes = new ArrayList<>();
    Matcher hole = HOLE.matcher(raw);
    int at = 0;
    while (hole.find()) {
      between.add(raw.substring(at, hole.start()));
      holes.add(hole.group(1));
      at = hole.end();
    }
    between.add(raw.substring(at));
    return new Text(raw, between, holes);
  }

  /**
   * The text with its holes filled.
   *
   * @param key of the text, for the message
   */
  String filled(String key, Function<String, Optional<String>> value) {
    if (holes.isEmpty()) {
      return raw;
    }
    StringBuilder out = new StringBuilder(raw.length() + 32);
    for (int i = 0; i < holes.size(); i++) {
      String name = holes.get(i);
      out.append(between.get(i))
          .append(
              value.apply(name).orElseThrow(() -> new TextFault(key + " wants {" + name + "}")));
    }
    return out.append(between.get(holes.size())).toString();
  }
}
