package gradepost.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Property: what is printed or said is written by the rules of {@link WordRules}: in every
 * catalogue, in the templates' own words and in the README. What a command says of itself is asked
 * where the commands are.
 */
class WordsTest {
  private static final Path RESOURCES = Path.of("src/main/resources/gradepost");
  private static final Path PRINTED = RESOURCES.resolve("briefing/messages.properties");

  /**
   * How the keys of texts begin that stand on none of the sheets which a driver reads in a hurry:
   * plates, cards, sheets of the line and of the road.
   */
  private static final List<String> ELSEWHERE =
      List.of(
          "addendum.",
          "affected.",
          "answered-for.",
          "ask.",
          "assumption.",
          "brake.",
          "caution.",
          "change",
          "chart.",
          "cover.",
          "degraded.",
          "document.",
          "edition.",
          "fault.",
          "found.",
          "in-full.",
          "layer.",
          "leaving.",
          "line.says",
          "method.",
          "missing.",
          "not-supplied.",
          "outcome.",
          "question.",
          "reading.",
          "reference.",
          "road.says",
          "score.",
          "signoff.",
          "slip",
          "stands.",
          "subject.",
          "summary.",
          "supplement.",
          "symbol.",
          "table.",
          "train.",
          "unit.");

  /** On the sheets again, though its key begins like one of those. */
  private static final List<String> ON_THE_SHEETS =
      List.of("table.lower.", "table.seldom.", "table.hazards.", "chart.last");

  /** What a rule would refuse, and why it stands. */
  private static final Map<String, String> EXCEPTIONS =
      Map.of(
          "method.emergency", "people may fall: no gradient and no other word",
          "degraded.5", "falling snow: no gradient and no other word",
          "gradient.falling", "the hole is the gradient",
          "gradient.down", "in the column of a gradient");

  /** Words that a paper does not print, by what it prints. */
  private static final Map<Pattern, String> NOT_PRINTED =
      Map.of(
          Pattern.compile("\\bat once\\b"), "immediately, or at that point",
          Pattern.compile("\\bways?\\b"), "route, side, method",
          Pattern.compile("\\bno longer\\b"), "not now, withdrawn");

  private static final Pattern LITERAL = Pattern.compile("\"(?:[^\"\\\\]|\\\\.)*\"");

  private static Map<String, String> texts(Path file) throws IOException {
    Properties properties = new Properties();
    try (Reader in = Files.newBufferedReader(file)) {
      properties.load(in);
    }
    Map<String, String> out = new TreeMap<>();
    properties.forEach((key, text) -> out.put(key.toString(), text.toString()));
    return out;
  }

  private static int most(String key) {
    boolean elsewhere = ELSEWHERE.stream().anyMatch(key::startsWith);
    return elsewhere && ON_THE_SHEETS.stream().noneMatch(key::startsWith)
        ? WordRules.LONG
        : WordRules.SHORT;
  }

  private static List<String> printed(String key, String text) {
    List<String> out = new ArrayList<>(WordRules.wrong(text, most(key)));
    NOT_PRINTED.forEach(
        (not, but) -> {
          if (not.matcher(text).find()) {
            out.add(not + ", write: " + but);
          }
        });
    return out;
  }

  @Test
  void everyTextOfThePapers() throws IOException {
    Map<String, String> texts = texts(PRINTED);
    assertThat(texts).hasSizeGreaterThan(1000);
    Map<String, List<String>> wrong = new TreeMap<>();
    texts.forEach((key, text) -> wrong.put(key, printed(key, text)));
    wrong.values().removeIf(List::isEmpty);
    assertThat(wrong).containsOnlyKeys(EXCEPTIONS.keySet());
  }

  /** Each way in which a key may begin is that of a text. */
  @Test
  void theListsAreOfKeysThatThereAre() throws IOException {
    Set<String> keys = texts(PRINTED).keySet();
    assertThat(Stream.concat(ELSEWHERE.stream(), ON_THE_SHEETS.stream()))
        .allMatch(begins -> keys.stream().anyMatch(key -> key.startsWith(begins)));
  }

  /** What is found in data, why a plan is unfit, what cannot be read. */
  @Test
  void everyMessageToAClerk() throws IOException {
    int catalogues = 0;
    Map<String, List<String>> wrong = new TreeMap<>();
    for (Path file : files(RESOURCES, ".properties")) {
      if (!file.equals(PRINTED)) {
        catalogues++;
        texts(file)
            .forEach(
                (key, text) -> wrong.put(file + ": " + key, WordRules.wrong(text, WordRules.LONG)));
      }
    }
    wrong.values().removeIf(List::isEmpty);
    assertThat(wrong).isEmpty();
    assertThat(catalogues).isGreaterThan(13);
  }

