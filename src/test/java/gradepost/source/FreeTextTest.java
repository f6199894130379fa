package gradepost.source;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.source.notice.NoticesTable;
import gradepost.source.pack.PackTable;
import gradepost.source.policy.PolicyTable;
import gradepost.source.route.PlaceKind;
import gradepost.source.route.RouteFrame;
import gradepost.source.route.RouteTable;
import gradepost.source.stock.StockTable;
import gradepost.yaml.Forms;
import gradepost.yaml.ListOf;
import gradepost.yaml.ListOr;
import gradepost.yaml.ObjectSchema;
import gradepost.yaml.Reader;
import gradepost.yaml.Scalar;
import gradepost.yaml.ValueType;
import gradepost.yaml.Variants;
import gradepost.yaml.WordMap;
import gradepost.yaml.WordOr;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.yaml.snakeyaml.DumperOptions.ScalarStyle;
import org.yaml.snakeyaml.error.Mark;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.Tag;

/**
 * Property: every place for words in the key tables of every kind of file refuses what no paper can
 * print, with its place; names stand on one line, sentences may have several.
 */
class FreeTextTest {
  private static final Map<String, String> BAD =
      Map.of(
          "emoji", "We\uD83D\uDE82ir",
          "bidirectional mark", "We\u202Eir",
          "escape", "We\u001Bir",
          "Chinese", "We\u65E5ir",
          "half of a pair", "We\uD83Dir");

  /** Each place by the keys that lead to it, and what may stand there. */
  private final Map<String, Scalar.Text> places = new LinkedHashMap<>();

  private final Set<ValueType<?>> met =
      java.util.Collections.newSetFromMap(new java.util.IdentityHashMap<>());

  private void walk(String path, ValueType<?> kind) {
    if (kind instanceof Scalar.Text text) {
      places.put(path, text);
      return;
    }
    if (!(kind instanceof Scalar<?>) && !met.add(kind)) {
      return;
    }
    if (kind instanceof ObjectSchema<?> shape) {
      shape.keys().forEach(key -> walk(path + "." + key.name(), key.kind()));
    } else if (kind instanceof ListOf<?> list) {
      walk(path + "[]", list.element());
    } else if (kind instanceof Variants<?> variants) {
      variants.shapes().forEach((word, shape) -> walk(path + "(" + word + ")", shape));
    } else if (kind instanceof WordOr<?> either) {
      walk(path, either.other());
    } else if (kind instanceof Forms<?> forms) {
      forms.forms().forEach((word, form) -> walk(path + "(" + word + ")", form));
    } else if (kind instanceof ListOr<?> either) {
      walk(path, either.list());
      walk(path, either.shape());
    } else if (kind instanceof WordMap map) {
      places.put(path + "{}", new Scalar.Text(map.valueNoun(), false));
    } else if (kind instanceof PlaceKind) {
      walk(path, PlaceKind.SECTIONED);
    }
  }

  private Map<String, Scalar.Text> places() {
    walk("route", RouteTable.ROUTE);
    walk("stock", StockTable.STOCK);
    walk("policy", PolicyTable.POLICY);
    walk("restrictions", NoticesTable.NOTICES_FILE);
    walk("pack", PackTable.PACK);
    return places;
  }

  /** The value that was read, or the problem's text. */
  private static String read(Scalar.Text kind, String words) {
    Mark mark = new Mark("", 0, 6, 10, new int[0], 0);
    Reader in = new Reader("a.yaml", RouteFrame.UNKNOWN);
    Optional<String> value =
        kind.read(
            new ScalarNode(Tag.STR, words, mark, mark, ScalarStyle.DOUBLE_QUOTED), "word", in);
    assertThat(value.isPresent()).isEqualTo(in.count() == 0);
    return value.orElseGet(() -> in.problems().text());
  }

  @Test
  void noWordsThatCannotBePrintedAreRead() {
    List<String> read = new ArrayList<>();
    Map<String, Scalar.Text> all = places();
    all.forEach(
        (path, kind) ->
            BAD.forEach(
                (what, words) -> {
                  String answer = read(kind, words);
                  if (!answer.startsWith("a.yaml:7:11: error: word \"We")
                      || !answer.contains("; allowed: " + kind.allowed())) {
                    read.add(path + ", " + what + ": " + answer);
                  }
                }));
    assertThat(read).isEmpty();
    assertThat(all.keySet())
        .hasSizeGreaterThan(70)
        .contains("route.stations[].name", "stock.handle-rules[]", "pack.issue.holder");
  }

  @Test
  void aNameStandsOnOneLineAndASentenceIsJoined() {
    Set<String> sentences = new TreeSet<>();
    places()
        .forEach(
            (path, kind) -> {
              String answer = read(kind, "Weir\n  Lane\u2028west");
              if (kind.lines()) {
                assertThat(answer).as(path).isEqualTo("Weir Lane west");
                sentences.add(path);
              } else {
                assertThat(answer)
                    .as(path)
                    .startsWith(
                        "a.yaml:7:11: error: word \"Weir Lane west\" has a line break or a tab in"
                            + " it; allowed: ")
                    .endsWith("\n  Maybe Weir Lane west\n");
              }
            });
    assertThat(sentences)
        .contains("route.description", "pack.high-risk[]")
        .noneMatch(path -> path.matches(".*\\.(name|short|id|reference|type|class|number)"));
  }
}
