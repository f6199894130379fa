package gradepost.text;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import java.io.IOException;
import java.lang.reflect.Field;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Property: what is said of data and plans stands in catalogues. That every key has a text, with
 * the holes that are given, is checked where it is declared; what fills them, by the compiler,
 * which lets no {@link gradepost.yaml.Problem} be made of anything but a {@link Mistake}.
 */
@AnalyzeClasses(packages = "gradepost", importOptions = ImportOption.DoNotIncludeTests.class)
class MistakeTextsTest {
  private static final Pattern TELLS =
      Pattern.compile(
          "\\b(?:error|warn|note|with|told|declare|Bad|IsNot|Problem|AuditFinding|Unreadable|TableRefused)\\(");
  private static final Pattern LITERAL = Pattern.compile("\"([^\"\\\\]*+(?:\\\\.[^\"\\\\]*+)*+)\"");

  /** Two words or more. */
  private static final Pattern WORDS = Pattern.compile("\\p{L}{2,}[,;:]? \\p{L}{2,}");

  /** Comments, which may say what they like. */
  private static final Pattern COMMENT =
      Pattern.compile("^ *(?:/\\*|\\*|//).*$", Pattern.MULTILINE);

  /** What is thrown at a programmer. */
  private static final Pattern THROWN = Pattern.compile("new \\w+Exception\\([^;]*;");

  /** Tables of nouns, units and notations, and one that knows the words of the YAML parser. */
  private static final Set<String> TABLES =
      Set.of(
          "QuantityKind.java",
          "GradientNotation.java",
          "MileageNotation.java",
          "MomentStyle.java",
          "YamlText.java");

  private static List<JavaClass> catalogues(JavaClasses classes) {
    return classes.stream()
        .filter(c -> c.getFields().stream().anyMatch(f -> holds(f, Mistakes.class)))
        .toList();
  }

  private static boolean holds(JavaField field, Class<?> type) {
    return field.getRawType().isEquivalentTo(type);
  }

  @ArchTest
  static void everyTextIsDeclared(JavaClasses classes) throws ReflectiveOperationException {
    List<JavaClass> catalogues = catalogues(classes);
    assertThat(catalogues).hasSizeGreaterThan(11);
    for (JavaClass each : catalogues) {
      Field field = each.reflect().getDeclaredField("MISTAKES");
      field.setAccessible(true);
      assertThat(((Mistakes) field.get(null)).unused()).as(each.getName()).isEmpty();
    }
  }

  @ArchTest
  static void everyDeclaredMistakeIsUsed(JavaClasses classes) {
    for (JavaClass catalogue : catalogues(classes)) {
      Set<String> used =
          classes.stream()
              .filter(c -> !c.equals(catalogue))
              .flatMap(c -> c.getFieldAccessesFromSelf().stream())
              .filter(a -> a.getTargetOwner().equals(catalogue))
              .map(a -> a.getName())
              .collect(Collectors.toSet());
      Set<String> declared =
          catalogue.getFields().stream()
              .filter(f -> !holds(f, Mistakes.class))
              .filter(f -> !f.getModifiers().contains(JavaModifier.PRIVATE))
              .map(JavaField::getName)
              .collect(Collectors.toSet());
      assertThat(used).as(catalogue.getName()).containsAll(declared);
    }
  }

  @ArchTest
  static void onlyACatalogueMakesAMistake(JavaClasses classes) {
    Set<String> makers =
        classes.stream()
            .flatMap(c -> c.getConstructorCallsFromSelf().stream())
            .filter(call -> call.getTargetOwner().isEquivalentTo(Mistake.class))
            .map(call -> call.getOriginOwner().getName())
            .collect(Collectors.toSet());
    assertThat(makers).containsExactly(Mistakes.class.getName());
  }

  /** What a reader hands to whatever tells it, or to a hole, is no sentence. */
  @Test
  void readersTellNoSentenceOfTheirOwn() throws IOException {
    List<String> found = new ArrayList<>();
    int calls = 0;
    for (String room : List.of("source", "yaml", "units", "route/audit", "app/issue")) {
      for (Path file : files(room)) {
        String code = Files.readString(file);
        Matcher tells = TELLS.matcher(code);
        while (tells.find()) {
          calls++;
          String told = code.substring(tells.end(), end(code, tells.end()));
          LITERAL
              .matcher(told)
              .results()
              .map(literal -> literal.group(1))
              .filter(words -> words.strip().contains(" "))
              .forEach(words -> found.add(file.getFileName() + ": " + words));
        }
      }
    }
    assertThat(found).isEmpty();
    assertThat(calls).isGreaterThan(450);
  }

  /** Below the readers no text stands in the code, nor does what is allowed, but for the tables. */
  @Test
  void noWordsStandInTheCodeOfKeyTablesAndQuantities() throws IOException {
    Map<String, String> found = new TreeMap<>();
    for (String room : List.of("yaml", "units")) {
      for (Path file : files(room)) {
        String code = COMMENT.matcher(Files.readString(file)).replaceAll("");
        LITERAL
            .matcher(THROWN.matcher(code).replaceAll(""))
            .results()
            .map(literal -> literal.group(1))
            .filter(words -> WORDS.matcher(words).find())
            .forEach(
                words -> found.merge(file.getFileName().toString(), words, "%s; %s"::formatted));
      }
    }
    assertThat(found).containsOnlyKeys(TABLES);
  }

  private static List<Path> files(String room) throws IOException {
    try (Stream<Path> files = Files.walk(Path.of("src/main/java/gradepost", room))) {
      List<Path> java = files.filter(f -> f.toString().endsWith(".java")).sorted().toList();
      assertThat(java).as(room).isNotEmpty();
      return java;
    }
  }

  /** Where the call that is open at {@code from} is closed. */
  private static int end(String code, int from) {
    int open = 1;
    for (int at = from; at < code.length(); at++) {
      char c = code.charAt(at);
      if (c == '"' || c == '\'') {
        int close = at + 1;
        while (code.charAt(close) != c) {
          close += code.charAt(close) == '\\' ? 2 : 1;
        }
        at = close;
      } else if (c == '(') {
        open++;
      } else if (c == ')' && --open == 0) {
        return at;
      }
    }
    throw new IllegalStateException("not closed");
  }
}