  /** Between tags, directives and holes a template has hardly a word of its own. */
  @Test
  void theTemplatesOwnWords() throws IOException {
    List<String> wrong = new ArrayList<>();
    List<Path> templates = files(Path.of("templates"), ".ftlh");
    for (Path file : templates) {
      for (String text : own(Files.readString(file))) {
        WordRules.wrong(text, WordRules.SHORT).forEach(w -> wrong.add(file + ": " + w));
      }
    }
    assertThat(wrong).isEmpty();
    assertThat(templates).hasSizeGreaterThan(15);
    assertThat(own("<p class=\"a\">${x}</p><#if a gt 1>The brake gives nothing.</#if>"))
        .containsExactly("The brake gives nothing.");
  }

  /** The words that a template prints whatever it is filled with. */
  private static List<String> own(String template) {
    String bare =
        template
            .replaceAll("(?s)<#--.*?-->", "\n")
            .replaceAll("(?s)<style.*?</style>", "\n")
            .replaceAll("(?s)\\$\\{(?:[^{}\"]|\"[^\"]*\")*}", " {hole} ")
            .replaceAll("(?s)</?[#@]?[\\w.]+(?:[^<>\"]|\"[^\"]*\")*>", "\n");
    return bare.lines()
        .map(String::strip)
        .filter(line -> line.matches(".*\\p{L}{3,}.*"))
        .filter(line -> !line.matches("(\\{hole}|\\W)*"))
        .toList();
  }

  /** Sentences to a clerk that still stand in the code: they are not counted, but looked at. */
  @Test
  void theSentencesInTheCode() throws IOException {
    List<String> wrong = new ArrayList<>();
    int literals = 0;
    for (String room : List.of("app", "cli", "reissue", "source")) {
      for (Path file : files(Path.of("src/main/java/gradepost", room), ".java")) {
        String code = Files.readString(file).replaceAll("\"\\s*\\+\\s*\"", "");
        for (MatchResult literal : LITERAL.matcher(code).results().toList()) {
          literals++;
          WordRules.instead(literal.group()).forEach(w -> wrong.add(file + ": " + w));
        }
      }
    }
    assertThat(wrong).isEmpty();
    assertThat(literals).isGreaterThan(1500);
  }

  /** The README without commands, tables and code. */
  @Test
  void theReadme() throws IOException {
    String prose =
        Files.readString(Path.of("README.md"))
            .replaceAll("(?s)```.*?```", "")
            .replaceAll("(?m)^[|!#].*$", "")
            .replaceAll("`[^`\n]*`", "code")
            .replaceAll("\\n\\n|\\n- ", "|")
            .replace('\n', ' ');
    assertThat(WordRules.wrong(prose, README)).isEmpty();
  }

  /** So long a sentence of the README may be: it is read at a desk. */
  private static final int README = 24;

  /** Texts as they stood once: each is refused, and for what it is planted for. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "If the EP brake gives nothing: Auto | gives nothing",
        "Auto full service is asked for 2 s later | is asked for",
        "It does it with {0} to spare | does it",
        "late if no brake is on by {0} | no brake is on",
        "the last recourse, never planned | last recourse",
        "The issue was made anew | anew",
        "What stands from now | What stands",
        "Whoever is listed is told | Whoever",
        "within so many days | so many",
        "the train comes to it at {1} | comes to",
        "The brake goes on at {1} | goes on",
        "the speed is falling to {0} | is for gradients",
        "board {0} stands at {1} | is for trains",
        "one; two; three | more than one semicolon",
        "a b c d e f g h i j k l m n {0} | 16 words, at most 15",
      })
  void aWrongTextIsRefused(String text, String why) {
    assertThat(printed("plate.planted", text)).anyMatch(w -> w.contains(why));
  }

  @Test
  void aRightTextIsNotRefused() {
    assertThat(
            printed("plate.planted", "Brake at {0}, count 12. The train stands at {1}; hold it."))
        .isEmpty();
    assertThat(printed("method.planted", "a b c d e f g h i j k l m n o p q r {0}")).isEmpty();
    assertThat(printed("plate.planted", "a way of driving")).hasSize(1);
  }

  private static List<Path> files(Path folder, String end) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      return files.filter(f -> f.toString().endsWith(end)).sorted().toList();
    }
  }
}
