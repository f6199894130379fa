package gradepost.app;

import gradepost.app.IssueMaker.Before;
import gradepost.app.IssueMaker.Draft;
import gradepost.app.IssueMaker.Made;
import gradepost.app.Outcome.State;
import gradepost.reissue.Comparison;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Entry.Kept;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.Register.By;
import gradepost.reissue.register.RegisterException;
import gradepost.route.TemporaryRestriction;
import gradepost.source.Amendment;
import gradepost.source.Input;
import gradepost.source.NoticeText;
import gradepost.source.PackFile;
import gradepost.source.Problems;
import gradepost.source.Reading;
import gradepost.source.Sources;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The way of one pack through a reissue, up to files in the archive. */
final class PackReissue {
  static final Progress SILENT =
      new Progress() {
        @Override
        public void expect(int papers) {}

        @Override
        public void done(String paper) {}
      };

  private final Reissue.Order order;
  private final By by;
  private final Optional<Register> register;
  private final Layout layout;
  private final Archive archive;

  PackReissue(Reissue.Order order, By by, Optional<Register> register, Layout layout) {
    this.order = order;
    this.by = by;
    this.register = register;
    this.layout = layout;
    this.archive = new Archive(order.store().archive());
  }

  Outcome of(Path file) throws IOException, RegisterException {
    Sources disk = Disk.sources();
    String name = PackFiles.stem(file);
    Reading<PackFile> reading = disk.pack(Disk.name(file));
    if (!(reading instanceof Reading.Good<PackFile> found)) {
      return Outcome.of(file, State.UNREADABLE, Answer.of(reading.problems()));
    }
    Answer noted = Answer.GOOD;
    List<TemporaryRestriction> notices = List.of();
    if (order.notice().isPresent()) {
      var read = disk.notices(Disk.name(order.notice().get()), found.value().route());
      noted = noted(read.problems());
      if (!(read instanceof Reading.Good<List<TemporaryRestriction>> good)) {
        return Outcome.of(file, State.UNREADABLE, Answer.of(read.problems()));
      }
      notices = good.value();
      if (notices.isEmpty()) {
        String said = name + ": not touched, the notice is for another route";
        return Outcome.of(file, State.ELSEWHERE, Answer.said(said));
      }
    }
    Optional<Entry> latest = latest(name);
    String digest = digest(found.value(), notices);
    if (latest.isPresent() && !digest.isEmpty() && latest.get().notice().equals(digest)) {
      String said = "%s: issue %d has this notice".formatted(name, latest.get().number());
      return new Outcome(
          file, State.KNOWN, Answer.said(said), Optional.empty(), Optional.empty(), latest);
    }
    return compared(file, found.value(), notices, digest, latest, noted);
  }

  private Outcome compared(
      Path file,
      PackFile found,
      List<TemporaryRestriction> notices,
      String digest,
      Optional<Entry> latest,
      Answer noted)
      throws IOException, RegisterException {
    String name = PackFiles.stem(file);
    Optional<PackFile> base =
        latest.isPresent() ? Kits.pack(archive, latest.get()) : Optional.of(found);
    if (base.isEmpty()) {
      String said =
          "%s: error: the archive does not hold the inputs of %s whole"
              .formatted(file, latest.orElseThrow().name());
      return Outcome.of(file, State.UNREADABLE, Answer.refused(said));
    }
    List<Input> inputs = notices.isEmpty() ? found.inputs() : Amendment.withNotices(found, notices);
    Reading<PackFile> amended = Kits.read(inputs);
    if (!(amended instanceof Reading.Good<PackFile> same)) {
      return failed(file, latest, found, Answer.of(amended.problems()));
    }
    if (!mayDiffer(file, base.get(), same.value())) {
      return Outcome.of(file, State.UNTOUCHED, noted.and(Answer.said(name + ": not touched")));
    }
    LocalDateTime last = base.get().issue().issued();
    LocalDateTime issued = by.when().isBefore(last) ? last : by.when();
    Answer told = noted;
    if (!issued.equals(by.when())) {
      told =
          told.and(
              Answer.said(
                  "%s: the clock says %s, before the last issue: dated %s"
                      .formatted(name, by.when(), issued)));
    }
    LocalDateTime from = order.validFrom().orElse(issued);
    if (!from.isBefore(found.issue().validTo())) {
      String said =
          "%s: error: the pack is valid to %s: set a later valid-to before it is issued again"
              .formatted(file, found.issue().validTo());
      return failed(file, latest, found, Answer.refused(said));
    }
    int before = latest.map(Entry::number).orElse(found.issue().number());
    List<Input> next = new ArrayList<>(inputs);
    Input own = inputs.get(0);
    next.set(
        0,
        new Input(
            own.name(),
            Amendment.issue(
                own.bytes(), before + 1, issued, from, issued, String.valueOf(before))));
    Reading<PackFile> read = Kits.read(next);
    if (!(read instanceof Reading.Good<PackFile> good)) {
      return failed(file, latest, found, Answer.of(read.problems()));
    }
    return made(
        file, found, good.value(), new Before(base.get(), sheets(latest)), digest, latest, told);
  }

