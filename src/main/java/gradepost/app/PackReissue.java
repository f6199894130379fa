package gradepost.app;

import gradepost.app.IssueMaker.Before;
import gradepost.app.IssueMaker.Concern;
import gradepost.app.IssueMaker.Draft;
import gradepost.app.IssueMaker.Made;
import gradepost.app.Outcome.State;
import gradepost.app.PackLook.Seen;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Entry.Kept;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.Register.By;
import gradepost.reissue.register.RegisterException;
import gradepost.render.TemplateFault;
import gradepost.source.Amendment;
import gradepost.source.Input;
import gradepost.source.PackFile;
import gradepost.source.Reading;
import gradepost.source.Sources;
import gradepost.units.MomentStyle;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The way of one touched pack through a reissue: worked out, kept, registered. */
final class PackReissue {
  static final Progress SILENT =
      new Progress() {
        @Override
        public void expect(int papers) {}

        @Override
        public void done(String paper) {}
      };

  private final Reissue.Order order;
  private final Sources sources;
  private final By by;
  private final Optional<Register> register;
  private final Layout layout;
  private final Archive archive;

  PackReissue(
      Reissue.Order order, Sources sources, By by, Optional<Register> register, Layout layout) {
    this.order = order;
    this.sources = sources;
    this.by = by;
    this.register = register;
    this.layout = layout;
    this.archive = new Archive(order.store().archive());
  }

  private static Outcome failed(Path file, Answer told) {
    return Outcome.of(file, State.FAILED, told);
  }

  /** A pack that cannot be laid out does not stop the others. */
  Outcome of(Seen.Touched touched) throws IOException, RegisterException {
    try {
      return worked(touched);
    } catch (TemplateFault e) {
      Path file = touched.outcome().file();
      return failed(file, Answer.refused(file + ": error: " + e.getMessage()));
    }
  }

  private Outcome worked(Seen.Touched touched) throws IOException, RegisterException {
    Path file = touched.outcome().file();
    String name = PackFiles.stem(file);
    PackFile found = touched.found();
    LocalDateTime last = touched.before().issue().issued();
    LocalDateTime issued = by.when().isBefore(last) ? last : by.when();
    Answer told = touched.outcome().told();
    if (!issued.equals(by.when())) {
      told =
          told.and(
              Answer.said(
                  "%s: the clock says %s, before the last issue: dated %s"
                      .formatted(
                          name,
                          MomentStyle.MOMENT.format(by.when()),
                          MomentStyle.MOMENT.format(issued))));
    }
    LocalDateTime from = order.validFrom().orElse(issued);
    if (!from.isBefore(found.issue().validTo())) {
      String said =
          "%s: error: the pack is valid to %s: set a later valid-to before it is issued again"
              .formatted(file, MomentStyle.MOMENT.format(found.issue().validTo()));
      return failed(file, told.and(Answer.refused(said)));
    }
    int before = touched.latest().map(Entry::number).orElse(found.issue().number());
    List<Input> next = new ArrayList<>(touched.inputs());
    Input own = next.get(0);
    next.set(
        0,
        new Input(
            own.name(),
            Amendment.issue(
                own.bytes(),
                before + 1,
                issued,
                from,
                issued,
                String.valueOf(before),
                order.checkedBy())));
    Reading<PackFile> read = sources.pack(next);
    Map<String, String> stale = Map.of();
    if (read instanceof Reading.Good<PackFile> good) {
      stale = new SaidFirst(layout.messages()).stale(touched.before(), good.value());
    }
    if (!stale.isEmpty()) {
      next.set(0, new Input(own.name(), Amendment.highRisk(next.get(0).bytes(), stale)));
      read = sources.pack(next);
      for (String item : stale.keySet()) {
        String said = "%s: say this first: “%s” was written for an earlier issue, and is marked so";
        told = told.and(Answer.said(said.formatted(name, item)));
      }
    }
    return read instanceof Reading.Good<PackFile> good
        ? made(file, touched, good.value(), told)
        : failed(file, told.and(Answer.of(read.problems())));
  }

  private Outcome made(Path file, Seen.Touched touched, PackFile now, Answer noted)
      throws IOException, RegisterException {
    String name = PackFiles.stem(file);
    int number = now.issue().number();
    Before before =
        new Before(touched.before(), touched.latest().map(Entry::sheets).orElse(List.of()));
    IssueMaker maker = new IssueMaker(layout);
    Draft draft = maker.draft(file, now, Optional.of(before), order.emergency());
    if (!draft.made().failures().isEmpty()) {
      Answer told = Answer.refused(String.join("\n", draft.made().failures()));
      return failed(file, noted.and(told));
    }
    if (!draft.made().differs(number)) {
      return Outcome.of(file, State.UNTOUCHED, noted.and(Answer.said(name + ": not touched")));
    }
    Answer told = noted.and(new Answer(told(name, number, draft), List.of(), List.of(), true));
    if (!order.dryRun() && register.isPresent()) {
      Concern concern = Concerns.of(register, layout, name);
      told = told.and(new Answer(List.of(), List.of(), concern.replaced(), true));
      Made made = maker.finish(draft, concern, SILENT);
      Entry entry = entry(name, touched, now, made);
      synchronized (register.get()) {
        register.get().issue(by, entry);
      }
    }
    return Outcome.of(file, State.ISSUED, told);
  }

  private List<String> told(String name, int number, Draft draft) {
    List<String> said = new ArrayList<>();
    long changed = draft.made().sheets().stream().filter(s -> s.since() == number).count();
    said.add(
        "%s: issue %d %s the place of %d: %d of %d sheets change"
            .formatted(
                name,
                number,
                order.dryRun() ? "would take" : "takes",
                number - 1,
                changed,
                draft.made().sheets().size()));
    draft.made().changes().forEach(c -> said.add("  " + c));
    return said;
  }

  private Entry entry(String name, Seen.Touched touched, PackFile now, Made made)
      throws IOException {
    List<Kept> papers = new ArrayList<>();
    for (Paper paper : made.papers()) {
      papers.add(new Kept(paper.name(), archive.keep(paper.bytes())));
    }
    for (Paper paper : made.office()) {
      papers.add(new Kept(paper.name(), archive.keep(paper.bytes())));
    }
    Map<String, String> old = new HashMap<>();
    touched.found().inputs().forEach(i -> old.put(i.name(), Digest.of(i.bytes())));
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
        Optional.of(now.issue().number() - 1),
        touched.digest(),
        order.emergency(),
        Kits.keep(archive, now.inputs()),
        changed,
        papers,
        made.sheets());
  }
}
