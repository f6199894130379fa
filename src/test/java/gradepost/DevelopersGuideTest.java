package gradepost;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/**
 * Property: what DEVELOPERS.md names is there, every package is named in it, and its numbers of
 * formats are those of the sources.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class DevelopersGuideTest {
  private static final Pattern BLOCK = Pattern.compile("```\n(.*?)```", Pattern.DOTALL);
  private static final Pattern QUOTED = Pattern.compile("`([^`]+)`");
  private static final Pattern CLASS = Pattern.compile("[A-Z][A-Za-z0-9]*[a-z][A-Za-z0-9]*");
  private static final Pattern MEMBER = Pattern.compile("([A-Z]\\w*[a-z]\\w*)\\.(\\w+)");
  private static final Pattern FILE = Pattern.compile("[\\w.-]+\\.(properties|sql|xml)");
  private static final Pattern PACKAGE = Pattern.compile("[a-z]+(\\.[a-z]+)*");
  private static final Pattern PROFILE = Pattern.compile("-P (\\w+)");
  private static final Pattern TEST = Pattern.compile("-Dtest=(\\w+)");
  private static final Pattern TAG = Pattern.compile("@Tag\\(\"(\\w+)\"\\)");
  private static final Pattern PROPERTY = Pattern.compile("-D((?:static|werror)[\\w.]*)=");
  private static final Pattern FORMAT = Pattern.compile("`(\\w+)\\.(\\w+)`, (\\d+)");
  private static final Pattern TYPE =
      Pattern.compile("\\b(?:class|interface|record|enum) ([A-Z]\\w*)");

  /**
   * Lower-case words in quotes that are no packages: of Java, of YAML, of commands; and what all
   * are in.
   */
  private static final Set<String> WORDS =
      Set.of("gradepost", "double", "match", "check", "verify");

  /** Of libraries. */
  private static final Set<String> FOREIGN = Set.of("Optional");

  /** The text of the sources, by the types that stand in them. */
  private final Map<String, String> types = new HashMap<>();

  private final Set<String> packages = new HashSet<>();
  private final Set<String> files = new HashSet<>();
  private String pom = "";
  private String guide = "";

  @BeforeAll
  void read() throws IOException {
    guide = Files.readString(Path.of("DEVELOPERS.md"), UTF_8);
    pom = Files.readString(Path.of("pom.xml"), UTF_8);
    files.add("pom.xml");
    Path main = Path.of("src/main/java/gradepost");
    for (Path file : below(Path.of("src"))) {
      String name = file.getFileName().toString();
      files.add(name);
      if (!name.endsWith(".java")) {
        continue;
      }
      String text = Files.readString(file, UTF_8);
      Matcher type = TYPE.matcher(text);
      while (type.find()) {
        types.merge(type.group(1), text, String::concat);
      }
      if (name.equals("package-info.java") && file.startsWith(main)) {
        Path room = main.relativize(file.getParent());
        packages.add(room.toString().replace(room.getFileSystem().getSeparator(), "."));
      }
    }
  }

  @Test
  void whatTheGuideNamesIsThere() {
    assertThat(packages).hasSizeGreaterThan(30);
    assertThat(missing(guide)).isEmpty();
  }

  @Test
  void everyPackageIsNamed() {
    String words = BLOCK.matcher(guide).replaceAll("");
    assertThat(packages).allSatisfy(p -> assertThat(words.contains("`" + p + "`")).as(p).isTrue());
  }

  @Test
  void theNumbersOfFormatsAreThoseOfTheSources() {
    Matcher format = FORMAT.matcher(guide);
    int found = 0;
    for (; format.find(); found++) {
      assertThat(types.get(format.group(1)))
          .contains(" int " + format.group(2) + " = " + format.group(3) + ";");
    }
    assertThat(found).isEqualTo(3);
    String last =
        files.stream().filter(f -> f.matches("V\\d__.*sql")).max(Comparator.naturalOrder()).get();
    assertThat(guide).contains("`" + last + "`");
  }

  @Test
  void whatIsNotThereIsFound() {
    String text =
        """
        `NoSuchClass`, `Sheets.NO_SUCH`, `no.such`, `such.properties`, `@Tag("never")`, `drive.leg`
        `mvn test -P never -Dtest=NeverTest -Dstatic.never=1` `Sheets`, `Printed…`, `routes/`
        ```
        a NoBox > Planner
        ```
        """;
    assertThat(missing(text))
        .containsExactlyInAnyOrder(
            "NoBox",
            "NoSuchClass",
            "Sheets.NO_SUCH",
            "no.such",
            "such.properties",
            "tag never",
            "profile never",
            "NeverTest",
            "property static.never");
  }

  private List<String> missing(String text) {
    List<String> missing = new ArrayList<>();
    Matcher block = BLOCK.matcher(text);
    while (block.find()) {
      all(CLASS, block.group(1)).stream().filter(c -> !isType(c)).forEach(missing::add);
    }
    Matcher quoted = QUOTED.matcher(BLOCK.matcher(text).replaceAll(""));
    while (quoted.find()) {
      String name = quoted.group(1).replaceAll("\\s+", " ");
      if (!exists(name)) {
        missing.add(name);
      }
      all(TEST, name).stream().filter(t -> !isType(t)).forEach(missing::add);
      absent(PROFILE, name, "<id>%s</id>").forEach(p -> missing.add("profile " + p));
      absent(PROPERTY, name, "<%s>").forEach(p -> missing.add("property " + p));
      absent(TAG, name, "%s</excluded.tests>").forEach(t -> missing.add("tag " + t));
    }
    return missing;
  }

  /** Whether a name is there, if it is one of a class, a member, a file or a package. */
  private boolean exists(String name) {
    if (FILE.matcher(name).matches()) {
      return files.contains(name);
    }
    Matcher member = MEMBER.matcher(name);
    if (member.matches()) {
      String source = types.getOrDefault(member.group(1), "");
      return Pattern.compile("\\b" + member.group(2) + "\\b").matcher(source).find();
    }
    if (CLASS.matcher(name).matches()) {
      return isType(name);
    }
    return !PACKAGE.matcher(name).matches() || WORDS.contains(name) || packages.contains(name);
  }

  private boolean isType(String name) {
    return types.containsKey(name) || FOREIGN.contains(name);
  }

  /** What the build file does not have. */
  private List<String> absent(Pattern pattern, String name, String form) {
    return all(pattern, name).stream().filter(n -> !pom.contains(form.formatted(n))).toList();
  }

  private static List<String> all(Pattern pattern, String text) {
    return pattern
        .matcher(text)
        .results()
        .map(m -> m.groupCount() == 0 ? m.group() : m.group(1))
        .toList();
  }

  private static List<Path> below(Path folder) throws IOException {
    try (Stream<Path> paths = Files.walk(folder)) {
      return paths.filter(Files::isRegularFile).toList();
    }
  }
}
