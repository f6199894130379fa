package gradepost.app.store;

import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.Register.By;
import gradepost.reissue.register.RegisterException;
import gradepost.text.Mistake;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Where a depot keeps what it issued.
 *
 * @param url JDBC address of the register
 * @param file the register's own file, where it has one
 * @param kept the files by their digests
 * @param archive folder of that archive, where it is one; the lock lies there too
 * @param depot whose entries these are; empty text where the register is one depot's
 * @param waits is told, in words, where another program holds the register and is waited for
 */
public record Store(
    String url,
    Optional<Path> file,
    Archive kept,
    Path archive,
    String depot,
    Consumer<String> waits) {
  /** What is said instead of a folder for an archive that the register holds itself. */
  public static final String REGISTER = "register";

  /** The folder of an archive whose register is at an address. */
  private static final Path BESIDE = Path.of("archive");

  private static final String POSTGRES = "jdbc:postgresql:";

  /**
   * A register, and its archive. Where none is named it lies beside the file. A register in
   * PostgreSQL holds it itself then, unless there is a folder of that name here.
   *
   * @param register a file, or a JDBC address
   * @param archive a folder; or {@link #REGISTER}, if the register is in PostgreSQL
   */
  public static Store of(String register, Optional<Path> archive) {
    boolean address = register.startsWith("jdbc:");
    Optional<Path> file = address ? Optional.empty() : Optional.of(Path.of(register));
    String url = address ? register : "jdbc:sqlite:" + register;
    boolean unsaid = archive.isEmpty() && isPostgres(register) && !Files.isDirectory(BESIDE);
    if (unsaid || inRegister(archive)) {
      return new Store(url, file, new RegisterArchive(url), Path.of(REGISTER), "", Store::toNobody);
    }
    Path folder =
        archive.orElseGet(() -> file.map(f -> f.resolveSibling("archive")).orElse(BESIDE));
    return new Store(url, file, new FolderArchive(folder), folder, "", Store::toNobody);
  }

  private static void toNobody(String words) {}

  /** The archive once more, for a thread of its own. */
  public Archive again() {
    return holdsItsArchive() ? new RegisterArchive(url) : kept;
  }

  /** The same, its entries made for a depot. */
  public Store at(String depot) {
    return new Store(url, file, kept, archive, depot, waits);
  }

  /** Whether the register holds its archive itself. */
  public boolean holdsItsArchive() {
    return kept instanceof RegisterArchive;
  }

  /** Whether an archive was asked for that the register holds itself. */
  public static boolean inRegister(Optional<Path> archive) {
    return archive.filter(Path.of(REGISTER)::equals).isPresent();
  }

  /** Whether a register is in PostgreSQL, by its address. */
  public static boolean isPostgres(String register) {
    return register.startsWith(POSTGRES);
  }

  /** The same where somebody is told of waits. */
  public Store telling(Consumer<String> waits) {
    return new Store(url, file, kept, archive, depot, waits);
  }

  /** Who does something now, for the register. */
  public By by(String who, Clock clock) {
    return new By(who, LocalDateTime.now(clock).truncatedTo(ChronoUnit.MINUTES), depot);
  }

  /** Opens the register that {@link #exists}, and migrates it where that is needed. */
  public Register open() throws RegisterException {
    return Register.open(url, () -> file.flatMap(FileHolder::of), waits);
  }

  /** Opens the register, and makes it where there is none. */
  public Register begin() throws RegisterException, IOException {
    if (file.isPresent()) {
      Files.createDirectories(Disk.folder(file.get()));
    }
    DriverFolder.ready();
    return open();
  }

  /** Whether there is a register to ask; opening one would make it. */
  public boolean exists() {
    try {
      return file.isPresent() ? size(file.get()) > 0 : Register.begun(url);
    } catch (RegisterException e) {
      // Opening it says what is wrong.
      return true;
    }
  }

  private static long size(Path file) {
    try {
      return Files.size(file);
    } catch (IOException e) {
      return 0;
    }
  }

  /** Where the register is or would be, in words. */
  public String where() {
    return file.map(Path::toString).orElse(StoreText.IN_DATABASE);
  }

  /** What is said where there is none. */
  public Answer missing() {
    if (file.isPresent() && isOther(file.get())) {
      return Answer.refused(StoreText.error(file.get(), StoreText.NO_FILE));
    }
    boolean empty = file.map(Files::exists).orElse(false);
    Mistake mistake =
        hasArchive()
            ? (empty ? StoreText.EMPTY_REGISTER_BUT : StoreText.NO_REGISTER_BUT)
                .with(where(), kept.where())
            : (empty ? StoreText.EMPTY_REGISTER : StoreText.NO_REGISTER).with(where());
    return Answer.refused(StoreText.error(mistake));
  }

  /** Whether one may be begun: nothing is in the way, and nothing of an earlier one is there. */
  public boolean isFree() {
    return !hasArchive() && file.map(f -> !isOther(f)).orElse(true);
  }

  /** Whether there is something else than a file. */
  private static boolean isOther(Path file) {
    return Files.exists(file) && !Files.isRegularFile(file);
  }

  /** Whether the archive holds anything. */
  public boolean hasArchive() {
    try {
      return (!holdsItsArchive() || exists()) && !kept.digests().isEmpty();
    } catch (IOException e) {
      return true;
    }
  }

  /** What is said where it does not know an issue; the name of a pack has a latest one. */
  public static Answer unknown(Register register, String called) throws RegisterException {
    Optional<String> latest = register.latest(called).map(Entry::name);
    return Answer.refused(StoreText.error(StoreText.NO_ISSUE.with(called, latest)));
  }

  /** The file by which two runs are kept apart, where the archive is a folder. */
  public Path lock() {
    return archive.resolve("lock");
  }

  /**
   * Takes the lock, or waits so long for it. Whoever has the same archive has the same lock.
   *
   * @param holder who takes it, in words, for whoever finds it taken
   */
  public Lock take(String holder, Duration patience) throws IOException {
    return holdsItsArchive()
        ? RegisterLock.take(url, holder, patience, waits)
        : FolderLock.take(lock(), holder, patience, waits);
  }
}
