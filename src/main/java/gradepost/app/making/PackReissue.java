package gradepost.app.making;

import gradepost.app.issue.ArchivedInputs;
import gradepost.app.issue.ArchivedInputs.Issued;
import gradepost.app.issue.Concern;
import gradepost.app.issue.DifferenceFinder;
import gradepost.app.issue.Differences;
import gradepost.app.issue.IssuePapers;
import gradepost.app.issue.Layout;
import gradepost.app.issue.Maker;
import gradepost.app.making.Outcome.State;
import gradepost.app.store.Answer;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.RegisterException;
import gradepost.render.chart.TemplateFault;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/** The way of one touched pack through a reissue: compare, lay out, keep, register. */
public final class PackReissue {
  private final Layout layout;
  private final Optional<Registry> registry;
  private final Consumer<Differences> watching;

  /**
   * @param layout that no other thread uses meanwhile
   * @param registry empty for a dry run; then nothing is kept
   */
  public PackReissue(Layout layout, Optional<Registry> registry) {
    this(layout, registry, differences -> {});
  }

  /**
   * @param registry empty for a dry run; then nothing is kept
   * @param watching is shown what differs, of every pack that is fit for issue
   */
  public PackReissue(Layout layout, Optional<Registry> registry, Consumer<Differences> watching) {
    this.layout = layout;
    this.registry = registry;
    this.watching = watching;
  }

  /** A pack that cannot be laid out does not stop the others. */
  public Outcome of(Due due) throws IOException, RegisterException {
    try {
      return worked(due);
    } catch (TemplateFault e) {
      String why = due.file() + ": error: " + e.getMessage();
      return Outcome.of(due.file(), State.FAILED, Answer.refused(why));
    }
  }

  private Outcome worked(Due due) throws IOException, RegisterException {
    Differences differences =
        new DifferenceFinder(layout.messages()).of(due.file(), due.now(), Optional.of(due.last()));
    if (!differences.failures().isEmpty()) {
      Answer why = Answer.refused(String.join("\n", differences.failures()));
      return Outcome.of(due.file(), State.FAILED, due.told().and(why));
    }
    String name = due.now().id();
    if (!differences.any()) {
      return Outcome.of(
          due.file(), State.UNTOUCHED, due.told().and(Answer.said(name + ": not touched")));
    }
    watching.accept(differences);
    Answer told = due.told().and(new Answer(told(name, differences), List.of(), List.of(), true));
    return Outcome.of(
        due.file(),
        State.ISSUED,
        registry.isPresent() ? registered(due, differences, registry.get(), told) : told);
  }

  private Answer registered(Due due, Differences differences, Registry registry, Answer before)
      throws IOException, RegisterException {
    Concern concern = registry.concern(layout, due.now().id());
    boolean urgent = due.because().urgent();
    IssuePapers.Laid laid = new IssuePapers(layout, urgent, concern).of(differences, paper -> {});
    Entry entry =
        ArchivedInputs.issued(
            registry.archive(),
            due.now(),
            new Issued(Maker.of(layout), due.because(), laid.all(), differences.sheets()));
    Answer told = before.and(new Answer(List.of(), List.of(), concern.replaced(), true));
    registry.enter(entry, due.now().issue().checker(), told);
    return told;
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
                registry.isEmpty() ? "would take" : "takes",
                number - 1,
                sheets.stream().filter(s -> s.since() == number).count(),
                sheets.size()));
    differences.inWords().forEach(c -> said.add("  " + c));
    return said;
  }
}
