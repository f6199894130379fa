package gradepost.app.shelf;

import gradepost.app.shelf.PackAtHand.AsRead;
import gradepost.app.store.Answer;
import gradepost.app.store.Disk;
import gradepost.app.store.PackFiles;
import gradepost.source.Sources;
import gradepost.source.pack.PackDates;
import gradepost.source.pack.PackFile;
import gradepost.source.pack.Shelves;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executor;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The packs of one folder. May be asked by many at once. */
public final class Shelf {
  private static final int MOST_KEPT = 8;

  private final Path folder;
  private final Clock clock;
  private final Map<Path, PackAtHand> atHand = new ConcurrentHashMap<>();

  /** Of a pack that is read again after an edit, only the one file is new. */
  private final Shelves shelves = new Shelves(MOST_KEPT);

  private volatile boolean ahead;

  /**
   * The packs as far as they are read.
   *
   * @param packs those that are read, by id
   * @param unread how many more there are
   */
  public record SoFar(List<ShelfPack> packs, int unread) {
    /** Copies the list. */
    public SoFar {
      packs = List.copyOf(packs);
    }
  }

  /**
   * @param folder below which the packs lie
   * @param clock by which a pack is valid or expired
   */
  public Shelf(Path folder, Clock clock) {
    this.folder = folder;
    this.clock = clock;
  }

  /** The folder. */
  public Path folder() {
    return folder;
  }

  /** The moment by its clock. */
  public LocalDateTime now() {
    return LocalDateTime.now(clock);
  }

  /**
   * Begins to read every pack, so that the first who asks need not wait for all of it.
   *
   * @param reader does the reading, in a thread of its own
   */
  public void readAhead(Executor reader) {
    ahead = true;
    reader.execute(
        () -> {
          try {
            packs();
          } catch (IOException e) {
            // Whoever asks is told.
          } finally {
            ahead = false;
          }
        });
  }

  /** Every pack, by its id; waits until all are read. */
  public synchronized List<ShelfPack> packs() throws IOException {
    List<PackAtHand> all = all();
    // What several packs name is read once.
    Sources sources = Disk.sources();
    return shown(all.parallelStream().map(one -> one.now(sources)));
  }

  /** The same; but while they are read ahead, only those that are read. Waits for nothing. */
  public SoFar soFar() throws IOException {
    if (!ahead) {
      return new SoFar(packs(), 0);
    }
    List<PackAtHand> all = all();
    List<ShelfPack> read = shown(all.stream().flatMap(one -> one.last().stream()));
    return new SoFar(read, all.size() - read.size());
  }

  /**
   * One of them; empty where none is called so. Of the others no more than the id is read. Where
   * two are, nobody could say which of them is meant: neither can be opened.
   */
  public Optional<ShelfPack> pack(String id) throws IOException {
    List<PackAtHand> called = all().stream().filter(one -> one.id().equals(id)).toList();
    List<Path> files = called.stream().map(PackAtHand::file).toList();
    return called.stream()
        .findFirst()
        .map(one -> apart(today(one.now(Disk.sources(shelves))), files));
  }

  /** Why nothing is done with the pack that is called so: another is, too. */
  public Optional<String> clash(String id) throws IOException {
    return PackFiles.clash(
        all().stream().filter(one -> one.id().equals(id)).map(PackAtHand::file).toList());
  }

  /** What was read last of a pack that was shown. */
  Optional<PackFile> file(ShelfPack shown) {
    PackAtHand one = at(shown.file());
    return one.last().orElseGet(() -> one.now(Disk.sources(shelves))).pack();
  }

  /** Each pack that lies in the folder now, by its file; those that are gone are forgotten. */
  private List<PackAtHand> all() throws IOException {
    List<Path> files = PackFiles.packs(List.of(folder));
    atHand.keySet().retainAll(Set.copyOf(files));
    return files.stream().map(this::at).toList();
  }

  private PackAtHand at(Path file) {
    return atHand.computeIfAbsent(file, PackAtHand::new);
  }

  private List<ShelfPack> shown(Stream<AsRead> packs) {
    List<ShelfPack> all =
        packs
            .map(this::today)
            .sorted(Comparator.comparing(ShelfPack::id).thenComparing(ShelfPack::file))
            .toList();
    Map<String, List<Path>> files =
        all.stream()
            .collect(
                Collectors.groupingBy(
                    ShelfPack::id, Collectors.mapping(ShelfPack::file, Collectors.toList())));
    return all.stream().map(one -> apart(one, files.getOrDefault(one.id(), List.of()))).toList();
  }

  /** A pack as it is, if no other of these files is called the same. */
  private static ShelfPack apart(ShelfPack one, List<Path> files) {
    if (files.size() < 2) {
      return one;
    }
    List<String> problems = new ArrayList<>(PackFiles.clash(files).stream().toList());
    problems.addAll(one.problems());
    return new ShelfPack(one.id(), one.file(), problems, Optional.empty());
  }

  /** What the day says of it comes last. */
  private ShelfPack today(AsRead one) {
    List<String> problems = new ArrayList<>(one.shown().problems());
    one.pack()
        .ifPresent(
            pack -> problems.addAll(Answer.of(new PackDates(pack, now()).problems()).problems()));
    return new ShelfPack(one.shown().id(), one.shown().file(), problems, one.shown().whole());
  }
}
