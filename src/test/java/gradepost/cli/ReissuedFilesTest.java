package gradepost.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Property: a reissue leaves line ends and links of the files that it changes as they are. */
@Tag("slow")
class ReissuedFilesTest {
  @TempDir Path folder;

  private static void windows(Path file) throws Exception {
    Files.writeString(file, Files.readString(file).replace("\n", "\r\n"));
  }

  private static void assertWindows(Path file, String... words) throws Exception {
    String text = Files.readString(file);
    assertThat(text.replace("\r\n", "")).doesNotContain("\n", "\r");
    assertThat(text).contains(words);
  }

  /**
   * As a depot has them that shares one list of restrictions among packs and edits it on Windows.
   */
  @Test
  void windowsLineEndsAndLinksStay() throws Exception {
    Clerk clerk = new Clerk(folder).at("2026-11-29T09:00");
    Path list = clerk.pack.resolveSibling("restrictions.yaml");
    Path shared = clerk.routes.resolve("stock/shared.yaml");
    Files.move(list, shared);
    Files.createSymbolicLink(list, Path.of("../stock/shared.yaml"));
    Path kept = clerk.routes.resolve("stock/kept.yaml");
    Files.move(clerk.pack, kept);
    Files.createSymbolicLink(clerk.pack, Path.of("../stock/kept.yaml"));
    for (Path file : List.of(shared, kept, clerk.pack.resolveSibling("route.yaml"))) {
      windows(file);
    }
    clerk.enter();
    String entry = Clerk.entry("T 12", 900, 1400, 40, "2026-11-26 04:00", "2026-12-24 04:00");
    clerk.notice(0, "twelve", entry);
    assertThat(list).isSymbolicLink();
    assertThat(clerk.pack).isSymbolicLink();
    assertWindows(shared, "\"T 12\"");
    assertWindows(kept, "number: 2\r\n");
    clerk.notice(
        0, "thirteen", Clerk.entry("T 13", 1900, 2400, 40, "2026-11-26 04:00", "2026-12-24 04:00"));
    assertWindows(shared, "\"T 12\"", "\"T 13\"");
    assertWindows(kept, "number: 3\r\n");
    assertThat(clerk.office(0, "reproduce", "0000/3")).contains("byte for byte");
  }

  @Test
  void aLinkThatLeadsOutIsRefusedAndNothingOfItsTargetIsToldOrChanged() throws Exception {
    Clerk clerk = new Clerk(folder).at("2026-11-29T09:00");
    Path list = clerk.pack.resolveSibling("restrictions.yaml");
    clerk.enter();
    Path outside = Files.move(list, folder.resolve("elsewhere.yaml"));
    String before = Files.readString(outside);
    Files.createSymbolicLink(list, outside);
    clerk.notice(
        1, "twelve", Clerk.entry("T 12", 900, 1400, 40, "2026-11-26 04:00", "2026-12-24 04:00"));
    assertThat(clerk.err)
        .contains(
            "pack-0000.yaml:5:16: error: the file "
                + list
                + " cannot be read:"
                + " it is a link that leads out of the folders of the data\n")
        .endsWith("error: nothing was issued: the notice and every pack have to be readable\n");
    assertThat(list).isSymbolicLink();
    assertThat(outside).content().isEqualTo(before);
    assertThat(clerk.pack).content().contains("number: 1\n");
  }
}
