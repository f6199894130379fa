package gradepost.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** {@code desk --open} where no browser can be opened: it says so, and serves all the same. */
class OpenBrowserTest {
  @TempDir Path folder;

  /** No screen at all, and one that is named but not there, as after a connection has broken. */
  @ParameterizedTest
  @ValueSource(strings = {"", ":77"})
  void theAddressIsSaidAndServed(String display) throws Exception {
    ProcessBuilder builder =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-cp",
                System.getProperty(
                    "surefire.test.class.path", System.getProperty("java.class.path", "")),
                "gradepost.cli.Main",
                "desk",
                folder.toString(),
                "--listen",
                "127.0.0.1:0",
                "--register",
                folder.resolve("register.db").toString(),
                "--open")
            .redirectErrorStream(true);
    builder.environment().keySet().removeAll(List.of("DISPLAY", "WAYLAND_DISPLAY"));
    if (!display.isEmpty()) {
      builder.environment().put("DISPLAY", display);
    }
    Process desk = builder.start();
    try (BufferedReader said = desk.inputReader(StandardCharsets.UTF_8)) {
      String address = said.readLine().replaceFirst("^desk: ", "");
      assertThat(said.readLine()).startsWith("packs: ");
      assertThat(said.readLine()).contains("Stop with Ctrl+C");
      assertThat(said.readLine()).startsWith("This machine has no browser that could be opened");
      assertThat(new Browser(address).letIn().get("/").body()).contains("No pack lies");
    } finally {
      desk.destroyForcibly().waitFor();
    }
  }
}
