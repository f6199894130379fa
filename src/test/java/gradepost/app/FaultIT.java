package gradepost.app;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Entry.Kept;
import gradepost.reissue.register.Question;
import gradepost.reissue.register.Register;
import gradepost.source.PackFile;
import gradepost.source.Reading;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Property: whatever ends a run, every issue is whole or is not there, and the next run completes
 * it. The runs are processes of their own, killed by SIGKILL or by a disk that takes no more.
 */
class FaultIT {
  @TempDir Path folder;

  private Path routes() {
    return folder.resolve("routes");
  }

  private Path out() {
    return folder.resolve("out");
  }

  private Store store() {
    return Store.of(folder.resolve("reg/register.db").toString(), Optional.empty());
  }

  private List<String> command(Path notice) {
    String classes =
        System.getProperty("surefire.test.class.path", System.getProperty("java.class.path", ""));
    return List.of(
        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
        "-XX:-UsePerfData",
        "-XX:TieredStopAtLevel=1",
        "-cp",
        classes,
        "gradepost.cli.Main",
        "reissue",
        routes().toString(),
        "--notice",
        notice.toString(),
        "--out",
        out().toString(),
        "--register",
        folder.resolve("reg/register.db").toString(),
        "--by",
        "a clerk");
  }

  private Process start(List<String> command) throws IOException {
    return new ProcessBuilder(command)
        .redirectErrorStream(true)
        .redirectOutput(folder.resolve("log").toFile())
        .start();
  }

  private Path notice(int number, int routes) throws IOException {
    StringBuilder text = new StringBuilder("gradepost: restrictions\nnotices:\n");
    for (int route = 0; route < routes; route++) {
      int speed = 20 + 5 * (number % 4);
      String one = SyntheticNetwork.notice("T " + number, route, "Out", 800 + 10 * number, speed);
      text.append(one.substring(one.indexOf("  - ")));
    }
    return Files.writeString(folder.resolve("notice-" + number + ".yaml"), text);
  }

  @Test
  void tenKillsLeaveEverythingWhole() throws Exception {
    kills(10, 4, 17);
  }

  @Test
  @Tag("long")
  void twoHundredKillsOfFiftyPacksLeaveEverythingWhole() throws Exception {
    kills(200, 50, 18);
  }

  private void kills(int wanted, int packs, long seed) throws Exception {
    new SyntheticNetwork(routes(), 2).packs(packs, 3);
    int lines = packs / 2;
    Random random = new Random(seed);
    int number = 1;
    int kills = 0;
    // How long a run takes here is learnt from the runs that were let be.
    long runMs = complete(notice(number, lines), number, lines);
    while (kills < wanted) {
      number++;
      boolean done = false;
      while (!done && kills < wanted) {
        Process run = start(command(notice(number, lines)));
        done = run.waitFor((long) (runMs * 1.1 * random.nextDouble()), TimeUnit.MILLISECONDS);
        if (!done) {
          run.destroyForcibly().waitFor();
          kills++;
        }
        whole();
      }
      runMs = Math.max(runMs / 2, complete(notice(number, lines), number, lines));
    }
  }

  /** A run that is let be; afterwards every line has one issue more. */
  private long complete(Path notice, int number, int lines) throws Exception {
    long start = System.nanoTime();
    Process run = start(command(notice));
    assertThat(run.waitFor()).as(() -> log()).isZero();
    long took = (System.nanoTime() - start) / 1_000_000;
    whole();
    try (Register register = store().open()) {
      assertThat(register.list(Question.issues()).rows()).hasSize(lines * (number + 1));
      for (int line = 0; line < lines; line++) {
        Entry latest = register.latest("%04d".formatted(2 * line)).orElseThrow();
        assertThat(latest.number()).isEqualTo(number + 1);
        assertThat(register.isDelivered(latest)).isTrue();
        assertThat(out().resolve(latest.pack() + "-issue-" + latest.number())).isDirectory();
      }
    }
    return took;
  }

  private String log() {
    try {
      return Files.readString(folder.resolve("log"));
    } catch (IOException e) {
      return e.toString();
    }
  }

  /** Everything that can be looked at is as it was or as it shall be. */
  private void whole() throws Exception {
    Archive archive = new Archive(store().archive());
    List<Entry> entries = new ArrayList<>();
    if (store().exists()) {
      try (Register register = store().open()) {
        for (List<String> row : register.list(Question.issues()).rows()) {
          entries.add(register.find(row.get(0)).orElseThrow());
        }
      }
    }
    for (Entry entry : entries) {
      assertThat(Kits.pack(archive, entry)).as(entry.name()).isPresent();
      for (Kept paper : entry.papers()) {
        assertThat(archive.read(paper.digest())).as(entry.name() + paper.name()).isPresent();
      }
      Path placed = out().resolve(entry.pack() + "-issue-" + entry.number());
      if (Files.exists(placed)) {
        for (Kept paper : entry.papers()) {
          assertThat(Digest.of(Files.readAllBytes(placed.resolve(paper.name()))))
              .isEqualTo(paper.digest());
        }
      }
    }
    try (Stream<Path> files = Files.walk(routes())) {
      for (Path file : files.filter(f -> f.toString().contains("pack-")).toList()) {
        if (!String.valueOf(file.getFileName()).startsWith(".")) {
          Reading<PackFile> pack = Disk.sources().pack(Disk.name(file));
          assertThat(pack).as(file + pack.problems().text()).isInstanceOf(Reading.Good.class);
        }
      }
    }
  }

  /** A limit on the size of files stands for a full disk: writing fails half way through a file. */
  @Test
  void aDiskThatTakesNoMoreLeavesTheOldIssueWhole() throws Exception {
    new SyntheticNetwork(routes(), 2).packs(2, 3);
    Path notice = notice(1, 1);
    String before = Files.readString(routes().resolve("line-000/pack-0000.yaml"));
    List<String> command =
        new ArrayList<>(List.of("bash", "-c", "ulimit -f 128; exec \"$@\"", "-"));
    command.addAll(command(notice));
    Process run = start(command);
    assertThat(run.waitFor()).as(() -> log()).isEqualTo(1);
    assertThat(log()).contains("error: ");
    assertThat(routes().resolve("line-000/pack-0000.yaml")).hasContent(before);
    assertThat(out()).doesNotExist();
    whole();
    complete(notice, 1, 1);
  }
}
