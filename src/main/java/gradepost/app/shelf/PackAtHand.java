package gradepost.app.shelf;

import gradepost.app.issue.Task;
import gradepost.app.store.Answer;
import gradepost.app.store.Disk;
import gradepost.app.store.PackFiles;
import gradepost.source.Sources;
import gradepost.source.file.Input;
import gradepost.source.file.LineEnds;
import gradepost.source.pack.PackFile;
import gradepost.yaml.Reading;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One pack, kept at hand: read when it is first asked for, and again when its files have changed.
 * Whoever asks while it is read waits for that reading.
 */
final class PackAtHand {
  private final Path file;
  private volatile Optional<AsRead> last = Optional.empty();

  /** A pack as it was read. */
  record AsRead(Stamps stamps, ShelfPack shown, Optional<PackFile> pack) {}

  PackAtHand(Path file) {
    this.file = file;
  }

  /** Where it lies. */
  Path file() {
    return file;
  }

  /** What was read last, whatever its files say by now; empty where it has not been read yet. */
  Optional<AsRead> last() {
    return last;
  }

  /** By which id the register knows it; nothing else of it need be read. */
  String id() {
    return last.filter(known -> known.stamps().stands(file))
        .map(known -> known.shown().id())
        .orElseGet(() -> PackFiles.id(file));
  }

  /** What was read of it, if its files are still as they were; else what they say now. */
  synchronized AsRead now(Sources sources) {
    AsRead now = last.filter(known -> known.stamps().stand()).orElseGet(() -> read(sources));
    last = Optional.of(now);
    return now;
  }

  private AsRead read(Sources sources) {
    Stamps before = Stamps.of(List.of(file));
    Reading<PackFile> reading = sources.pack(Disk.name(file));
    Optional<PackFile> pack = reading.found();
    if (pack.isEmpty()) {
      // Nobody knows which files it would have needed: it is read again whenever it is asked for.
      Stamps never = new Stamps(Map.of(file, ""));
      List<String> problems = Answer.of(reading.problems()).problems();
      return new AsRead(
          never, new ShelfPack(PackFiles.id(file), file, problems, Optional.empty()), pack);
    }
    Map<Path, Input> inputs = new HashMap<>();
    for (Input input : pack.get().inputs()) {
      inputs.put(Disk.folder(file).resolve(input.name()).normalize(), input);
    }
    Map<Path, String> all = new HashMap<>(Stamps.of(inputs.keySet()).byFile());
    // Which files there are is known only now: one that was written meanwhile is read again.
    inputs.forEach(
        (path, input) -> {
          if (!isStill(path, input)) {
            all.put(path, "");
          }
        });
    all.putAll(before.byFile());
    return new AsRead(new Stamps(all), shown(reading, pack.get()), pack);
  }

  private static boolean isStill(Path path, Input read) {
    try {
      byte[] now = Disk.typed(path);
      return Arrays.equals(now, read.bytes()) || Arrays.equals(LineEnds.plain(now), read.bytes());
    } catch (IOException e) {
      return false;
    }
  }

  private ShelfPack shown(Reading<PackFile> reading, PackFile pack) {
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
