package gradepost.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Comparator;
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
  void asARide() {
    refused("ride", "FILE", "--pack", clerk.pack.toString());
  }

  @Test
  void asAFolderOfTables() {
    String route = clerk.pack.resolveSibling("route.yaml").toString();
    for (Path input : List.of(pipe, ZERO)) {
      assertTimeoutPreemptively(
          BOUND, () -> clerk.types(1, "import", input.toString(), "--into", route));
      assertThat(clerk.err).contains(input + ": error: it is not a folder");
    }
  }

  @Test
  void asAPaperOrABackup() {
    String register = folder.resolve("reg/register.db").toString();
    refused("verify", "FILE", "--pack", clerk.pack.toString(), "--register", register);
    refused("register", "restore", "FILE", "--register", register);
  }

  @Test
  void whereThereIsARegister() throws Exception {
    clerk.enter();
    String register = folder.resolve("register.db").toString();
    String archive = folder.resolve("archive").toString();
    refused("register", "batch", "hand-out", "FILE", "--register", register, "--archive", archive);
    String routes = clerk.routes.toString();
    refused("reissue", routes, "--notice", "FILE", "--register", register, "--archive", archive);
    for (Path made : List.of(folder.resolve("papers"), folder.resolve("archive"))) {
      delete(made);
    }
    try (var files = Files.list(folder)) {
      for (Path file : files.filter(f -> f.toString().contains("register.db")).toList()) {
        Files.delete(file);
      }
    }
  }

  @Test
  void asATemplate() throws Exception {
    Path own = Files.createDirectory(folder.resolve("own"));
    Files.move(pipe, own.resolve("pack.ftlh"));
    String papers = folder.resolve("papers").toString();
    String templates = own.toString();
    assertTimeoutPreemptively(
        BOUND,
        () ->
            clerk.types(
                1, "brief", clerk.pack.toString(), "--templates", templates, "--out", papers));
    assertThat(clerk.err).contains("pack.ftlh: error: it is not a regular file");
    Files.move(own.resolve("pack.ftlh"), pipe);
    delete(own);
  }

  private static void delete(Path made) throws Exception {
    try (var files = Files.walk(made)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
  }

  @Test
  void asARegister() {
    refused("register", "out", "--register", "FILE");
    String archive = folder.resolve("archive").toString();
    String routes = clerk.routes.toString();
    refused("register", "enter", routes, "--register", "FILE", "--archive", archive);
  }
}
