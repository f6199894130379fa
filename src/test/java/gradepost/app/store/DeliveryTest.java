package gradepost.app.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Property: papers are in their place whole, or those of the last issue are. */
class DeliveryTest {
  @TempDir Path folder;

  @Test
  void makesTheFolderAndReplacesTheLastIssue() throws IOException {
    Path deeper = folder.resolve("a/b");
    new Delivery(deeper).put(List.of(paper("p.html", "old")));
    List<Path> placed =
        new Delivery(deeper).put(List.of(paper("p.html", "new"), paper("p.json", "{}")));
    assertThat(placed).containsExactly(deeper.resolve("p.html"), deeper.resolve("p.json"));
    assertThat(deeper.resolve("p.html")).hasContent("new");
    assertThat(names(deeper)).containsExactly("p.html", "p.json");
  }

  @Test
  void leavesTheLastIssueWhereAPaperCannotBeWritten() throws IOException {
    new Delivery(folder).put(List.of(paper("p.html", "old")));
    Paper impossible = paper("q".repeat(300), "longer than any file system lets a name be");
    assertThatThrownBy(() -> new Delivery(folder).put(List.of(paper("p.html", "new"), impossible)))
        .isInstanceOf(IOException.class);
    assertThat(folder.resolve("p.html")).hasContent("old");
    assertThat(names(folder)).containsExactly("p.html");
  }

  @Test
  void refusesANameThatLeadsOut() throws IOException {
    Path out = Files.createDirectories(folder.resolve("out"));
    for (String name : List.of("../p.html", "a/p.html", "/p.html", "..", ".")) {
      assertThatThrownBy(() -> new Delivery(out).put(List.of(paper(name, "x"))))
          .hasMessage("the name " + name + " leads out of the folder " + out);
      assertThatThrownBy(() -> new Delivery(out).putTogether(name, List.of(paper("p", "x"))))
          .isInstanceOf(IOException.class);
    }
    assertThat(names(folder)).containsExactly("out");
    assertThat(names(out)).isEmpty();
  }

  private static Paper paper(String name, String text) {
    return new Paper(name, text.getBytes(StandardCharsets.UTF_8));
  }

  private static List<String> names(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(f -> f.getFileName().toString()).sorted().toList();
    }
  }
}
