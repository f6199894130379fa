package gradepost.app.author;

import gradepost.app.author.Saved.State;
import gradepost.app.author.SavedText.How;
import gradepost.app.store.Digest;
import gradepost.app.store.Disk;
import gradepost.app.store.FileInPlace;
import gradepost.app.store.Lock;
import gradepost.app.store.Store;
import gradepost.source.RouteList;
import gradepost.source.file.LineEnds;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;

/** The files of a folder: read, checked as they are typed, and saved. May be asked by many. */
public final class LinesDesk {
  /** So long a save waits for a notice that is being issued. */
  private static final Duration PATIENCE = Duration.ofSeconds(20);

  private static final int LARGEST_MB = 1;
  private static final String MARK = "\ufeff";

  private final DataFolder folder;
  private final SavedTexts saved;
  private final Checks checks;
  private final Cells cells;
  private final Store store;
  private final Clock clock;

  /**
   * The files of a folder.
   *
   * @param store the register; where one is kept, no text is saved while issues are made
   * @param clock of the list of saves
   */
  public LinesDesk(Path data, Store store, Clock clock) throws IOException {
    this.folder = new DataFolder(data);
    this.saved = new SavedTexts(folder.root());
    this.checks = new Checks(folder);
    this.cells = new Cells(folder, checks);
    this.store = store;
    this.clock = clock;
  }

  /** All files, by name. */
  public List<LineFile> files() throws IOException {
    return folder.all();
  }

  /** The one that is called so; empty where the folder holds none. */
  public Optional<LineFile> file(String name) throws IOException {
    return folder.file(name);
  }

  /**
   * What a file says.
   *
   * @throws IOException also where it cannot be shown in a browser and come back as it was
   */
  public OpenText open(LineFile file) throws IOException {
    return shown(file, LineEnds.plain(Disk.bytes(file.at(), LARGEST_MB)));
  }

  private static OpenText shown(LineFile file, byte[] bytes) throws IOException {
    String text;
    try {
      text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException e) {
      throw new FileSystemException(file.name(), null, "it is not in UTF-8");
    }
    if (text.indexOf('\r') >= 0 || text.indexOf('\0') >= 0) {
      throw new FileSystemException(file.name(), null, "it has characters that no editor keeps");
    }
    boolean marked = text.startsWith(MARK);
    String shown = marked ? text.substring(MARK.length()) : text;
    return new OpenText(shown, digest(shown), marked);
  }

  /** What could not be opened again is not written. */
  private static byte[] written(LineFile file, String text) throws IOException {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    if (bytes.length > LARGEST_MB * 1_000_000) {
      throw new FileSystemException(
          file.name(), null, "it would be larger than %d MB".formatted(LARGEST_MB));
    }
    shown(file, bytes);
    return bytes;
  }

  private static String digest(String text) {
    return Digest.of(text.getBytes(StandardCharsets.UTF_8));
  }

  /** A text as a browser sends it, with line feeds alone. */
  public static String plain(String typed) {
    return typed.replace("\r\n", "\n").replace('\r', '\n');
  }

  /** What is found in a text, with the first pack that uses it: as fast as one types. */
  public Checked typed(LineFile file, String text) throws IOException {
    return checks.of(file, text, false);
  }

  /** What is found in a text, with all packs that use it. */
  public Checked check(LineFile file, String text) throws IOException {
    return checks.of(file, text, true);
  }

  /** The lists that may go out as cells and come in. */
  public List<String> lists(LineFile file) {
    return Cells.lists(file.kind());
  }

  /** The cells of a list of a text, a row a line, parted by tabs. */
  public Taken cells(LineFile file, String text, String list) throws IOException {
    return cells.out(file, text, list(file, list));
  }

  /** The text with cells in the place of those of a list. */
  public Taken withCells(LineFile file, String text, String list, String pasted)
      throws IOException {
    return cells.in(file, text, list(file, list), pasted);
  }

  private RouteList list(LineFile file, String word) {
    return RouteList.of(word)
        .filter(list -> lists(file).contains(list.word()))
        .orElseThrow(() -> new IllegalArgumentException(word));
  }

  /**
   * A text that is to be saved.
   *
   * @param base digest of the text that it was begun with
   * @param by whose it is; may be empty text
   * @param faulty whether he knows that packs cannot be briefed with it
   */
  public record Typed(String text, String base, String by, boolean faulty) {}

  /** Puts a text into its file, unless somebody else has put another one there. */
  public Saved save(LineFile file, Typed typed) throws IOException {
    OpenText now = open(file);
    if (!now.digest().equals(typed.base()) || now.text().equals(typed.text())) {
      return refused(now, typed);
    }
    Checked checked = check(file, typed.text());
    if (checked.faulty() && !typed.faulty()) {
      return new Saved(State.FAULTY, now, Optional.of(checked));
    }
    Saved done = put(file, typed, How.SAVED);
    return new Saved(done.state(), done.now(), Optional.of(checked));
  }

  /**
   * Puts an earlier text back, unless somebody else has put another one there.
   *
   * @param digest of the earlier text; empty comes back where no such text lay in the file
   * @param base digest of the text that was there when it was looked at
   */
  public Optional<Saved> back(LineFile file, String digest, String base, String by)
      throws IOException {
    Optional<String> text = text(file, digest);
    return text.isEmpty()
        ? Optional.empty()
        : Optional.of(put(file, new Typed(text.get(), base, by, true), How.TAKEN_BACK));
  }

  private static Saved refused(OpenText now, Typed typed) {
    boolean same = now.text().equals(typed.text());
    return new Saved(same ? State.SAME : State.CHANGED_MEANWHILE, now, Optional.empty());
  }

  private synchronized Saved put(LineFile file, Typed typed, How how) throws IOException {
    if (!store.exists()) {
      return locked(file, typed, how);
    }
    try (Lock lock = store.take(Lock.holder(store.by(typed.by(), clock)), PATIENCE)) {
      lock.require();
      return locked(file, typed, how);
    }
  }

  /** What is kept is kept before the file is written: killed in between, nothing is lost. */
  private Saved locked(LineFile file, Typed typed, How how) throws IOException {
    OpenText now = open(file);
    if (!now.digest().equals(typed.base()) || now.text().equals(typed.text())) {
      return refused(now, typed);
    }
    byte[] bytes = written(file, (now.marked() ? MARK : "") + typed.text());
    LocalDateTime when = LocalDateTime.now(clock).truncatedTo(ChronoUnit.SECONDS);
    List<SavedText> before = saved.of(file.name());
    boolean known =
        !before.isEmpty() && before.get(before.size() - 1).digest().equals(now.digest());
    if (!known) {
      saved.add(file.name(), new SavedText(when, saved.keep(now.text()), How.FOUND, ""));
    }
    saved.add(file.name(), new SavedText(when, saved.keep(typed.text()), how, typed.by()));
    new FileInPlace(file.at()).put(bytes);
    return new Saved(State.SAVED, open(file), Optional.empty());
  }

  /** What lay in a file, the last first. */
  public List<SavedText> saves(LineFile file) throws IOException {
    List<SavedText> out = new java.util.ArrayList<>(saved.of(file.name()));
    java.util.Collections.reverse(out);
    return out;
  }

  /** A text that lay in a file; empty where none with that digest did. */
  public Optional<String> text(LineFile file, String digest) throws IOException {
    boolean its = saved.of(file.name()).stream().anyMatch(s -> s.digest().equals(digest));
    return its ? saved.text(digest) : Optional.empty();
  }
}
