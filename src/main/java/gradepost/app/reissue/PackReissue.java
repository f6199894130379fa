package gradepost.app.reissue;

import gradepost.app.issue.ArchivedInputs;
import gradepost.app.issue.ArchivedInputs.Because;
import gradepost.app.issue.ArchivedInputs.Issued;
import gradepost.app.issue.Concern;
import gradepost.app.issue.DifferenceFinder;
import gradepost.app.issue.Differences;
import gradepost.app.issue.IssuePapers;
import gradepost.app.issue.LastIssue;
import gradepost.app.issue.Layout;
import gradepost.app.issue.Maker;
import gradepost.app.reissue.Outcome.State;
import gradepost.app.store.Answer;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.Register.By;
import gradepost.reissue.register.RegisterException;
import gradepost.render.chart.TemplateFault;
import gradepost.source.pack.PackFile;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The way of one touched pack through a reissue: compare, lay out, keep, register. */
public final class PackReissue {
  private final Order order;
  private final By by;
  private final Optional<Register> register;
  private final Layout layout;

  /**
   * @param register empty where there is none yet; then nothing is kept
   */
  PackReissue(Order order, By by, Optional<Register> register, Layout layout) {
    this.order = order;
    this.by = by;
    this.register = register;
    this.layout = layout;
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
    Answer told = touched.outcome().told().and(touched.next().said());
    if (touched.next().obstacle().isPresent()) {
      return failed(file, told.and(touched.next().obstacle().get()));
    }
    LastIssue last =
        new LastIssue(touched.before(), touched.latest().map(Entry::sheets).orElse(List.of()));
    Differences differences =
        new DifferenceFinder(layout.messages()).of(file, touched.next().pack(), Optional.of(last));
    if (!differences.failures().isEmpty()) {
      return failed(file, told.and(Answer.refused(String.join("\n", differences.failures()))));
    }
    String name = touched.next().pack().id();
    if (!differences.any()) {
      return Outcome.of(file, State.UNTOUCHED, told.and(Answer.said(name + ": not touched")));
    }
    told = told.and(new Answer(told(name, differences), List.of(), List.of(), true));
    if (!order.put().dryRun() && register.isPresent()) {
      told = told.and(registered(name, touched, differences, register.get()));
    }
    return Outcome.of(file, State.ISSUED, told);
  }

  private static Outcome failed(Path file, Answer told) {
    return Outcome.of(file, State.FAILED, told);
  }

  private Answer registered(
      String name, Seen.Touched touched, Differences differences, Register register)
      throws IOException, RegisterException {
    Concern concern = Concerns.of(register, layout, name);
    boolean urgent = order.tell().emergency();
    IssuePapers.Laid laid = new IssuePapers(layout, urgent, concern).of(differences, paper -> {});
    PackFile now = differences.now();
    Because because =
        new Because(
            Optional.of(now.issue().number() - 1),
            touched.digest(),
            urgent,
            touched.found().inputs());
    Entry entry =
        ArchivedInputs.issued(
            order.put().store().kept(),
            now,
            new Issued(Maker.of(layout), because, laid.all(), differences.sheets()));
    // The register has one connection: one act at a time.
    synchronized (register) {
      register.issue(by, entry, now.issue().checker());
    }
    return new Answer(List.of(), List.of(), concern.replaced(), true);
  }

  private List<String> told(String name, Differences differences) {
    int number = differences.now().issue().number();
    List<Entry.Sheet> sheets = differences.sheets();
    List<String> said = new ArrayList<>();
    said.add(
        "%s: issue %d %s the place of %d: %d of %d sheets change"
            .formatted(
                name,
                number,
                order.put().dryRun() ? "would take" : "takes",
                number - 1,
                sheets.stream().filter(s -> s.since() == number).count(),
                sheets.size()));
    differences.inWords().forEach(c -> said.add("  " + c));
    return said;
  }
}
