package gradepost.source.pack;

import gradepost.units.Parsed;
import gradepost.units.Parsed.Bad;
import gradepost.units.Parsed.Ok;
import gradepost.units.PrintedText;
import gradepost.yaml.OwnText;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * What a pack is called: in the register, and at the head of the names of its papers. It is part of
 * names of files and of issues such as valley/4.
 */
record PackId() implements OwnText<String> {
  private static final String PATTERN = "^[^\\s/\\\\:*?\"<>|.-][^/\\\\:*?\"<>|]{0,59}$";
  private static final Pattern NAME = Pattern.compile(PATTERN);

  private static final Pattern LINE =
      Pattern.compile(
          "(?m)^id:[ \\t]+(?:\"([^\"\\n]*)\"|'([^'\\n]*)'|([^#\"'\\n]*?))[ \\t]*\\r?(?:#.*)?$");

  /** What a line of a file says that cannot be read as a whole. */
  static Optional<String> lineOf(String text) {
    Matcher line = LINE.matcher(text);
    return line.find()
        ? Stream.of(1, 2, 3)
            .flatMap(group -> Optional.ofNullable(line.group(group)).stream())
            .filter(PackId::good)
            .findFirst()
        : Optional.empty();
  }

  /** What a pack is called that does not say so: {@code pack-valley.yaml} is {@code valley}. */
  static String of(String file) {
    String name = file.replaceFirst("\\.ya?ml$", "");
    return name.startsWith("pack-") ? name.substring("pack-".length()) : name;
  }

  @Override
  public List<String> patterns() {
    return List.of(PATTERN);
  }

  @Override
  public String allowed() {
    return "60 characters that can be part of the name of a file, such as valley";
  }

  @Override
  public Parsed<String> parse(String text) {
    Optional<String> meant =
        Optional.of(text.strip().replaceAll("[/\\\\:*?\"<>|]+", "-").replaceFirst("^[-.]+", ""))
            .filter(words -> good(words));
    return good(text)
        ? new Ok<>(text)
        : new Bad<>(
            (key, allowed, near) -> PackMistakes.NO_ID.with(key, text, allowed, near),
            meant.map(List::of).orElse(List.of()));
  }

  private static boolean good(String text) {
    return NAME.matcher(text).matches() && PrintedText.obstacle(text).isEmpty();
  }
}
