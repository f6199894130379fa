package gradepost.source;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import gradepost.text.Mistakes;
import gradepost.units.Parsed;
import gradepost.yaml.Problem;
import java.io.IOException;
import java.lang.reflect.Field;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Property: what the readers say about a file stands in catalogues. That every key has a text, with
 * the holes that are given, is checked where it is declared; what fills them, by the compiler.
 */
@AnalyzeClasses(packages = "gradepost", importOptions = ImportOption.DoNotIncludeTests.class)
class MistakeTextsTest {
  private static final Pattern TELLS =
      Pattern.compile("\\b(?:error|warn|note|with|declare|Unreadable|TableRefused)\\(");
  private static final Pattern LITERAL = Pattern.compile("\"((?:[^\"\\\\]|\\\\.)*)\"");

  /** Its texts are findings of the audit, which have a catalogue of their own. */
  private static final Set<String> OF_FINDINGS = Set.of("Audit", "BrakeForms");

  /** They hand on what another kind of text has found, with what they allow. */
  private static final Set<String> HAND_ON = Set.of("Moment$OpenEnd", "RotatingText");

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
    assertThat(catalogues).hasSizeGreaterThan(7);
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
              .map(JavaField::getName)
              .collect(Collectors.toSet());
      assertThat(used).as(catalogue.getName()).isEqualTo(declared);
    }
  }

  @ArchTest
  static void readersMakeNoProblemOfTheirOwnWords(JavaClasses classes) {
    assertThat(makers(classes, Problem.class)).isEqualTo(new TreeSet<>(OF_FINDINGS));
    assertThat(makers(classes, Parsed.Bad.class)).isEqualTo(new TreeSet<>(HAND_ON));
  }

  private static Set<String> makers(JavaClasses classes, Class<?> made) {
    return classes.stream()
        .filter(c -> c.getPackageName().startsWith("gradepost.source"))
        .filter(
            c ->
                c.getConstructorCallsFromSelf().stream()
                    .anyMatch(call -> call.getTargetOwner().isEquivalentTo(made)))
        .map(c -> c.getName().substring(c.getPackageName().length() + 1))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  @Test
  void noSentenceStandsInTheCode() throws IOException {
    List<String> found = new ArrayList<>();
    int calls = 0;
    try (Stream<Path> files = Files.walk(Path.of("src/main/java/gradepost/source"))) {
      for (Path file :
          (Iterable<Path>) files.filter(f -> f.toString().endsWith(".java"))::iterator) {
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
    assertThat(calls).isGreaterThan(300);
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
