package gradepost.source;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.source.file.SourceFiles;
import gradepost.source.pack.NoticeFile;
import gradepost.yaml.Problems;
import gradepost.yaml.Reading;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Property: what nobody typed is refused by its size, before any work that grows with it. */
class EndlessInputTest {
  private static String problems(String route) {
    byte[] bytes = route.getBytes(StandardCharsets.UTF_8);
    return new Sources(name -> new SourceFiles.Bytes(bytes)).route("route.yaml").problems().text();
  }

  @Test
  void keysWithoutEndAreOneProblem() {
    StringBuilder keys = new StringBuilder("gradepost: route\n");
    for (int i = 0; i < 20_000; i++) {
      keys.append("key").append(i).append(": 1\n");
    }
    assertThat(problems(keys.toString()))
        .isEqualTo("route.yaml:1:1: error: a route file has 20001 keys; allowed: 1000 at most\n");
  }

  @Test
  void aLineWithoutEndIsNotParsed() {
    assertThat(problems("gradepost: route\nname: " + "x".repeat(2_000_000) + "\n"))
        .isEqualTo(
            "route.yaml:2:1: error: the line has more than 20000 characters; allowed: 20000"
                + " characters at most\n");
  }

  @Test
  void aFileWithoutEndIsNotParsed() {
    assertThat(problems("gradepost: route\nname: " + "x y\n".repeat(1_000_000)))
        .isEqualTo("route.yaml:1:1: error: the file is larger than 4 MB; allowed: 4 MB at most\n");
  }

  @Test
  void aListThatIsWhollyWrongIsNotReadToItsEnd() {
    String yaml = Fixture.good().text(Fixture.ROUTE);
    StringBuilder gradients = new StringBuilder("gradients:\n");
    for (int i = 0; i < 19_000; i++) {
      gradients.append("  - {form: 1m}\n");
    }
    Reading<?> reading =
        new Sources(
                name ->
                    new SourceFiles.Bytes(
                        yaml.replace("gradients:\n", gradients + "gradients-2:\n")
                            .getBytes(StandardCharsets.UTF_8)))
            .route("route.yaml");
    assertThat(reading.problems().all()).hasSizeBetween(1000, 1100);
    assertThat(reading.problems().all())
        .anyMatch(p -> p.what().equals("after 1000 errors the rest of gradients was not read"));
  }

  private static Problems ofNotice(String name, String text) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    return new NoticeFile(new SourceFiles.Bytes(bytes), name).ofFile();
  }

  /** A notice is looked at by itself: a pack need not be read to refuse it. */
  @Test
  void aNoticeWithoutEndIsRefusedByItself() {
    StringBuilder keys = new StringBuilder();
    for (int i = 0; i < 20_000; i++) {
      keys.append("    key").append(i).append(": 1\n");
    }
    String one = "gradepost: restrictions\nnotices:\n  - reference: T 1\n" + keys;
    assertThat(ofNotice("n.yaml", one).text())
        .isEqualTo("n.yaml:3:5: error: a notice has 20001 keys; allowed: 1000 at most\n");
    String many = "gradepost: restrictions\nnotices:\n" + "  - {}\n".repeat(20_001);
    assertThat(ofNotice("n.yaml", many).text())
        .isEqualTo("n.yaml:3:3: error: notices has 20001 entries; allowed: 20000 at most\n");
    assertThat(ofNotice("n.csv", "reference\n" + "x\n".repeat(20_001)).text())
        .isEqualTo("n.csv:1:1: error: the table has too many rows; allowed: 20000 at most\n");
    assertThat(ofNotice("n.csv", "x,".repeat(1000) + "x\n").text())
        .isEqualTo("n.csv:1:1: error: the table has too many columns; allowed: 1000 at most\n");
    assertThat(ofNotice("n.csv", "reference\n" + "x\n".repeat(20_000)).text())
        .startsWith("n.csv:1:1: error: these columns are missing: type, status, from,");
  }

  @Test
  void aTableWithoutEndIsRefused() {
    String table = "from,to,gradient\n" + "0m 00ch,1m 00ch,level\n".repeat(20_001);
    Reading<String> reading =
        new RouteCsv(Fixture.good(), Fixture.ROUTE)
            .imported(
                List.of(
                    new RouteCsv.Table(
                        RouteList.GRADIENTS, "t.csv", table.getBytes(StandardCharsets.UTF_8))));
    assertThat(reading.problems().text())
        .isEqualTo("t.csv:1:1: error: the table has too many rows; allowed: 20000 at most\n");
  }
}
