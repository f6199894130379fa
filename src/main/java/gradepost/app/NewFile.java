package gradepost.app;

import gradepost.app.export.SchemaText;
import gradepost.app.store.Answer;
import gradepost.app.store.Disk;
import gradepost.app.store.IoErrorText;
import gradepost.source.file.FileKind;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Writes commented starting files, each with its schema beside it. A pack comes with those of the
 * files that it names which are not there yet. Nothing that exists is written over but a schema,
 * which the program owns.
 */
public final class NewFile {
  private static final int HALF_A_YEAR = 6;
  private final Optional<LocalDate> today;

  /** With the dates of the example. */
  public NewFile() {
    this.today = Optional.empty();
  }

  /** A pack is valid from today by this clock, for half a year. */
  public NewFile(Clock clock) {
    this.today = Optional.of(LocalDate.now(clock));
  }

  /** Writes a starting file of this kind; one that is there already is never written over. */
  public Answer of(FileKind kind, Path file) {
    try {
      if (Files.exists(file)) {
        return Answer.refused(file + ": error: the file already exists");
      }
      Path folder = Disk.folder(file);
      if (!Files.isDirectory(folder)) {
        return Answer.refused(folder + ": error: there is no such folder");
      }
      List<Path> written = new ArrayList<>();
      write(kind, file, written);
      if (kind == FileKind.PACK) {
        for (FileKind named : FileKind.values()) {
          Path beside = file.resolveSibling(named.word() + ".yaml");
          if (named != FileKind.PACK && !Files.exists(beside)) {
            write(named, beside, written);
          }
        }
      }
      return Answer.wrote(written);
    } catch (IOException e) {
      return Answer.refused(IoErrorText.inWords(e));
    }
  }

  private void write(FileKind kind, Path file, List<Path> written) throws IOException {
    Files.write(file, dated(kind, start(kind)));
    written.add(file);
    Path schema = file.resolveSibling(SchemaText.fileName(kind));
    Files.write(schema, SchemaText.of(kind).getBytes(StandardCharsets.UTF_8));
    written.add(schema);
  }

  /** The starting file with the dates of today in the place of those of its example. */
  private byte[] dated(FileKind kind, byte[] start) {
    if (kind != FileKind.PACK || today.isEmpty()) {
      return start;
    }
    String day = today.get().toString();
    return new String(start, StandardCharsets.UTF_8)
        .replace("2026-01-05 12:00", day + " 00:00")
        .replace("2026-01-05 09:00", day + " 00:00")
        .replace("2026-01-05", day)
        .replace("2026-01-12", day)
        .replace("2026-06-30", today.get().plusMonths(HALF_A_YEAR).toString())
        .getBytes(StandardCharsets.UTF_8);
  }

  private static byte[] start(FileKind kind) throws IOException {
    String name = "/gradepost/start/" + kind.word() + ".yaml";
    try (InputStream in =
        Optional.ofNullable(NewFile.class.getResourceAsStream(name)).orElseThrow()) {
      return in.readAllBytes();
    }
  }
}
