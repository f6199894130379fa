package gradepost.drive;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.Examples;
import gradepost.plan.Action;
import gradepost.plan.Approach;
import gradepost.plan.Command;
import gradepost.plan.Plan;
import gradepost.source.Frozen;
import gradepost.source.pack.DirectionPart;
import gradepost.source.pack.PackFile;
import gradepost.stock.Formation;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Property: on a terminal road that falls towards the buffer stops, where a train that is let go
 * gathers speed, the plan stands its own rerun, and the brake is not let go to be put on again at
 * once.
 */
@Tag("slow")
class FallingTerminalTest {
  private static final String LEVEL = "at: 2m 07ch}, gradient: level}";

  /** A driver keeps the brake on rather than ask for it again so soon after the release. */
  private static final double AT_ONCE_S = 2.5;

  @TempDir Path folder;

  static IntStream slopes() {
    return IntStream.of(100, 150, 260).limit(Examples.of(1, 3));
  }

  @ParameterizedTest
  @MethodSource("slopes")
  void thePlanStandsItsRerunAndKeepsTheBrakeOn(int slope) throws IOException {
    copy(Frozen.FOLDER, folder);
    Path route = folder.resolve("thrumble-valley/route.yaml");
    String text = Files.readString(route);
    assertThat(text).containsOnlyOnce(LEVEL);
    Files.writeString(
        route, text.replace(LEVEL, LEVEL.replace("level", "1 in " + slope + " falling")));
    PackFile pack = Frozen.pack(folder, Frozen.VALLEY);
    DirectionPart down = pack.directions().get(0);
    for (Formation formation : pack.formations()) {
      Plan plan = Planner.plan(pack.assignment(down, formation));
      assertThat(plan.failures()).isEmpty();
      Approach terminal = plan.approaches().get(plan.approaches().size() - 1);
      assertThat(terminal.applications()).hasSizeGreaterThan(1);
      keptOn(terminal.actions());
    }
  }

  /** From one application to what follows; a check of the speed lasts as long as it has to. */
  private static void keptOn(List<Action> actions) {
    boolean applied = false;
    double releasedS = Double.NEGATIVE_INFINITY;
    for (Action action : actions) {
      if (action.command() instanceof Command.Brake brake) {
        assertThat(action.timeS() - releasedS).as(action.toString()).isGreaterThan(AT_ONCE_S);
        applied = brake.stage() != Command.Stage.CHECK;
      } else if (action.command() instanceof Command.Release && applied) {
        releasedS = action.timeS();
      }
    }
  }

  private static void copy(Path from, Path to) throws IOException {
    try (Stream<Path> all = Files.walk(from)) {
      all.forEach(
          path -> {
            try {
              Path copy = to.resolve(from.relativize(path).toString());
              if (Files.isDirectory(path)) {
                Files.createDirectories(copy);
              } else {
                Files.copy(path, copy);
              }
            } catch (IOException e) {
              throw new UncheckedIOException(e);
            }
          });
    }
  }
}
