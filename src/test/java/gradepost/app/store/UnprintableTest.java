package gradepost.app.store;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.Examples;
import gradepost.app.Brief;
import gradepost.app.Check;
import gradepost.app.SyntheticNetwork;
import gradepost.yaml.Problem;
import gradepost.yaml.Problems;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.ScalarNode;
import org.yaml.snakeyaml.nodes.SequenceNode;

/**
 * Property: whatever value of whatever file has a character that no paper can print is refused by
 * {@code check} and by {@code brief}, at its place, and nothing else falls over it.
 */
@Tag("slow")
class UnprintableTest {
  /** As typed between quotation marks; a line break may stand in a sentence. */
  private static final List<String> BAD =
      List.of("\\U0001F682", "\\u202E", "\\e", "\\u65E5", "\\n");

  private static final int BRIEFED_OF = Examples.of(199, 197);

  private static final Map<String, String> FIXTURE = new LinkedHashMap<>();

  static {
    FIXTURE.put("line/route.yaml", "route.yaml");
    FIXTURE.put("line/restrictions.yaml", "restrictions.yaml");
    FIXTURE.put("line/pack-small.yaml", "pack.yaml");
    FIXTURE.put("stock/unit.yaml", "stock.yaml");
    FIXTURE.put("policy/depot.yaml", "policy.yaml");
  }

  @TempDir Path folder;

  private void layOut() throws IOException {
    for (Map.Entry<String, String> file : FIXTURE.entrySet()) {
      Path to = folder.resolve(file.getKey());
      Files.createDirectories(to.getParent());
      Files.copy(Path.of("src/test/resources/gradepost/source", file.getValue()), to);
    }
  }

  /** The values, not the keys, of a file. */
  private static List<ScalarNode> values(String text) {
    Node root = new Yaml(new SafeConstructor(new LoaderOptions())).compose(new StringReader(text));
    List<ScalarNode> values = new ArrayList<>();
    collect(root, values);
    return values;
  }

  private static void collect(Node node, List<ScalarNode> values) {
    if (node instanceof ScalarNode scalar) {
      values.add(scalar);
    } else if (node instanceof SequenceNode list) {
      list.getValue().forEach(each -> collect(each, values));
    } else if (node instanceof MappingNode group) {
      group.getValue().forEach(tuple -> collect(tuple.getValueNode(), values));
    }
  }

  private static String with(String text, ScalarNode value, String bad) {
    String typed = value.getValue().replace("\\", "\\\\").replace("\"", "\\\"");
    int half = Math.max(1, typed.length() / 2);
    half += half < typed.length() && typed.charAt(half - 1) == '\\' ? 1 : 0;
    return text.substring(0, value.getStartMark().getIndex())
        + '"'
        + typed.substring(0, half)
        + bad
        + typed.substring(half)
        + '"'
        + text.substring(value.getEndMark().getIndex());
  }

  private Answer brief(Path packs) {
    return new Brief(Optional.empty(), Brief.Wish.PAPERS, Progress.SILENT)
        .of(List.of(packs), folder.resolve("papers"));
  }

  private List<String> checked() {
    return new Check().of(List.of(folder)).problems();
  }

  /** What reading alone finds, with no train driven; of a pack with what it names. */
  private List<String> read(Path file) {
    Problems problems = Disk.sources().check(Disk.name(file));
    if (!PackFiles.isPack(file)) {
      Path pack = folder.resolve("line/pack-small.yaml");
      problems = problems.and(Disk.sources().check(Disk.name(pack)));
    }
    return problems.all().stream().map(Problem::text).toList();
  }

