package gradepost.app.shelf;

import gradepost.app.issue.Task;
import gradepost.app.store.Answer;
import gradepost.app.store.Disk;
import gradepost.app.store.PackFiles;
import gradepost.source.Sources;
import gradepost.source.file.Input;
import gradepost.source.pack.PackDates;
import gradepost.source.pack.PackFile;
import gradepost.yaml.Reading;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The packs of one folder. May be asked by many at once. */
public final class Shelf {
  private final Path folder;
  private final Clock clock;
  private final Map<Path, Kept> kept = new HashMap<>();

  /** A pack as it was read. */
  private record Kept(Stamps stamps, ShelfPack shown, Optional<PackFile> pack) {}

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

  /** Begins to read every pack, so that the first who asks need not wait for all of it. */
  public void readAhead() {
    Thread reader =
        new Thread(
            () -> {
              try {
                packs();
              } catch (IOException e) {
                // Whoever asks is told.
              }
            },
            "read ahead");
    reader.setDaemon(true);
    reader.start();
  }

  /** Every pack, by its id. */
  public synchronized List<ShelfPack> packs() throws IOException {
    List<Path> files = PackFiles.packs(List.of(folder));
    // At the start all are read at once, and what several name is read once; nothing is put among
    // those that are kept meanwhile.
    Sources sources = Disk.sources();
    List<Kept> all = files.parallelStream().map(file -> known(file, sources)).toList();
    kept.clear();
    List<ShelfPack> out = new ArrayList<>();
    for (int i = 0; i < files.size(); i++) {
      kept.put(files.get(i), all.get(i));
      out.add(today(all.get(i)));
    }
    out.sort(Comparator.comparing(ShelfPack::id).thenComparing(ShelfPack::file));
    return out;
  }

  /** One of them; empty where none is called so. */
  public Optional<ShelfPack> pack(String id) throws IOException {
    return packs().stream().filter(p -> p.id().equals(id)).findFirst();
  }

  /** What was read of a pack that was shown. */
  synchronized Optional<PackFile> file(ShelfPack shown) {
    return at(shown.file()).pack();
  }

  /** What the day says of it comes last. */
  private ShelfPack today(Kept one) {
    List<String> problems = new ArrayList<>(one.shown().problems());
    one.pack()
        .ifPresent(
            pack -> problems.addAll(Answer.of(new PackDates(pack, now()).problems()).problems()));
    return new ShelfPack(one.shown().id(), one.shown().file(), problems, one.shown().whole());
  }

  private Kept at(Path file) {
    Kept known = known(file, Disk.sources());
    kept.put(file, known);
    return known;
  }

  /** What is kept of a pack, if its files are still as they were; else what they say now. */
  private Kept known(Path file, Sources sources) {
    Kept known = kept.get(file);
    return known == null || !known.stamps().stand() ? read(file, sources) : known;
  }

  private Kept read(Path file, Sources sources) {
    Stamps before = Stamps.of(List.of(file));
    Reading<PackFile> reading = sources.pack(Disk.name(file));
    Optional<PackFile> pack = reading.found();
    if (pack.isEmpty()) {
      // Nobody knows which files it would have needed: it is read again whenever it is asked for.
      Stamps never = new Stamps(Map.of(file, ""));
      List<String> problems = Answer.of(reading.problems()).problems();
      return new Kept(
          never, new ShelfPack(PackFiles.id(file), file, problems, Optional.empty()), pack);
    }
    List<Path> inputs = new ArrayList<>();
    for (Input input : pack.get().inputs()) {
      inputs.add(Disk.folder(file).resolve(input.name()).normalize());
    }
    Map<Path, String> all = new HashMap<>(Stamps.of(inputs).byFile());
    all.putAll(before.byFile());
    return new Kept(new Stamps(all), shown(file, reading, pack.get()), pack);
  }

  private ShelfPack shown(Path file, Reading<PackFile> reading, PackFile pack) {
    List<String> problems = new ArrayList<>(Answer.of(reading.problems()).problems());
    List<ShelfPaper> papers =
        Task.of(pack).stream()
            .map(
                task ->
                    new ShelfPaper(
                        task.stem(),
                        pack.route().nameOf(task.assignment().direction()),
                        task.assignment().trainName()))
            .toList();
    ShelfPack.Whole whole =
        new ShelfPack.Whole(
            pack.title().orElse(pack.route().name()),
            pack.route().name(),
            pack.issue().number(),
            pack.issue().validFrom(),
            pack.issue().validTo(),
            pack.inputs(),
            pack.issue().preparedBy(),
            pack.directions().stream().map(d -> pack.route().nameOf(d.direction())).toList(),
            pack.formations().stream().map(f -> f.name()).toList(),
            papers);
    return new ShelfPack(pack.id(), file, problems, Optional.of(whole));
  }
}
