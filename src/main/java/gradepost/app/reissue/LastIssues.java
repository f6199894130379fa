package gradepost.app.reissue;

import gradepost.app.issue.ArchivedInputs;
import gradepost.app.reissue.NextIssue.Amended;
import gradepost.app.store.Answer;
import gradepost.app.store.Archive;
import gradepost.app.store.Disk;
import gradepost.pack.TemporaryRestriction;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Entry.Kept;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import gradepost.source.Sources;
import gradepost.source.file.Input;
import gradepost.source.pack.PackFile;
import gradepost.yaml.Reading;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** The last issues of the packs of a run, beside the files in place. Without a register none is. */
final class LastIssues {
  private final Order order;
  private final Archive archive;
  private final Optional<LastFiles> files;
  private final Optional<FilesInPlace> place;

  private LastIssues(
      Order order, Archive archive, Optional<LastFiles> files, Optional<FilesInPlace> place) {
    this.order = order;
    this.archive = archive;
    this.files = files;
    this.place = place;
  }

  static LastIssues of(
      Order order,
      Sources sources,
      Optional<Register> register,
      List<Path> packs,
      LocalDateTime when)
      throws IOException, RegisterException {
    Archive archive = order.put().store().kept();
    if (register.isEmpty()) {
      return new LastIssues(order, archive, Optional.empty(), Optional.empty());
    }
    LastFiles files = LastFiles.of(register.get(), archive, packs, !order.put().dryRun());
    FilesInPlace place = new FilesInPlace(order.read(), sources, register.get(), files, when);
    return new LastIssues(order, archive, Optional.of(files), Optional.of(place));
  }

  /** The pack in place. A dry run that would restore files reads those that it would restore. */
  Reading<PackFile> toLookAt(Path file, Sources sources) throws IOException {
    if (order.put().dryRun() && order.read().edits().fromArchive() && files.isPresent()) {
      LastFiles last = files.get();
      Optional<List<Input>> restored =
          last.inputs(file, last.of(file), List.of(), new ArrayList<>())
              .filter(inputs -> !inputs.isEmpty());
      if (restored.isPresent()) {
        return sources.pack(restored.get());
      }
    }
    return sources.pack(Disk.name(file));
  }

  /** Whether the files are, byte for byte, what belongs in place. */
  boolean areInPlace(Path file, PackFile found) {
    return place.map(p -> p.areLast(file, found)).orElse(true);
  }

  /**
   * Whether these are the files of the pack's own last issue, and no later one of a shared file
   * belongs in their place.
   *
   * @param there files by the names by which the pack calls them
   */
  boolean areThoseOfItsIssue(Path file, List<Kept> there) {
    return files.filter(last -> last.areThoseOfItsIssue(file, there)).isPresent();
  }

  /**
   * What the next issue is compared with: the last one, or the files where none is registered.
   *
   * @param told why the last one cannot be had, if the answer is empty
   */
  Optional<PackFile> base(Path file, PackFile found, Optional<Entry> latest, List<String> told)
      throws IOException {
    return place.isPresent() && latest.isPresent()
        ? place.get().base(file, found, latest.get(), told)
        : Optional.of(found);
  }

  /** Whether the files in place may be issued from. */
  Answer compared(Amended amended, PackFile next, Optional<Entry> latest, PackFile base)
      throws IOException, RegisterException {
    Path file = amended.file();
    if (place.isEmpty()) {
      return Answer.GOOD;
    } else if (latest.isEmpty()) {
      return place.get().unregistered(file, amended.found());
    }
    return place
        .get()
        .compared(
            new FilesInPlace.Beside(
                file,
                amended.found(),
                next,
                amended.notices().stream()
                    .map(TemporaryRestriction::reference)
                    .collect(Collectors.toSet()),
                latest.get(),
                base,
                PackTrains.met(base)));
  }

  /** The pack as it is, to be registered before a first reissue alters its files. */
  Optional<Entry> takenIn(PackFile found, Optional<Entry> latest) throws IOException {
    return latest.isPresent() || order.put().dryRun()
        ? Optional.empty()
        : Optional.of(ArchivedInputs.takenIn(archive, found));
  }
}
