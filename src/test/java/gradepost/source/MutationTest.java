package gradepost.source;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.Examples;
import gradepost.source.file.FileMistakes;
import gradepost.source.file.SourceFiles;
import gradepost.source.pack.PackFile;
import gradepost.yaml.Problem;
import gradepost.yaml.Reading;
import gradepost.yaml.YamlText;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.yaml.snakeyaml.nodes.MappingNode;
import org.yaml.snakeyaml.nodes.Node;
import org.yaml.snakeyaml.nodes.SequenceNode;

/**
 * Property: whatever is done to a file, reading answers within a second of work with a value or
 * with problems at places. The number of mutants is a system property, so that a long run can have
 * more of them ({@code mvn test -P long}).
 */
@Tag("slow")
class MutationTest {
  private static final int MUTANTS =
      Integer.getInteger("gradepost.mutants", Examples.of(300, 100_000));
  private static final long A_SECOND_NS = 1_000_000_000L;

  /** One in so many is of a demo pack, which is ten times as long as the fixture. */
  private static final int DEMO_EVERY = 20;

  private static final List<String> DEMO =
      List.of(
          "thrumble-valley/route.yaml",
          "thrumble-valley/restrictions.yaml",
          "thrumble-valley/pack-thrumble.yaml",
          "stock/moor-unit.yaml",
          "policy/miles-psi.yaml");

  /** Those that the demo's landmarks name; they stay as they are. */
  private static final List<String> PICTURES =
      List.of(
          "thrumble-valley/pictures/drovers-stone.png",
          "thrumble-valley/pictures/sallow-bed.png",
          "thrumble-valley/pictures/signal-fr-52.png",
          "thrumble-valley/pictures/telephone-post.png",
          "thrumble-valley/pictures/thrumble-mill.png",
          "thrumble-valley/pictures/tide-gauge-board.png");

  @Test
  void bytesLinesAndNodes() throws IOException {
    Map<String, byte[]> fixture = new LinkedHashMap<>();
    Fixture.ALL.forEach(file -> fixture.put(file, Fixture.good().bytes(file)));
    Map<String, byte[]> demo = new LinkedHashMap<>();
    for (String file : DEMO) {
      demo.put(file, Files.readAllBytes(Path.of("routes").resolve(file)));
    }
    Map<String, byte[]> pictures = new LinkedHashMap<>();
    for (String file : PICTURES) {
      pictures.put(file, Files.readAllBytes(Path.of("routes").resolve(file)));
    }
    int rejected = 0;
    for (int seed = 0; seed < MUTANTS; seed++) {
      boolean ofDemo = seed % DEMO_EVERY == 0;
      Map<String, byte[]> files = new LinkedHashMap<>(ofDemo ? demo : fixture);
      Random random = new Random(seed);
      List<String> names = List.copyOf(files.keySet());
      String file = names.get(random.nextInt(names.size()));
      int times = 1 + random.nextInt(3);
      for (int i = 0; i < times; i++) {
        files.put(file, mutant(files.get(file), random));
      }
      files.putAll(pictures);
      String pack = ofDemo ? DEMO.get(2) : Fixture.PACK;
      rejected += answers(files, pack, seed) ? 0 : 1;
    }
    assertThat(rejected).isBetween(MUTANTS / 4, MUTANTS - 1);
  }

  private static byte[] mutant(byte[] bytes, Random random) {
    return switch (random.nextInt(3)) {
      case 0 -> bytesOf(bytes, random);
      case 1 -> linesOf(bytes, random);
      default -> nodesOf(bytes, random);
    };
  }

