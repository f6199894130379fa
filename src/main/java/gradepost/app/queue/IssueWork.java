package gradepost.app.queue;

import gradepost.app.issue.ArchivedInputs;
import gradepost.app.issue.ArchivedInputs.Because;
import gradepost.app.issue.LastIssue;
import gradepost.app.issue.Layout;
import gradepost.app.making.Due;
import gradepost.app.making.Outcome;
import gradepost.app.making.Outcome.State;
import gradepost.app.making.PackReissue;
import gradepost.app.store.Answer;
import gradepost.app.store.Archive;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Entry.Kept;
import gradepost.reissue.register.Jobs.Begun;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import gradepost.source.Sources;
import gradepost.source.file.Input;
import gradepost.source.pack.PackFile;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/** Does tasks, one at a time: one for each thread of a worker. */
final class IssueWork {
  /** As often may workers end while they are at an issue, before it is given up. */
  private static final int DEATHS = 20;

  /** As often may they run out of memory at it. */
  private static final int SHORTAGES = 3;

  private final Register register;
  private final Archive archive;
  private final Sources sources;
  private List<Kept> templates = List.of();
  private Optional<Layout> layout = Optional.empty();

  /**
   * @param register that no other thread uses
   */
  IssueWork(Register register, Archive archive, Sources sources) {
    this.register = register;
    this.archive = archive;
    this.sources = sources;
  }

  /**
   * Makes the issue and ends the job, whatever comes of it; nothing where it is ended already.
   *
   * @throws IOException where the archive or the register fails: then it can be tried again
   */
  Optional<Outcome> on(IssueTask task) throws IOException, RegisterException {
    Optional<Begun> begun = register.jobs().begin(task.job());
    if (begun.isEmpty()) {
      return Optional.empty();
    }
    JobRegistry registry = new JobRegistry(task, register, archive);
    try {
      Outcome outcome =
          begun.get().times() > DEATHS
              ? failed(task, QueueText.GIVEN_UP.with(task.job().name(), DEATHS).inWords())
              : made(task, registry);
      if (outcome.state() != State.ISSUED) {
        registry.without(outcome.state(), outcome.told());
      }
      return Optional.of(outcome);
    } catch (RegisterException e) {
      if (registry.isLate()) {
        return Optional.empty();
      }
      throw e;
    }
  }

  private Outcome made(IssueTask task, JobRegistry registry) throws IOException, RegisterException {
    try {
      Optional<Due> due = due(task);
      return due.isEmpty()
          ? failed(task, QueueText.INPUTS_LOST.with(task.job().name()).inWords())
          : new PackReissue(layout(task), Optional.of(registry)).of(due.get());
    } catch (OutOfMemoryError e) {
      layout = Optional.empty();
      if (register.jobs().failed(task.job()) < SHORTAGES) {
        throw e;
      }
      return failed(task, QueueText.NO_MEMORY.with(task.job().name(), SHORTAGES).inWords());
    } catch (RuntimeException | StackOverflowError e) {
      layout = Optional.empty();
      return failed(task, QueueText.FAULT.with(task.job().name(), e.toString()).inWords());
    }
  }

  private static Outcome failed(IssueTask task, String why) {
    return Outcome.of(Path.of(task.file()), State.FAILED, Answer.refused("error: " + why));
  }

  /** Empty where the archive does not hold everything whole. */
  private Optional<Due> due(IssueTask task) throws IOException, RegisterException {
    int last = task.number() - 1;
    Optional<Entry> before = register.issue(task.pack(), last);
    Optional<PackFile> then =
        before.isPresent() ? ArchivedInputs.pack(sources, archive, before.get()) : Optional.empty();
    Optional<List<Input>> inputs = ArchivedInputs.whole(archive, task.inputs());
    Optional<PackFile> now =
        inputs.isPresent() ? sources.pack(inputs.get()).found() : Optional.empty();
    if (then.isEmpty() || now.isEmpty()) {
      return Optional.empty();
    }
    Because because = new Because(Optional.of(last), task.notice(), task.urgent(), task.found());
    LastIssue base = new LastIssue(then.get(), before.orElseThrow().sheets());
    return Optional.of(new Due(Path.of(task.file()), now.get(), base, because, Answer.GOOD));
  }

  private Layout layout(IssueTask task) throws IOException {
    if (layout.isEmpty() || !templates.equals(task.templates())) {
      Map<String, String> texts = new TreeMap<>();
      for (Input each : ArchivedInputs.whole(archive, task.templates()).orElse(List.of())) {
        texts.put(each.name(), new String(each.bytes(), StandardCharsets.UTF_8));
      }
      layout = Optional.of(new Layout(texts));
      templates = task.templates();
    }
    return layout.get();
  }

  /** Gives the register back, which may be lost. */
  void close() throws RegisterException {
    register.close();
  }
}
