package gradepost.source.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Property: a disk answers with bytes or with a reason in words. */
class DiskFilesTest {
  @TempDir Path folder = Path.of("");

  private String why(String name) {
    return ((SourceFiles.Unreadable) new DiskFiles(folder).read(name)).why();
  }

  @Test
  void readsBytesByRelativeName() throws IOException {
    Files.createDirectory(folder.resolve("a"));
    Files.writeString(folder.resolve("b.yaml"), "x");
    SourceFiles.Content content = new DiskFiles(folder).read("a/../b.yaml");
    assertThat(((SourceFiles.Bytes) content).bytes()).containsExactly('x');
  }

  @Test
  void saysWhyNot() throws IOException {
    Files.write(folder.resolve("large.yaml"), new byte[4_000_001]);
    assertThat(why("none.yaml")).isEqualTo("there is no such file");
    assertThat(why("")).isEqualTo("it is a folder");
    assertThat(why("a\0b")).isEqualTo("it is not a valid file name");
    assertThat(why("large.yaml")).isEqualTo("it is larger than 4 MB");
  }

  @Test
  void aRecorderMayWriteMoreThanPeopleType() throws IOException {
    Files.write(folder.resolve("ride.csv"), new byte[16_000_000]);
    Files.write(folder.resolve("long.csv"), new byte[16_000_001]);
    SourceFiles files = new DiskFiles(folder);
    assertThat(files.recorded("ride.csv").held()).isPresent();
    assertThat(((SourceFiles.Unreadable) files.recorded("long.csv")).why())
        .isEqualTo("it is larger than 16 MB");
  }

  @Test
  void aLinkMayLeadToANeighbourButNotOut() throws IOException {
    Path line = Files.createDirectories(folder.resolve("data/line"));
    Path stock = Files.createDirectories(folder.resolve("data/stock"));
    Files.writeString(stock.resolve("unit.yaml"), "x");
    Path secret = Files.writeString(folder.resolve("secret.yaml"), "x");
    Files.createSymbolicLink(line.resolve("near.yaml"), Path.of("../stock/unit.yaml"));
    Files.createSymbolicLink(line.resolve("out.yaml"), secret);
    Files.createSymbolicLink(line.resolve("round.yaml"), Path.of("round.yaml"));
    assertThat(new DiskFiles(folder).read("data/line/near.yaml"))
        .isInstanceOf(SourceFiles.Bytes.class);
    assertThat(why("data/line/out.yaml"))
        .isEqualTo("it is a link that leads out of the folders of the data");
    assertThat(why("data/line/round.yaml")).isIn("it cannot be opened", "there is no such file");
  }

  @Test
  void whatHasNoEndIsNotOpened() throws IOException, InterruptedException {
    Path pipe = folder.resolve("pipe.yaml");
    assertThat(new ProcessBuilder("mkfifo", pipe.toString()).start().waitFor()).isZero();
    assertThat(why("pipe.yaml")).isEqualTo("not a regular file");
    assertThat(why("/dev/zero")).isEqualTo("not a regular file");
  }

  /** A pack names its files; nobody has looked where a linked folder leads. */
  @Test
  void aLinkAnywhereOnTheWayMustNotLeadOut() throws IOException {
    Path line = Files.createDirectories(folder.resolve("data/line"));
    Path stock = Files.createDirectories(folder.resolve("data/stock"));
    Files.writeString(stock.resolve("unit.yaml"), "x");
    Path elsewhere = Files.createDirectories(folder.resolve("elsewhere/deep"));
    Files.writeString(elsewhere.resolve("secret.yaml"), "x");
    Files.createSymbolicLink(line.resolve("out"), folder.resolve("elsewhere"));
    Files.createSymbolicLink(line.resolve("near"), stock);
    Files.createSymbolicLink(folder.resolve("shortcut"), line);
    Files.writeString(line.resolve("route.yaml"), "x");
    String pack = "data/line/pack-a.yaml";
    DiskFiles files = new DiskFiles(folder);
    assertThat(files.namedBy(pack, "data/line/out/deep/secret.yaml"))
        .isEqualTo(new SourceFiles.Unreadable(FileMistakes.A_LINK_OUT));
    assertThat(files.namedBy(pack, "data/line/near/unit.yaml").held()).isPresent();
    assertThat(files.namedBy(pack, "data/stock/unit.yaml").held()).isPresent();
    assertThat(files.namedBy(pack, "elsewhere/deep/secret.yaml").held()).isPresent();
    assertThat(files.namedBy("shortcut/pack-a.yaml", "shortcut/route.yaml").held()).isPresent();
  }

  @Test
  void lineEndsAreNoContent() {
    byte[] unix = "a\nb\n\rc".getBytes(StandardCharsets.UTF_8);
    byte[] windows = "a\r\nb\r\n\rc".getBytes(StandardCharsets.UTF_8);
    assertThat(LineEnds.plain(unix)).isSameAs(unix);
    assertThat(LineEnds.plain(windows)).isEqualTo(unix);
    assertThat(LineEnds.as(windows, unix)).isEqualTo(windows);
    assertThat(LineEnds.as(windows, windows)).isEqualTo(windows);
    assertThat(LineEnds.as(unix, windows)).isEqualTo(unix);
  }

  @Test
  void namesSeenFromOtherFiles() {
    assertThat(FileNames.tidy("./a/../../b//c.yaml")).contains("../b/c.yaml");
    assertThat(FileNames.tidy("/a")).isEmpty();
    assertThat(FileNames.tidy("C:\\a")).isEmpty();
    assertThat(FileNames.seenFrom("routes/line/pack.yaml", "../stock/u.yaml"))
        .isEqualTo("routes/stock/u.yaml");
    assertThat(FileNames.seenFrom("/routes/pack.yaml", "u.yaml")).isEqualTo("/routes/u.yaml");
    assertThat(FileNames.seenFrom("pack.yaml", "../u.yaml")).isEqualTo("../u.yaml");
  }
}
