package gradepost.app.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Property: a file of the clerk's stays his when it is written anew. */
class FileInPlaceTest {
  @TempDir Path folder = Path.of("");

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  @Test
  void modeLineEndsAndLinkStay() throws IOException {
    Path target = Files.writeString(folder.resolve("shared.yaml"), "a: 1\r\nb: 2\r\n");
    Set<PosixFilePermission> mode = PosixFilePermissions.fromString("rw-rw-r--");
    Files.setPosixFilePermissions(target, mode);
    Path link = Files.createSymbolicLink(folder.resolve("restrictions.yaml"), target.getFileName());
    new FileInPlace(link).put(bytes("a: 1\nb: 3\n"));
    assertThat(link).isSymbolicLink();
    assertThat(Files.readString(target)).isEqualTo("a: 1\r\nb: 3\r\n");
    assertThat(Files.getPosixFilePermissions(target)).isEqualTo(mode);
    assertThat(new FileInPlace(link).says(bytes("a: 1\nb: 3\n"))).isTrue();
    assertThat(names()).containsExactly("restrictions.yaml", "shared.yaml");
  }

  @Test
  void anArchivedFileIsReadableAsTheUsersFilesAre() throws IOException {
    Path own = Files.writeString(folder.resolve("own.txt"), "x");
    Archive archive = Archive.in(folder.resolve("archive"));
    Path kept = Path.of(archive.place(archive.keep(bytes("x"))));
    assertThat(Files.getPosixFilePermissions(kept)).isEqualTo(Files.getPosixFilePermissions(own));
  }

  @Test
  void theUsersHiddenFilesAreNeverTakenAway() throws IOException {
    for (String name : List.of(".p-issue-3-notes", ".p-issue-3-20261129", ".p-issue-3.part")) {
      Files.createDirectory(folder.resolve(name));
    }
    Path left = Files.createDirectory(folder.resolve(Part.name("p-issue-3")));
    Files.writeString(left.resolve("p.pdf"), "half");
    Path other = Files.createDirectory(folder.resolve(Part.name("p-issue-30")));
    new Delivery(folder).tidy("p-issue-3");
    assertThat(left).doesNotExist();
    assertThat(other).exists();
    assertThat(names())
        .contains(".p-issue-3-notes", ".p-issue-3-20261129", ".p-issue-3.part")
        .hasSize(4);
  }

  @Test
  void aKilledRunLeavesNothingAfterTheNext() throws IOException {
    Path dead = Files.createDirectory(folder.resolve("gradepost-driver-999999999"));
    Files.writeString(dead.resolve("native.so"), "x");
    Path others = Files.createDirectory(folder.resolve("gradepost-driver-mine"));
    Path own = DriverFolder.in(folder, ProcessHandle.current().pid());
    assertThat(dead).doesNotExist();
    assertThat(others).exists();
    assertThat(own).isDirectory();
    assertThat(DriverFolder.in(folder, ProcessHandle.current().pid())).isEqualTo(own).exists();
  }

  @Test
  void whoHoldsAFileIsReadFromTheLocksOfTheSystem() {
    List<String> locks =
        List.of(
            "1: FLOCK  ADVISORY  WRITE 4711 fe:00:77 0 EOF",
            "1: -> POSIX  ADVISORY  WRITE 4713 fe:00:78 0 EOF",
            "2: POSIX  ADVISORY  WRITE 4712 fe:00:78 1073741824 1073742335");
    assertThat(FileHolder.of(locks, "78")).contains(4712L);
    assertThat(FileHolder.of(locks, "7")).isEmpty();
  }

  @Test
  void whatTheSystemRefusesIsSaidInOurWords() {
    assertThat(IoErrorText.inWords(new IOException("No space left on device")))
        .isEqualTo("error: the disk is full");
    assertThat(
            IoErrorText.inWords(new FileSystemException("a/b.pdf", null, "Read-only file system")))
        .isEqualTo("a/b.pdf: error: the disk can only be read");
  }

  private List<String> names() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(f -> f.getFileName().toString()).sorted().toList();
    }
  }
}
