package gradepost.app.queue;

import gradepost.app.issue.Concern;
import gradepost.app.issue.Layout;
import gradepost.app.making.Concerns;
import gradepost.app.making.Outcome.State;
import gradepost.app.making.Registry;
import gradepost.app.store.Answer;
import gradepost.app.store.Archive;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Jobs.Ended;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import java.util.Optional;

/**
 * Enters the issue of a job and ends the job, both or neither. Where the job is ended already, the
 * result comes too late and nothing is entered.
 */
final class JobRegistry implements Registry {
  private final IssueTask task;
  private final Register register;
  private final Archive archive;
  private boolean late;

  JobRegistry(IssueTask task, Register register, Archive archive) {
    this.task = task;
    this.register = register;
    this.archive = archive;
  }

  /** Whether another worker has ended the job, so that nothing was entered here. */
  boolean isLate() {
    return late;
  }

  @Override
  public Archive archive() {
    return archive;
  }

  @Override
  public Concern concern(Layout layout, String pack) throws RegisterException {
    return Concerns.of(register, layout, pack);
  }

  @Override
  public void enter(Entry entry, Optional<String> checker, Answer told) throws RegisterException {
    register.together(
        () -> {
          end(State.ISSUED, told);
          register.issue(task.by(), entry, checker, task.why());
        });
  }

  /** Ends the job though there is no issue. */
  void without(State state, Answer told) throws RegisterException {
    register.together(() -> end(state, told));
  }

  private void end(State state, Answer told) throws RegisterException {
    if (!register.jobs().end(new Ended(task.job(), state.name(), Json.of(told)))) {
      late = true;
      throw new RegisterException(QueueText.LATE.with(task.job().name()));
    }
  }
}
