package gradepost.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Property: an approach that cannot be braked for is told once: which, why, and what would help.
 */
class UnfitTest {
  @TempDir Path folder;

  private static List<String> errors(Path pack) {
    return new Check()
        .of(List.of(pack)).problems().stream().filter(p -> p.contains(": error: ")).toList();
  }

  /** The line with a fall of 1 in 30, and a brake that is worth less than that. */
  @BeforeEach
  void weak() throws IOException {
    copy("policy");
    copy("stock");
    copy("unbrakeable");
    Path stock = folder.resolve("stock/weak-unit.yaml");
    Files.writeString(
        stock,
        Files.readString(stock)
            .replaceFirst("mean-deceleration: [0-9.]+ m/s2", "mean-deceleration: 0.15 m/s2"));
  }

  @Test
  void aFallThatIsMoreThanTheBrake() {
    assertThat(errors(folder.resolve("unbrakeable/pack.yaml")))
        .singleElement()
        .asString()
        .contains("cannot be braked for the stop at Nettlecombe, platform 1 (2m 25ch). ")
        .contains("does not slow it on 1 in 30 falling at ")
        .contains(". What would help: a train with a stronger brake [plan-unfit]");
  }

  /** With a lower speed on the fall too: one line, not one for each of what comes of it. */
  @Test
  void oneLineForAllThatComesOfIt() throws IOException {
    Path route = folder.resolve("unbrakeable/route.yaml");
    String lower =
        "  - {name: Long curve, from: 1m 20ch, to: 2m 79ch, speed: 15 mph, directions: Down}\n";
    Files.writeString(
        route,
        Files.readString(route).replaceFirst("(?m)^(  - \\{name: Line speed.*\n)", "$1" + lower));
    assertThat(errors(folder.resolve("unbrakeable/pack.yaml")))
        .singleElement()
        .asString()
        .contains("the train cannot be braked for ", "on 1 in 30 falling", "What would help: ");
  }

  private void copy(String name) throws IOException {
    try (Stream<Path> files = Files.walk(SmallLines.FOLDER.resolve(name))) {
      for (Path from : files.toList()) {
        Path to = folder.resolve(SmallLines.FOLDER.relativize(from).toString());
        if (Files.isDirectory(from)) {
          Files.createDirectories(to);
        } else {
          Files.copy(from, to);
        }
      }
    }
  }
}
