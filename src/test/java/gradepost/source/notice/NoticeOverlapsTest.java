package gradepost.source.notice;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeout;

import gradepost.pack.TemporaryRestriction;
import gradepost.pack.TemporaryRestriction.Status;
import gradepost.route.Path;
import gradepost.route.place.Direction;
import gradepost.source.Fixture;
import gradepost.source.Sources;
import gradepost.source.file.Input;
import gradepost.source.file.MemoryFiles;
import gradepost.source.pack.Amendment;
import gradepost.source.pack.PackFile;
import gradepost.yaml.Problem;
import gradepost.yaml.Reading;
import gradepost.yaml.Severity;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Property: the sweep finds what comparing each with each finds, and in a moment. */
@Tag("slow")
class NoticeOverlapsTest {
  private static final int NAMED = 5;

  private static String table(Random random, int rows) {
    StringBuilder out =
        new StringBuilder("reference,type,status,from,to,directions,lines,speed,imposed,until\n");
    for (int i = 0; i < rows; i++) {
      int from = random.nextInt(58);
      out.append(
          "T %d,temporary,%s,1m %02dch,1m %02dch,%s,%s,20 mph,2026-11-%02d 04:00,%s\n"
              .formatted(
                  i,
                  random.nextInt(6) == 0 ? "withdrawn" : "in force",
                  from,
                  from + 1 + random.nextInt(20),
                  List.of("both", "Down", "Up").get(random.nextInt(3)),
                  List.of("", "Down Main", "Up Main; Down Main", "Up Main").get(random.nextInt(4)),
                  1 + random.nextInt(10),
                  random.nextBoolean()
                      ? "further notice"
                      : "2026-11-%02d 04:00".formatted(11 + random.nextInt(10))));
    }
    return out.toString();
  }

  private static Reading<List<TemporaryRestriction>> reading(String table) {
    Fixture fixture = Fixture.good();
    PackFile pack = ((Reading.Good<PackFile>) fixture.sources().pack(Fixture.PACK)).value();
    fixture.put("n.csv", table);
    return fixture.sources().noticeFile("n.csv").read(pack);
  }

  @Test
  void eachPairIsFound() {
    for (int seed = 0; seed < 20; seed++) {
      var reading = reading(table(new Random(seed), 4 + 2 * seed));
      assertThat(reading).as(reading.problems().text()).isInstanceOf(Reading.Good.class);
      var notices = ((Reading.Good<List<TemporaryRestriction>>) reading).value();
      assertThat(
              reading.problems().all().stream()
                  .filter(p -> p.severity() == Severity.NOTE)
                  .map(Problem::what))
          .containsExactlyElementsOf(eachWithEach(notices));
    }
  }

  private static List<String> eachWithEach(List<TemporaryRestriction> notices) {
    Path path =
        new Path(
            ((Reading.Good<PackFile>) Fixture.good().sources().pack(Fixture.PACK)).value().route(),
            Direction.FORWARD);
    List<String> out = new ArrayList<>();
    for (int i = 0; i < notices.size(); i++) {
      TemporaryRestriction b = notices.get(i);
      int found = 0;
      for (TemporaryRestriction a : notices.subList(0, i)) {
        double from = Math.max(path.metresAt(a.extent().from()), path.metresAt(b.extent().from()));
        double to = Math.min(path.metresAt(a.extent().to()), path.metresAt(b.extent().to()));
        if (from < to && met(a, b) && ++found <= NAMED) {
          out.add(
              "%s and %s overlap from %s to %s: the lower speed applies there"
                  .formatted(a.reference(), b.reference(), path.text(from), path.text(to)));
        }
      }
      if (found > NAMED) {
        out.add(
            "%s overlaps %d more before it in the file: the lower speed applies there"
                .formatted(b.reference(), found - NAMED));
      }
    }
    return out;
  }

  private static boolean met(TemporaryRestriction a, TemporaryRestriction b) {
    boolean stand = a.status() != Status.WITHDRAWN && b.status() != Status.WITHDRAWN;
    boolean lines =
        a.applies().lines().isEmpty()
            || b.applies().lines().isEmpty()
            || a.applies().lines().stream().anyMatch(b.applies().lines()::contains);
    boolean ways = a.applies().directions().stream().anyMatch(b.applies().directions()::contains);
    boolean time =
        a.until().map(u -> u.isAfter(b.imposed())).orElse(true)
            && b.until().map(u -> u.isAfter(a.imposed())).orElse(true);
    return stand && lines && ways && time;
  }

  /** Far more than a line ever has; each with each takes minutes. */
  @Test
  void tenThousandRowsAreReadAndTakenIn() {
    String table = table(new Random(1), 10_000);
    PackFile pack = ((Reading.Good<PackFile>) Fixture.good().sources().pack(Fixture.PACK)).value();
    assertTimeout(
        Duration.ofMinutes(1),
        () -> {
          var notices = ((Reading.Good<List<TemporaryRestriction>>) reading(table)).value();
          assertThat(notices).hasSize(10_000);
          List<Input> inputs = Amendment.withNotices(pack, notices);
          var again = new Sources(new MemoryFiles(inputs)).pack(inputs.get(0).name());
          assertThat(((Reading.Good<PackFile>) again).value().notices())
              .hasSize(10_000 + pack.notices().size())
              .endsWith(notices.get(9_999));
        });
  }
}