  private static boolean answers(Map<String, byte[]> files, String pack, int seed) {
    Sources sources =
        new Sources(
            name ->
                files.containsKey(name)
                    ? new SourceFiles.Bytes(files.get(name))
                    : new SourceFiles.Unreadable(FileMistakes.NO_SUCH_FILE));
    ThreadMXBean clock = ManagementFactory.getThreadMXBean();
    long began = clock.getCurrentThreadCpuTime();
    Reading<PackFile> reading = sources.pack(pack);
    long took = clock.getCurrentThreadCpuTime() - began;
    assertThat(took)
        .as("ns for seed %d", seed)
        .isLessThan(seed < 50 ? 5 * A_SECOND_NS : A_SECOND_NS);
    for (Problem problem : reading.problems().all()) {
      assertThat(problem.spot().line()).as("seed %d", seed).isPositive();
      assertThat(problem.spot().column()).as("seed %d", seed).isPositive();
      assertThat(problem.what()).as("seed %d", seed).isNotBlank();
    }
    boolean good = reading instanceof Reading.Good;
    assertThat(reading.problems().hasErrors()).as("seed %d", seed).isNotEqualTo(good);
    return good;
  }

  /** The text of one node put in the place of another, or left out, or made a group or a list. */
  private static byte[] nodesOf(byte[] bytes, Random random) {
    String text = new String(bytes, StandardCharsets.UTF_8);
    List<int[]> spans = new ArrayList<>();
    YamlText.compose("x", bytes, p -> {}).ifPresent(root -> spans(root, 0, spans));
    if (spans.isEmpty() || text.length() != text.codePointCount(0, text.length())) {
      return linesOf(bytes, random);
    }
    int[] one = spans.get(random.nextInt(spans.size()));
    int[] other = spans.get(random.nextInt(spans.size()));
    String own = text.substring(one[0], one[1]);
    String by =
        switch (random.nextInt(7)) {
          case 0 -> text.substring(other[0], other[1]);
          case 1 -> "";
          case 2 -> "[" + own + "]";
          case 3 -> "{a: " + own + "}";
          case 4 -> "&x " + own;
          case 5 -> "*x";
          default -> "-" + own;
        };
    return (text.substring(0, one[0]) + by + text.substring(one[1]))
        .getBytes(StandardCharsets.UTF_8);
  }

  private static void spans(Node node, int depth, List<int[]> spans) {
    if (depth > 40) {
      return; // an alias of a group that holds it
    }
    if (depth > 0) {
      spans.add(new int[] {node.getStartMark().getIndex(), node.getEndMark().getIndex()});
    }
    if (node instanceof SequenceNode list) {
      list.getValue().forEach(each -> spans(each, depth + 1, spans));
    } else if (node instanceof MappingNode group) {
      group
          .getValue()
          .forEach(
              t -> {
                spans(t.getKeyNode(), depth + 1, spans);
                spans(t.getValueNode(), depth + 1, spans);
              });
    }
  }

  private static byte[] bytesOf(byte[] bytes, Random random) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    if (bytes.length == 0) {
      return bytes;
    }
    int at = random.nextInt(bytes.length);
    int length = Math.min(bytes.length - at, random.nextInt(4));
    out.write(bytes, 0, at);
    switch (random.nextInt(4)) {
      case 0 -> out.write(random.nextInt(256));
      case 1 -> out.writeBytes(Arrays.copyOfRange(bytes, at, at + length));
      case 2 -> out.write("0123456789:{}[]-&*\n \"".charAt(random.nextInt(21)));
      default -> out.writeBytes(new byte[0]);
    }
    out.write(bytes, at + length, bytes.length - at - length);
    return out.toByteArray();
  }

  private static byte[] linesOf(byte[] bytes, Random random) {
    String text = new String(bytes, StandardCharsets.UTF_8);
    List<String> lines = new ArrayList<>(Arrays.asList(text.split("\n", -1)));
    int one = random.nextInt(lines.size());
    int other = random.nextInt(lines.size());
    switch (random.nextInt(5)) {
      case 0 -> lines.remove(one);
      case 1 -> lines.add(other, lines.get(one));
      case 2 -> Collections.swap(lines, one, other);
      case 3 -> lines.set(one, "  " + lines.get(one));
      default -> lines.set(one, lines.get(one).replaceAll("\\d+", "" + random.nextInt(1000)));
    }
    return String.join("\n", lines).getBytes(StandardCharsets.UTF_8);
  }
}
