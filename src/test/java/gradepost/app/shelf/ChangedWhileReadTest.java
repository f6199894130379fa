package gradepost.app.shelf;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.Depot;
import gradepost.app.SyntheticNetwork;
import gradepost.app.store.Disk;
import gradepost.source.Sources;
import gradepost.source.file.DiskFiles;
import gradepost.source.file.SourceFiles;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Property: what is shown is what the files say, though they are written while they are read. */
class ChangedWhileReadTest {
  @TempDir private Path folder = Path.of("");

  /** Writes a file anew as soon as it was read. */
  private record Hasty(SourceFiles files, Path written, String anew) implements SourceFiles {
    @Override
    public Content read(String name) {
      return then(name, files.read(name));
    }

    @Override
    public Content namedBy(String by, String name) {
      return then(name, files.namedBy(by, name));
    }

    private Content then(String name, Content content) {
      if (Path.of(name).endsWith(written.getFileName())) {
        try {
          Files.writeString(written, anew);
        } catch (IOException e) {
          throw new UncheckedIOException(e);
        }
      }
      return content;
    }
  }

  @Test
  void aFileThatIsWrittenWhileItIsReadIsReadAgain() throws Exception {
    Path pack = new SyntheticNetwork(folder, 1).packs(1, 3).get(0);
    Path route = route(pack);
    String anew = Files.readString(route) + "# new\n";
    PackAtHand one = new PackAtHand(pack);
    one.now(new Sources(new Hasty(new DiskFiles(Path.of("")), route, anew)));
    PackAtHand.AsRead second = one.now(Disk.sources());
    assertThat(second.pack().orElseThrow().inputs())
        .anySatisfy(
            input -> assertThat(input.bytes()).asString(StandardCharsets.UTF_8).isEqualTo(anew));
    assertThat(one.now(Disk.sources())).isSameAs(second);
  }

  @Test
  void whatWasMadeOfNewFilesIsNotShownForOldOnes() throws Exception {
    Path pack = new SyntheticNetwork(folder, 1).packs(1, 3).get(0);
    String id = Disk.name(pack).replaceFirst(".*pack-(.*)\\.yaml", "$1");
    Shelf shelf = new Shelf(folder, Depot.NOON);
    OpenPapers papers = new OpenPapers(shelf, any -> false);
    ShelfPack old = shelf.pack(id).orElseThrow();
    String stem = old.whole().orElseThrow().papers().get(0).stem();
    String text = Files.readString(pack);
    Files.writeString(pack, text.replaceFirst("prepared-by: .*", "prepared-by: another person"));
    assertThat(shelf.pack(id).orElseThrow().whole().orElseThrow().preparedBy())
        .isEqualTo("another person");
    // Who asked before the edit gets what the files say now.
    assertThat(html(papers, old, stem)).contains("another person");
    Files.writeString(pack, text);
    ShelfPack back = shelf.pack(id).orElseThrow();
    assertThat(html(papers, back, stem)).doesNotContain("another person");
  }

  private static String html(OpenPapers papers, ShelfPack pack, String stem) throws IOException {
    byte[] html = papers.of(pack, stem).orElseThrow().file(".html").orElseThrow().bytes();
    return new String(html, StandardCharsets.UTF_8);
  }

  private static Path route(Path pack) throws IOException {
    String name = Files.readString(pack).replaceFirst("(?s).*?\\nroute: (\\S+).*", "$1");
    return Disk.folder(pack).resolve(name).normalize();
  }
}
