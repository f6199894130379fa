package gradepost.app.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Property: a folder stands for the packs below it, in one order on every machine. */
class PackFilesTest {
  @TempDir Path folder;

  @Test
  void takesPacksBelowAFolderAndFilesAsNamed() throws IOException {
    Path b = touch("b/pack-two.yaml");
    Path a = touch("a/pack-one.yml");
    Path route = touch("a/route.yaml");
    touch("a/notes.txt");
    assertThat(PackFiles.packs(List.of(folder))).containsExactly(a, b);
    assertThat(PackFiles.packs(List.of(route, folder, b))).containsExactly(route, a, b);
    assertThat(PackFiles.all(List.of(folder))).containsExactly(a, route, b);
  }

  @Test
  void namesPapersAfterThePack() {
    assertThat(PackFiles.id(Path.of("routes/x/pack-valley.yaml"))).isEqualTo("valley");
    assertThat(PackFiles.id(Path.of("own.yml"))).isEqualTo("own");
  }

  @Test
  void tellsPacksApartWhosePapersWouldMeet() {
    Path first = Path.of("a/pack-x.yaml");
    assertThat(PackFiles.clash(List.of(first, Path.of("a/pack-y.yaml")))).isEmpty();
    assertThat(PackFiles.clash(List.of(first, Path.of("b/pack-x.yaml"))))
        .hasValue(
            "b/pack-x.yaml: error: the pack a/pack-x.yaml has the same id, x: their issues and papers would have the same names\n"
                + "  Maybe give this one its own by a line “id: b-x”");
  }

  private Path touch(String name) throws IOException {
    Path file = folder.resolve(name);
    Files.createDirectories(file.getParent());
    return Files.createFile(file);
  }
}
