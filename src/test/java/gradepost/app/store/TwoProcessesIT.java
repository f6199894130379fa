package gradepost.app.store;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.Examples;
import gradepost.app.RealRuns;
import gradepost.app.SyntheticNetwork;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Property: of two runs, each a process of its own, one waits or is told who is at work. */
class TwoProcessesIT {
  private static final int LINES = Examples.of(1, 3);
  @TempDir Path folder;
  private RealRuns runs = new RealRuns(Path.of(""), Path.of(""));

  @BeforeEach
  void network() throws Exception {
    Path routes = folder.resolve("routes");
    new SyntheticNetwork(routes, 2).packs(2 * LINES, 11);
    runs = new RealRuns(routes, folder);
  }

  @Test
  void bothAtOnceIssueEverythingOnce() throws Exception {
    Path notice = RealRuns.notice(folder, 1, LINES);
    List<Path> logs = List.of(folder.resolve("log-0"), folder.resolve("log-1"));
    Process first = runs.start(logs.get(0), runs.command(notice, "--wait", "120"));
    Process second = runs.start(logs.get(1), runs.command(notice, "--wait", "120"));
    assertThat(first.waitFor()).as(Files.readString(logs.get(0))).isZero();
    assertThat(second.waitFor()).as(Files.readString(logs.get(1))).isZero();
    List<String> summaries =
        Stream.of(Files.readString(logs.get(0)), Files.readString(logs.get(1)))
            .map(
                log ->
                    log.lines()
                        .filter(l -> l.startsWith(2 * LINES + " packs: "))
                        .findFirst()
                        .orElse(log))
            .sorted()
            .toList();
    assertThat(summaries)
        .containsExactly(
            "%d packs: %d not touched, %d had the notice already"
                .formatted(2 * LINES, LINES, LINES),
            "%d packs: %d not touched, %d issued".formatted(2 * LINES, LINES, LINES));
    runs.completed(1, LINES);
  }

  @Test
  @Tag("long")
  void differentNoticesAtOnceAreBothTakenIn() throws Exception {
    Path one = RealRuns.notice(folder, 1, LINES);
    Path two = RealRuns.notice(folder, 2, LINES);
    Process first = runs.start(folder.resolve("log-0"), runs.command(one, "--wait", "120"));
    Process second = runs.start(folder.resolve("log-1"), runs.command(two, "--wait", "120"));
    assertThat(first.waitFor()).as(Files.readString(folder.resolve("log-0"))).isZero();
    assertThat(second.waitFor()).as(Files.readString(folder.resolve("log-1"))).isZero();
    runs.completed(2, LINES);
    assertThat(Files.readString(folder.resolve("routes/line-000/restrictions.yaml")))
        .contains("T 1", "T 2");
  }

  @Test
  void whoMayNotWaitIsToldWhoIsAtWorkAndWhoMayGetsItsTurn() throws Exception {
    Path notice = RealRuns.notice(folder, 1, LINES);
    Process patient;
    try (Lock lock = runs.store().take("B Clerk (process 1) since noon", Duration.ZERO)) {
      lock.require();
      Path log = folder.resolve("log-0");
      Process refused = runs.start(log, runs.command(notice, "--wait", "0"));
      assertThat(refused.waitFor()).isEqualTo(1);
      assertThat(Files.readString(log))
          .contains("lock is held by B Clerk (process 1) since noon; nothing was done");
      patient = runs.start(folder.resolve("log-1"), runs.command(notice, "--wait", "120"));
      assertThat(patient.waitFor(2, TimeUnit.SECONDS)).isFalse();
      assertThat(runs.out()).doesNotExist();
    }
    assertThat(patient.waitFor()).as(Files.readString(folder.resolve("log-1"))).isZero();
    runs.completed(1, LINES);
  }
}