  private Outcome made(
      Path file,
      PackFile found,
      PackFile now,
      Before before,
      String digest,
      Optional<Entry> latest,
      Answer noted)
      throws IOException, RegisterException {
    String name = PackFiles.stem(file);
    int number = now.issue().number();
    IssueMaker maker = new IssueMaker(layout);
    Draft draft = maker.draft(file, now, Optional.of(before), order.emergency());
    if (!draft.made().failures().isEmpty()) {
      Answer told = Answer.refused(String.join("\n", draft.made().failures()));
      return failed(file, latest, found, noted.and(told));
    }
    if (!draft.made().differs(number)) {
      return Outcome.of(file, State.UNTOUCHED, noted.and(Answer.said(name + ": not touched")));
    }
    List<String> said = new ArrayList<>();
    long changed = draft.made().sheets().stream().filter(s -> s.since() == number).count();
    said.add(
        "%s: issue %d %s the place of %d: %d of %d sheets change"
            .formatted(
                name,
                number,
                order.dryRun() ? "would take" : "takes",
                before.pack().issue().number(),
                changed,
                draft.made().sheets().size()));
    draft.made().changes().forEach(c -> said.add("  " + c));
    Answer told = noted.and(new Answer(said, List.of(), List.of(), true));
    if (order.dryRun()) {
      return Outcome.of(file, State.READY, told);
    }
    Made made = maker.finish(draft, Concerns.of(register, layout, name), SILENT);
    Entry entry = entry(name, found, now, made, digest, before.pack().issue().number());
    return new Outcome(
        file,
        State.READY,
        told,
        latest.isPresent() ? Optional.empty() : Optional.of(takenIn(name, before.pack())),
        Optional.of(entry),
        Optional.empty());
  }

  /** A pack that cannot be issued is taken in as it is, so that its change is not forgotten. */
  private Outcome failed(Path file, Optional<Entry> latest, PackFile found, Answer told)
      throws IOException {
    Optional<Entry> base =
        latest.isPresent() || order.dryRun()
            ? Optional.empty()
            : Optional.of(takenIn(PackFiles.stem(file), found));
    return new Outcome(file, State.FAILED, told, base, Optional.empty(), Optional.empty());
  }

  private Entry takenIn(String name, PackFile pack) throws IOException {
    return Kits.entry(
        name,
        pack,
        "",
        Optional.empty(),
        "",
        false,
        Kits.keep(archive, pack.inputs()),
        List.of(),
        List.of(),
        List.of());
  }

  private Entry entry(String name, PackFile found, PackFile now, Made made, String digest, int base)
      throws IOException {
    List<Kept> papers = new ArrayList<>();
    for (Paper paper : made.papers()) {
      papers.add(new Kept(paper.name(), archive.keep(paper.bytes())));
    }
    for (Paper paper : made.office()) {
      papers.add(new Kept(paper.name(), archive.keep(paper.bytes())));
    }
    Map<String, String> old = new HashMap<>();
    found.inputs().forEach(i -> old.put(i.name(), Digest.of(i.bytes())));
    List<Kept> changed = new ArrayList<>();
    for (Input input : now.inputs()) {
      String was = old.getOrDefault(input.name(), "");
      if (!was.equals(Digest.of(input.bytes()))) {
        changed.add(new Kept(input.name(), was));
      }
    }
    return Kits.entry(
        name,
        now,
        Maker.of(layout),
        Optional.of(base),
        digest,
        order.emergency(),
        Kits.keep(archive, now.inputs()),
        changed,
        papers,
        made.sheets());
  }

  private static boolean mayDiffer(Path file, PackFile before, PackFile after) {
    List<Task> old = Task.of(file, before);
    List<Task> now = Task.of(file, after);
    if (old.size() != now.size()) {
      return true;
    }
    for (int i = 0; i < now.size(); i++) {
      if (!old.get(i).stem().equals(now.get(i).stem())
          || Comparison.mayDiffer(old.get(i).assignment(), now.get(i).assignment())) {
        return true;
      }
    }
    return false;
  }

  private static List<Entry.Sheet> sheets(Optional<Entry> latest) {
    return latest.map(Entry::sheets).orElse(List.of());
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

  /** The register has one connection: one question at a time. */
  private Optional<Entry> latest(String name) throws RegisterException {
    if (register.isEmpty()) {
      return Optional.empty();
    }
    synchronized (register.get()) {
      return register.get().latest(name);
    }
  }
}