  @Test
  void everyValueOfEveryKindOfFileIsRefusedAtItsPlace() throws IOException {
    layOut();
    List<String> missed = new ArrayList<>();
    int each = 0;
    int tried = 0;
    int sentences = 0;
    for (String name : FIXTURE.keySet()) {
      Path file = folder.resolve(name);
      String text = Files.readString(file);
      for (ScalarNode value : values(text)) {
        for (String bad : BAD) {
          if (each++ % Examples.of(7, 1) != 0) {
            continue;
          }
          Files.writeString(file, with(text, value, bad));
          String place =
              "%s:%d:%d: error: "
                  .formatted(
                      file,
                      value.getStartMark().getLine() + 1,
                      value.getStartMark().getColumn() + 1);
          List<String> found = read(file);
          boolean told = found.stream().anyMatch(p -> p.startsWith(place));
          boolean sentence =
              bad.equals("\\n") && found.stream().noneMatch(p -> p.contains("error:"));
          sentences += sentence ? 1 : 0;
          if (!told && !sentence) {
            missed.add(place + bad + " " + found);
          }
          if (!sentence && tried++ % BRIEFED_OF == 0) {
            assertThat(checked()).as(place).anyMatch(p -> p.startsWith(place));
            Answer brief = brief(folder);
            assertThat(brief.written()).as(place).isEmpty();
            if (brief.problems().stream().noneMatch(p -> p.startsWith(place))) {
              missed.add("brief: " + place + bad + " " + brief.problems());
            }
          }
        }
      }
      Files.writeString(file, text);
    }
    assertThat(missed).isEmpty();
    assertThat(tried).isGreaterThan(Examples.of(140, 1000));
    assertThat(sentences).isGreaterThan(Examples.of(2, 10));
  }

  /** The names of ways are keys, and the name of a pack is that of its file. */
  @Test
  void namesThatAreNoValuesAreRefusedToo() throws IOException {
    layOut();
    Path pack = folder.resolve("line/pack-small.yaml");
    String text = Files.readString(pack);
    Files.writeString(pack, text.replace("{Millbeck Junction:", "{\"Millbeck\\u202E Junction\":"));
    assertThat(new Check().of(List.of(folder)).problems())
        .anyMatch(p -> p.matches("(?s).*pack-small.yaml:15:\\d+: error: .*U\\+202E.*"));
    Files.delete(pack);
    Path named = Files.writeString(folder.resolve("line/pack-日.yaml"), text);
    String said =
        named
            + ":1:1: error: the name of the file, which is printed on the papers, has 日 (U+65E5) in it, which"
            + " the papers cannot print; allowed: ";
    assertThat(new Check().of(List.of(folder)).problems()).anyMatch(p -> p.startsWith(said));
    assertThat(brief(folder).problems()).anyMatch(p -> p.startsWith(said));
  }

  @Test
  void onePackThatCannotBePrintedDoesNotKeepTheOthersBack() throws IOException {
    new SyntheticNetwork(folder.resolve("packs"), 1).packs(2, 3);
    Path bad = folder.resolve("packs/line-000/pack-0000.yaml");
    Files.writeString(
        bad, Files.readString(bad).replace("title: Pack 0000", "title: \"Pack \\U0001F682\""));
    Answer answer = brief(folder.resolve("packs"));
    assertThat(answer.good()).isFalse();
    assertThat(answer.problems()).anyMatch(p -> p.startsWith(bad + ":6:8: error: title \"Pack "));
    assertThat(answer.written().stream().map(p -> p.getFileName().toString()))
        .contains("0001-in-3-car.pdf")
        .noneMatch(name -> name.startsWith("0000"));
  }

  /** A depot's own words come past the readers. */
  @Test
  void whatATemplateCannotPrintIsToldForEachPack() throws IOException {
    new SyntheticNetwork(folder.resolve("packs"), 1).packs(2, 3);
    Path own = Files.createDirectory(folder.resolve("own"));
    try (Stream<Path> templates = Files.list(Path.of("templates"))) {
      for (Path template : templates.filter(Files::isRegularFile).toList()) {
        String text = Files.readString(template, StandardCharsets.UTF_8);
        Files.writeString(
            own.resolve(template.getFileName().toString()), text.replace("</h1>", " 日</h1>"));
      }
    }
    Answer answer =
        new Brief(Optional.of(own), Brief.Wish.PAPERS, Progress.SILENT)
            .of(List.of(folder.resolve("packs")), folder.resolve("papers"));
    assertThat(answer.problems())
        .anyMatch(p -> p.matches("(?s).*pack-0000.yaml: error: the font has no glyph for 日.*"))
        .anyMatch(p -> p.matches("(?s).*pack-0001.yaml: error: the font has no glyph for 日.*"));
  }
}
