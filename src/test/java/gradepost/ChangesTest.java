package gradepost;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Property: who takes a new version reads of every change whether a braking point moves by it. */
class ChangesTest {

  private static final Pattern VERSION =
      Pattern.compile("<artifactId>gradepost</artifactId>\\s*<version>([^<]+)</version>");

  @Test
  void theListOfChangesSaysOfEachWhetherPointsMove() throws IOException {
    Matcher version = VERSION.matcher(Files.readString(Path.of("pom.xml")));
    assertThat(version.find()).isTrue();
    String changes = Files.readString(Path.of("src/site/changes.md"));
    assertThat(changes).contains("\n## " + version.group(1) + "\n");
    assertThat(changes.lines().filter(line -> line.startsWith("|")).skip(2))
        .isNotEmpty()
        .allMatch(line -> line.matches("\\| .+ \\| (stay|may move: .+) \\|"));
  }
}
