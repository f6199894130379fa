package gradepost.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledIf;
import org.junit.jupiter.api.io.TempDir;

/**
 * Property: whatever ends a run, every issue is whole or is not there, and the next run completes
 * it. The runs are processes of their own, killed by SIGKILL or by a disk that takes no more.
 */
class FaultIT {
  @TempDir Path folder;
  private RealRuns runs = new RealRuns(Path.of(""), Path.of(""));

  @BeforeEach
  void network() {
    runs = new RealRuns(routes(), folder);
  }

  private Path routes() {
    return folder.resolve("routes");
  }

  private int run(List<String> command) throws Exception {
    return runs.start(folder.resolve("log"), command).waitFor();
  }

  private String log() {
    try {
      return Files.readString(folder.resolve("log"));
    } catch (IOException e) {
      return e.toString();
    }
  }

  @Test
  void aFewKillsLeaveEverythingWhole() throws Exception {
    kills(2, 2, 17);
  }

  @Test
  @Tag("long")
  void twoHundredKillsOfFiftyPacksLeaveEverythingWhole() throws Exception {
    kills(Integer.getInteger("gradepost.kills", 200), 50, 18);
  }

  /**
   * A run goes on where the one before was killed, so kills that come soon after the start meet
   * every part of the work in turn.
   */
  private void kills(int wanted, int packs, long seed) throws Exception {
    new SyntheticNetwork(routes(), 2).packs(packs, 3);
    int lines = packs / 2;
    Random random = new Random(seed);
    int number = 1;
    int kills = 0;
    complete(number, lines);
    // How long a run takes here that has nothing to do.
    long idleMs = complete(number, lines);
    while (kills < wanted) {
      number++;
      Path notice = RealRuns.notice(folder, number, lines);
      boolean done = false;
      while (!done && kills < wanted) {
        Process run = runs.start(folder.resolve("log"), runs.command(notice));
        done = run.waitFor((long) (idleMs * 2 * random.nextDouble()), TimeUnit.MILLISECONDS);
        if (!done) {
          run.destroyForcibly().waitFor();
          kills++;
        }
        runs.whole();
      }
      if (done) {
        runs.completed(number, lines);
      } else {
        complete(number, lines);
      }
    }
    runs.forget();
    runs.whole();
    System.out.printf("%d kills of %d packs, %d notices%n", kills, packs, number);
  }

  /** A run that is let be, and how long it took in milliseconds. */
  private long complete(int number, int lines) throws Exception {
    long start = System.nanoTime();
    int code = run(runs.command(RealRuns.notice(folder, number, lines)));
    assertThat(code).as(() -> log()).isZero();
    long took = (System.nanoTime() - start) / 1_000_000;
    runs.completed(number, lines);
    return took;
  }

  /** Writing fails half way through a file, whoever runs it. */
  @Test
  void aLimitOnTheSizeOfFilesLeavesTheOldIssueWhole() throws Exception {
    new SyntheticNetwork(routes(), 2).packs(2, 3);
    Path notice = RealRuns.notice(folder, 1, 1);
    Path pack = routes().resolve("line-000/pack-0000.yaml");
    String before = Files.readString(pack);
    List<String> command =
        new ArrayList<>(List.of("bash", "-c", "ulimit -f 128; exec \"$@\"", "-"));
    command.addAll(runs.command(notice));
    assertThat(run(command)).isEqualTo(1);
    assertThat(log()).contains("error: ").doesNotContain("Exception");
    assertThat(pack).hasContent(before);
    assertThat(runs.out()).doesNotExist();
    runs.whole();
    complete(1, 1);
  }

  static boolean canMount() throws IOException, InterruptedException {
    if (!"root".equals(System.getProperty("user.name"))) {
      return false;
    }
    Path at = Files.createTempDirectory("gradepost-mount-");
    boolean mounted = quietly("mount", "-t", "tmpfs", "-o", "size=64k", "tmpfs", at.toString());
    if (mounted) {
      quietly("umount", at.toString());
    }
    Files.delete(at);
    return mounted;
  }

  private static boolean quietly(String... command) throws IOException, InterruptedException {
    try {
      return new ProcessBuilder(command)
              .redirectErrorStream(true)
              .redirectOutput(ProcessBuilder.Redirect.DISCARD)
              .start()
              .waitFor()
          == 0;
    } catch (IOException e) {
      return false;
    }
  }

  /** The papers stay in the archive until the folder lets itself be written. */
  @Test
  @EnabledIf("canMount")
  void aFolderThatMayOnlyBeReadIsTold() throws Exception {
    new SyntheticNetwork(routes(), 2).packs(2, 3);
    Path out = Files.createDirectories(runs.out());
    Path notice = RealRuns.notice(folder, 1, 1);
    assertThat(quietly("mount", "-t", "tmpfs", "-o", "ro,size=9m", "tmpfs", out.toString()))
        .isTrue();
    try {
      assertThat(run(runs.command(notice))).isEqualTo(1);
      assertThat(log())
          .contains(out + "/", ": error: the disk can only be read")
          .contains("Maybe run it again when the cause is removed: 0000/2 is registered")
          .doesNotContain("Exception");
      assertThat(Files.readString(routes().resolve("line-000/pack-0000.yaml")))
          .contains("number: 1");
      assertThat(quietly("mount", "-o", "remount,rw", out.toString())).isTrue();
      complete(1, 1);
    } finally {
      quietly("umount", out.toString());
    }
  }

  /**
   * Everything lies on a small disk of its own, which has a little more room each time: it fills at
   * the archive, the register, the papers, until it holds all.
   */
  @Test
  @Tag("long")
  @EnabledIf("canMount")
  void aDiskThatFillsAnywhereLeavesEverythingWhole() throws Exception {
    Path disk = Files.createDirectory(folder.resolve("disk"));
    assertThat(quietly("mount", "-t", "tmpfs", "-o", "size=400k", "tmpfs", disk.toString()))
        .isTrue();
    try {
      Path packs = disk.resolve("routes");
      new SyntheticNetwork(packs, 2).packs(2, 3);
      runs = new RealRuns(packs, disk);
      Path notice = RealRuns.notice(folder, 1, 1);
      int full = 0;
      int code = 1;
      for (int size = 400; code != 0 && size < 20_000; size += size / 10) {
        assertThat(quietly("mount", "-o", "remount,size=" + size + "k", disk.toString())).isTrue();
        code = run(runs.command(notice));
        assertThat(log()).doesNotContain("Exception").doesNotContain("\tat ");
        if (code != 0) {
          full++;
          assertThat(log()).contains("error: ");
          runs.whole();
        }
      }
      assertThat(code).as(() -> log()).isZero();
      assertThat(full).isGreaterThan(10);
      runs.completed(1, 1);
    } finally {
      quietly("umount", disk.toString());
    }
  }
}
