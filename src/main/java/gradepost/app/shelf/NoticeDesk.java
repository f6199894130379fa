package gradepost.app.shelf;

import gradepost.app.reissue.Order;
import gradepost.app.reissue.Reissue;
import gradepost.app.reissue.Workers;
import gradepost.app.store.Answer;
import gradepost.app.store.Disk;
import gradepost.app.store.Progress;
import gradepost.app.store.Store;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** A notice that is typed, not a file: what it would touch, and the issues that it makes. */
public final class NoticeDesk {
  /** So long a run waits for another one. */
  private static final Duration PATIENCE = Duration.ofSeconds(60);

  private final Path folder;
  private final Store store;
  private final Path out;
  private final Clock clock;

  /**
   * A desk for notices.
   *
   * @param folder below which the packs lie
   * @param store the register and its archive
   * @param out where the papers of new issues go
   * @param clock of the issues
   */
  public NoticeDesk(Path folder, Store store, Path out, Clock clock) {
    this.folder = folder;
    this.store = store;
    this.out = out;
    this.clock = clock;
  }

  /** Whether there is a register; without one nothing can be issued. */
  public boolean keepsRegister() {
    return store.exists();
  }

  /** Where the register is or would be, in words. */
  public String register() {
    return store.where();
  }

  /**
   * A notice as it was typed; or none, where the files of packs were edited.
   *
   * @param text YAML, or CSV with headings; empty means that what was edited is issued
   * @param confirmed references for which a doubt is settled
   * @param by who has it made, for the register
   * @param emergency whether an addendum goes out at once
   * @param validFrom from when the issues are valid; empty means from the moment of issue
   */
  public record Typed(
      String text,
      Set<String> confirmed,
      String by,
      boolean emergency,
      Optional<LocalDateTime> validFrom) {
    /** Copies the set. */
    public Typed {
      confirmed = Set.copyOf(confirmed);
    }
  }

  /**
   * What a notice would touch.
   *
   * @param answer in words
   * @param runs of the approaches that would differ
   */
  public record Looked(Answer answer, List<TouchedRun> runs) {
    /** Copies the list. */
    public Looked {
      runs = List.copyOf(runs);
    }
  }

  /**
   * The text of a file that was handed in. Spreadsheets write UTF-8 or UTF-16 with a byte order
   * mark, or the code page of their country; the mark is left out.
   */
  public static String text(byte[] bytes) {
    boolean utf16 =
        bytes.length > 1
            && ((bytes[0] == (byte) 0xFE && bytes[1] == (byte) 0xFF)
                || (bytes[0] == (byte) 0xFF && bytes[1] == (byte) 0xFE));
    String text;
    try {
      text =
          utf16
              ? new String(bytes, StandardCharsets.UTF_16)
              : StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException e) {
      text = new String(bytes, Charset.forName("windows-1252"));
    }
    return text.replaceFirst("^\\uFEFF", "").replace("\r\n", "\n");
  }

  /** What it would touch; nothing is written. */
  public Looked look(Typed typed) throws IOException {
    TouchedRuns runs = new TouchedRuns();
    Answer answer = run(typed, true, Progress.SILENT, Optional.of(runs));
    return new Looked(answer, runs.runs());
  }

  /** Makes and registers the issues. */
  public Answer issue(Typed typed, Progress progress) throws IOException {
    return run(typed, false, progress, Optional.empty());
  }

  private Answer run(Typed typed, boolean dry, Progress progress, Optional<Workers> watching)
      throws IOException {
    Path work = Files.createTempDirectory("notice");
    boolean yaml = typed.text().strip().startsWith("gradepost:");
    Path file = work.resolve(yaml ? "notice.yaml" : "notice.csv");
    try {
      Files.writeString(file, typed.text(), StandardCharsets.UTF_8);
      Optional<Path> notice = typed.text().isEmpty() ? Optional.empty() : Optional.of(file);
      Answer answer =
          new Reissue(clock, typed.by(), progress, Disk.sources(), watching)
              .of(
                  new Order(
                      new Order.Read(
                          List.of(folder), notice, new Order.Edits(false, typed.confirmed())),
                      new Order.Tell(
                          typed.validFrom(), Optional.empty(), typed.emergency(), Optional.empty()),
                      new Order.Put(out, store, dry),
                      new Order.Pace(Runtime.getRuntime().availableProcessors(), PATIENCE)));
      return named(answer, work + "/");
    } finally {
      Files.deleteIfExists(file);
      Files.delete(work);
    }
  }

  /** The notice has no file of its own: it is called by its name alone. */
  private static Answer named(Answer answer, String folder) {
    return new Answer(
        answer.said().stream().map(line -> line.replace(folder, "")).toList(),
        answer.written(),
        answer.problems().stream().map(line -> line.replace(folder, "")).toList(),
        answer.good());
  }
}
