package gradepost.app;

import gradepost.app.Outcome.State;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import gradepost.route.TemporaryRestriction;
import gradepost.route.TemporaryRestriction.Status;
import gradepost.source.Amendment;
import gradepost.source.Input;
import gradepost.source.NoticeFile;
import gradepost.source.NoticeText;
import gradepost.source.PackFile;
import gradepost.source.Problems;
import gradepost.source.Reading;
import gradepost.source.Sources;
import gradepost.units.MomentStyle;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Looks at one pack: whether a notice, or an edit by hand, can touch it. Plans nothing. */
final class PackLook {
  private final Reissue.Order order;
  private final Sources sources;
  private final Optional<NoticeFile> notice;
  private final Optional<Register> register;
  private final Archive archive;
  private final Optional<LastFiles> last;
  private final Optional<FilesInPlace> place;

  PackLook(
      Reissue.Order order,
      Sources sources,
      Optional<NoticeFile> notice,
      Optional<Register> register,
      Optional<LastFiles> last,
      LocalDateTime when) {
    this.last = last;
    this.place =
        last.isPresent() && register.isPresent()
            ? Optional.of(new FilesInPlace(order, sources, register.get(), last.get(), when))
            : Optional.empty();
    this.order = order;
    this.sources = sources;
    this.notice = notice;
    this.register = register;
    this.archive = new Archive(order.store().archive());
  }

  /** What was seen. */
  sealed interface Seen {
    Outcome outcome();

    /** There is nothing more to do. */
    record Done(Outcome outcome) implements Seen {}

    /**
     * It has to be worked out.
     *
     * @param found as the files are
     * @param inputs the files with the notice
     * @param before the issue that it is compared with
     * @param digest of the notice
     * @param latest issue registered
     */
    record Touched(
        Outcome outcome,
        PackFile found,
        List<Input> inputs,
        PackFile before,
        String digest,
        Optional<Entry> latest)
        implements Seen {}
  }

  static Seen done(Path file, State state, Answer told) {
    return new Seen.Done(Outcome.of(file, state, told));
  }

  Seen at(Path file) throws IOException, RegisterException {
    String name = PackFiles.stem(file);
    Reading<PackFile> reading = read(file);
    if (!(reading instanceof Reading.Good<PackFile> found)) {
      return done(file, State.UNREADABLE, Answer.of(reading.problems()));
    }
    Answer noted = Answer.GOOD;
    List<TemporaryRestriction> notices = List.of();
    if (notice.isPresent()) {
      var read = notice.get().read(found.value());
      noted = noted(read.problems());
      if (!(read instanceof Reading.Good<List<TemporaryRestriction>> good)) {
        return done(file, State.UNREADABLE, Answer.of(read.problems()));
      }
      notices = good.value();
      if (notices.isEmpty()) {
        String said = name + ": not touched, the notice is for another route";
        return done(file, State.ELSEWHERE, Answer.said(said));
      }
    }
    return looked(file, found.value(), notices, noted);
  }

  /** A dry run that would lay files in place reads those that it would lay. */
  private Reading<PackFile> read(Path file) throws IOException {
    if (order.dryRun() && order.edits().fromArchive() && last.isPresent()) {
      Optional<List<Input>> laid =
          last.get()
              .inputs(file, last.get().of(file), List.of(), new ArrayList<>())
              .filter(inputs -> !inputs.isEmpty());
      if (laid.isPresent()) {
        return sources.pack(laid.get());
      }
    }
    return sources.pack(Disk.name(file));
  }

