package gradepost.app.queue;

import gradepost.app.making.Outcome;
import gradepost.app.store.Answer;
import gradepost.app.store.Disk;
import gradepost.app.store.Store;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import gradepost.source.Sources;
import java.io.IOException;
import java.util.Optional;
import java.util.function.Consumer;

/** The work of each thread of a worker: a register, an archive and a layout of its own. */
final class WorkOfThreads {
  private final Store store;
  private final Consumer<Answer> told;
  private final Sources sources = Disk.sources();
  private final ThreadLocal<Own> works = ThreadLocal.withInitial(Own::new);

  /**
   * @param told is told what became of each issue, by several threads
   */
  WorkOfThreads(Store store, Consumer<Answer> told) {
    this.store = store;
    this.told = told;
  }

  /** What it throws is a fault of the machine or the database: the task is tried again. */
  void on(IssueTask task) {
    Own own = works.get();
    try {
      if (own.work.isEmpty()) {
        own.work = Optional.of(new IssueWork(Register.again(store.url()), store.again(), sources));
      }
      Optional<Outcome> outcome = own.work.get().on(task);
      outcome.ifPresent(o -> told.accept(o.told()));
    } catch (IOException | RegisterException e) {
      dropped(own);
      throw new IllegalStateException(e);
    }
  }

  private static void dropped(Own own) {
    try {
      if (own.work.isPresent()) {
        own.work.get().close();
      }
    } catch (RegisterException e) {
      // It is lost already: that is why it is dropped.
      return;
    } finally {
      own.work = Optional.empty();
    }
  }

  /** What a thread has for itself. */
  private static final class Own {
    Optional<IssueWork> work = Optional.empty();
  }
}
