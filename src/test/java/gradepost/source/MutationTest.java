package gradepost.source;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/**
 * Property: whatever is done to a file, reading answers with a value or with problems at places.
 */
class MutationTest {
  private static final int MUTANTS = 2_000;

  @Test
  void bytesAndLines() {
    int rejected = 0;
    for (int seed = 0; seed < MUTANTS; seed++) {
      Random random = new Random(seed);
      Fixture fixture = Fixture.good();
      String file = Fixture.ALL.get(random.nextInt(Fixture.ALL.size()));
      int times = 1 + random.nextInt(3);
      for (int i = 0; i < times; i++) {
        byte[] bytes = fixture.bytes(file);
        fixture.put(file, random.nextBoolean() ? bytesOf(bytes, random) : linesOf(bytes, random));
      }
      rejected += answers(fixture, seed) ? 0 : 1;
    }
    assertThat(rejected).isBetween(MUTANTS / 4, MUTANTS - 1);
  }

  private static boolean answers(Fixture fixture, int seed) {
    Reading<PackFile> reading = fixture.sources().pack(Fixture.PACK);
    for (Problem problem : reading.problems().all()) {
      assertThat(problem.spot().line()).as("seed %d", seed).isPositive();
      assertThat(problem.spot().column()).as("seed %d", seed).isPositive();
      assertThat(problem.what()).as("seed %d", seed).isNotBlank();
    }
    boolean good = reading instanceof Reading.Good;
    assertThat(reading.problems().hasErrors()).as("seed %d", seed).isNotEqualTo(good);
    return good;
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
