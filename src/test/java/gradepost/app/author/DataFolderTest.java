package gradepost.app.author;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Property: a pack uses the files that it names, however it writes their names. */
class DataFolderTest {
  @TempDir private Path folder = Path.of("");

  private boolean uses(String pack, String file) throws Exception {
    Path line = Files.createDirectories(folder.resolve("line"));
    Path named = folder.resolve("line").resolve(file).normalize();
    Files.createDirectories(named.resolveSibling("."));
    Files.writeString(named, "gradepost: route\n");
    Path at = Files.writeString(line.resolve("pack-one.yaml"), "gradepost: pack\n" + pack + "\n");
    return new DataFolder(folder).packsWith(named.toRealPath()).contains(at.toRealPath());
  }

  @Test
  void aNameMayBeQuotedAndHaveBlanks() throws Exception {
    for (String name :
        new String[] {"route.yaml", "my route.yaml", "../stock/new unit.yml", "line #1.yaml"}) {
      for (String form :
          new String[] {
            "route: \"%s\"", "route: '%s'  # the line", "- \"%s\"", "[a.yaml, \"%s\"]"
          }) {
        assertThat(uses(form.formatted(name), name)).as(form.formatted(name)).isTrue();
      }
    }
    for (String plain : new String[] {"route: %s", "- %s # new", "{a: b.yaml, c: %s}"}) {
      assertThat(uses(plain.formatted("route.yaml"), "route.yaml")).as(plain).isTrue();
      assertThat(uses(plain.formatted("my route.yaml"), "my route.yaml")).as(plain).isTrue();
      assertThat(uses(plain.formatted("l#1.yaml"), "l#1.yaml")).as(plain).isTrue();
    }
  }

  @Test
  void whatIsCommentedOutIsNotUsed() throws Exception {
    assertThat(uses("# route: my route.yaml", "my route.yaml")).isFalse();
    assertThat(uses("title: the driver's # \"route.yaml\"", "route.yaml")).isFalse();
    assertThat(uses("route: old-route.yaml", "route.yaml")).isFalse();
    assertThat(uses("route: \"old route.yaml\"", "route.yaml")).isFalse();
  }
}
