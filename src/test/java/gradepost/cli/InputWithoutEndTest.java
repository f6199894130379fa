package gradepost.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Property: what has no end, or waits for somebody, is refused by every command that reads it. */
class InputWithoutEndTest {
  private static final Path ZERO = Path.of("/dev/zero");

  /** Far longer than a refusal takes; a command that reads on never ends. */
  private static final Duration BOUND = Duration.ofSeconds(60);

  @TempDir Path folder;
  private Clerk clerk;
  private Path pipe;

  @BeforeEach
  void pipe() throws Exception {
    assumeTrue(Files.exists(ZERO));
    clerk = new Clerk(folder).at("2026-11-29T09:00");
    pipe = folder.resolve("pipe");
    assumeTrue(new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor() == 0);
    clerk.register(1, "out");
  }

  @AfterEach
  void nothingWasMade() throws Exception {
    try (var files = Files.list(folder)) {
      assertThat(files.map(Path::getFileName).map(Path::toString))
          .containsExactlyInAnyOrder("routes", "pipe");
    }
  }

  private void refused(String... words) {
    for (Path input : List.of(pipe, ZERO)) {
      String[] typed = new String[words.length];
      for (int i = 0; i < words.length; i++) {
        typed[i] = words[i].replace("FILE", input.toString());
      }
      assertTimeoutPreemptively(BOUND, () -> clerk.types(1, typed), String.join(" ", typed));
      assertThat(clerk.err)
          .contains(input.toString(), "not a regular file")
          .doesNotContain("Exception");
    }
  }

  @Test
  void asAPack() {
    refused("check", "FILE");
    refused("brief", "FILE", "--out", folder.resolve("papers").toString());
    refused("show", "FILE");
  }

  @Test
  void asATable() {
    String route = clerk.pack.resolveSibling("route.yaml").toString();
    refused("import", "gradients", "FILE", "--into", route);
  }

  @Test
  void asAPaperOrABackup() {
    String register = folder.resolve("reg/register.db").toString();
    refused("verify", "FILE", "--pack", clerk.pack.toString(), "--register", register);
    refused("register", "restore", "FILE", "--register", register);
  }

  @Test
  void asARegister() {
    refused("register", "out", "--register", "FILE");
    String archive = folder.resolve("archive").toString();
    String routes = clerk.routes.toString();
    refused("register", "enter", routes, "--register", "FILE", "--archive", archive);
  }
}
