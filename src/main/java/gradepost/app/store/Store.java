package gradepost.app.store;

import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/**
 * Where a depot keeps what it issued.
 *
 * @param url JDBC address of the register
 * @param file the register's own file, where it has one
 * @param archive folder of the files by their digests; the lock lies there too
 */
public record Store(String url, Optional<Path> file, Path archive) {

  /** A file, or a JDBC address; the archive lies beside the file where none is named. */
  public static Store of(String register, Optional<Path> archive) {
    if (register.startsWith("jdbc:")) {
      return new Store(register, Optional.empty(), archive.orElse(Path.of("archive")));
    }
    Path file = Path.of(register);
    return new Store(
        "jdbc:sqlite:" + file,
        Optional.of(file),
        archive.orElseGet(() -> file.resolveSibling("archive")));
  }

  /** Opens the register, and makes or migrates it where that is needed. */
  public Register open() throws RegisterException, IOException {
    if (file.isPresent()) {
      Files.createDirectories(Disk.folder(file.get()));
    }
    return Register.open(url);
  }

  /** Whether there is a register to ask; opening one would make it. */
  public boolean exists() {
    return file.map(Files::exists).orElse(true);
  }

  /** What is said where there is none. */
  public Answer missing() {
    return Answer.refused(
        "error: there is no register %s\n  Maybe name it with --register, or begin one: gradepost register enter PACK.yaml"
            .formatted(file.orElseThrow()));
  }

  /** What is said where it does not know an issue. */
  public static Answer unknown(String called) {
    return Answer.refused(
        "error: the register has no issue %s; allowed: an issue, such as valley/4, or eight digits of its fingerprint or more\n  Maybe see: gradepost register issues"
            .formatted(called));
  }

  /** The file by which two runs are kept apart. */
  public Path lock() {
    return archive.resolve("lock");
  }
}