  private Seen looked(Path file, PackFile found, List<TemporaryRestriction> notices, Answer said)
      throws IOException, RegisterException {
    String name = PackFiles.stem(file);
    Answer noted = said;
    String digest = digest(found, notices);
    Optional<Entry> latest = Optional.empty();
    Optional<Integer> taken = Optional.empty();
    if (register.isPresent()) {
      // The register has one connection: one question at a time.
      synchronized (register.get()) {
        latest = register.get().latest(name);
        taken = register.get().withNotice(name, digest);
        if (latest.isPresent() && !register.get().isDelivered(latest.get())) {
          // Only a look by itself comes here: a run has put it in place.
          String waits =
              "%s: %s is registered and not put in place: a run begins with that"
                  .formatted(name, latest.get().name());
          return done(file, State.KNOWN, Answer.said(waits));
        }
      }
    }
    boolean has = latest.isPresent() && latest.map(Entry::number).equals(taken);
    boolean asRegistered = place.map(p -> p.areLast(file, found)).orElse(true);
    if (has && asRegistered) {
      return has(file, taken.orElseThrow(), latest.orElseThrow());
    }
    List<String> lacking = new ArrayList<>();
    Optional<PackFile> base =
        place.isPresent() && latest.isPresent()
            ? place.get().base(file, found, latest.get(), lacking)
            : Optional.of(found);
    if (base.isEmpty()) {
      return done(file, State.UNREADABLE, new Answer(List.of(), List.of(), lacking, false));
    }
    List<Input> inputs = notices.isEmpty() ? found.inputs() : Amendment.withNotices(found, notices);
    Optional<String> outside = outside(file, found, inputs);
    if (outside.isPresent()) {
      return done(file, State.FAILED, noted.and(Answer.refused(outside.get())));
    }
    Reading<PackFile> amended = sources.pack(inputs);
    if (!(amended instanceof Reading.Good<PackFile> same)) {
      return done(file, State.FAILED, Answer.of(amended.problems()));
    }
    Answer files =
        place.isEmpty()
            ? Answer.GOOD
            : latest.isPresent()
                ? place
                    .get()
                    .compared(
                        new FilesInPlace.Beside(
                            file,
                            found,
                            same.value(),
                            references(notices),
                            latest.get(),
                            base.get(),
                            PackTrains.met(file, base.get())))
                : place.get().unregistered(file, found);
    if (!files.good()) {
      return done(file, State.STALE, files);
    }
    if (has) {
      return has(file, taken.orElseThrow(), latest.orElseThrow());
    }
    noted = noted.and(files);
    if (!PackTrains.mayDiffer(file, base.get(), same.value())) {
      boolean uncertain =
          latest.isEmpty()
              && PackTrains.concerned(file, same.value(), timely(same.value(), notices));
      return uncertain
          ? done(file, State.FAILED, noted.and(Answer.refused(stands(file))))
          : done(
              file,
              State.UNTOUCHED,
              noted.and(Answer.said(name + ": not touched" + never(same.value(), notices))));
    }
    if (taken.isPresent()) {
      return done(file, State.FAILED, Answer.refused(old(file, taken.get(), latest.orElseThrow())));
    }
    Optional<Entry> takenIn =
        latest.isPresent() || order.dryRun()
            ? Optional.empty()
            : Optional.of(Kits.takenIn(archive, name, found));
    return new Seen.Touched(
        new Outcome(file, State.TOUCHED, noted, takenIn),
        found,
        inputs,
        base.get(),
        digest,
        latest);
  }

  private Seen has(Path file, int taken, Entry latest) {
    String late =
        order.emergency() && !latest.urgent()
            ? "; it was issued without an emergency addendum, and none can be made now: its supplement says the same"
            : "";
    String said = "%s: issue %d has this notice%s".formatted(PackFiles.stem(file), taken, late);
    return done(file, State.KNOWN, Answer.said(said));
  }

  private static Set<String> references(List<TemporaryRestriction> notices) {
    return notices.stream().map(TemporaryRestriction::reference).collect(Collectors.toSet());
  }

  /** A file that would be changed though it lies outside of the folders of the data. */
  private static Optional<String> outside(Path file, PackFile found, List<Input> inputs) {
    Path own = Disk.folder(Disk.absolute(file));
    Path data = PackFiles.data(file);
    for (int i = 0; i < inputs.size(); i++) {
      boolean changes = !inputs.get(i).equals(found.inputs().get(i));
      Path changed = own.resolve(inputs.get(i).name()).normalize();
      if (changes && !changed.startsWith(data)) {
        return Optional.of(
            "%s: error: the notice would change %s, which lies outside of %s; no file there is changed%n  Maybe keep the restrictions beside the pack, or in a folder beside its folder"
                .formatted(file, changed, data));
      }
    }
    return Optional.empty();
  }

  /** Those that stand at some time while the pack is valid, or stood in it and are withdrawn. */
  private static List<TemporaryRestriction> timely(
      PackFile pack, List<TemporaryRestriction> notices) {
    LocalDateTime from = pack.issue().validFrom();
    LocalDateTime to = pack.issue().validTo();
    return notices.stream()
        .filter(n -> n.status() == Status.WITHDRAWN || n.standsBetween(from, to))
        .toList();
  }

  /** A year mistyped is a common reason why a notice touches nothing. */
  private static String never(PackFile pack, List<TemporaryRestriction> notices) {
    return notices.isEmpty() || !timely(pack, notices).isEmpty()
        ? ""
        : ": the notice stands at no time from %s to %s, when the pack is valid"
            .formatted(
                MomentStyle.MOMENT.format(pack.issue().validFrom()),
                MomentStyle.MOMENT.format(pack.issue().validTo()));
  }

  private static String stands(Path file) {
    return "%s: error: no issue of it is registered, and its files have this notice already: whether its drivers have it, nothing here tells%n  Maybe take the notice out of its files and run this again; or, where they have it, register the pack as it is with: register enter"
        .formatted(file);
  }

  private static String old(Path file, int taken, Entry latest) {
    return "%s: error: issue %d took this notice in, and issue %d, which came after it, changed what it says; an old notice is not taken in twice%n  Maybe a newer notice is meant; where this one is to stand again, it needs another date or reference"
        .formatted(file, taken, latest.number());
  }

  private static String digest(PackFile pack, List<TemporaryRestriction> notices) {
    return notices.isEmpty()
        ? ""
        : Digest.of(
            new NoticeText(pack.route()).yaml(notices, "").getBytes(StandardCharsets.UTF_8));
  }

  /** What a second look found; it does not keep anything back. */
  private static Answer noted(Problems problems) {
    return new Answer(List.of(), List.of(), Answer.of(problems).problems(), true);
  }
}
