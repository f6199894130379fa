package gradepost.app.queue;

import gradepost.app.making.Making;
import gradepost.app.making.Outcome.State;
import gradepost.app.reissue.Order;
import gradepost.app.reissue.Workers;
import gradepost.app.store.Answer;
import gradepost.reissue.register.Jobs;
import gradepost.reissue.register.Jobs.Ended;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.Register.By;
import gradepost.reissue.register.RegisterException;
import java.io.IOException;
import java.util.List;
import java.util.function.IntConsumer;

/** The workers of a register in PostgreSQL, as whoever asks for issues sees them. */
public final class Queue implements Workers {
  private static final long STEP_MS = 250;
  private static final long STEP_PER_ISSUE_MS = 10;
  private static final long LONGEST_STEP_MS = 5000;
  private final boolean detached;
  private final IntConsumer waits;

  private Queue(boolean detached, IntConsumer waits) {
    this.detached = detached;
    this.waits = waits;
  }

  /** Nobody waits for the workers. */
  public static Queue detached() {
    return new Queue(true, left -> {});
  }

  /**
   * Whoever asks waits for the workers.
   *
   * @param waits is told, when the waiting begins, how many issues are to be made
   */
  public static Queue awaited(IntConsumer waits) {
    return new Queue(false, waits);
  }

  @Override
  public Answer earlier(Order order, Register register) throws IOException, RegisterException {
    Jobs jobs = register.jobs();
    jobs.dropHalfAsked();
    List<Jobs.Open> open = jobs.open();
    String cause = order.cause();
    if (!open.stream().allMatch(o -> o.cause().equals(cause))) {
      return Workers.inTheWay(open);
    } else if (!open.isEmpty() && detached) {
      return Answer.refused("error: " + QueueText.STILL.with(open.size()).inWords());
    }
    Answer answer = told(jobs.take(cause));
    if (!open.isEmpty()) {
      waits.accept(open.size());
    }
    int left = jobs.waiting();
    while (left > 0) {
      pause(left);
      answer = answer.and(told(jobs.take(cause)));
      left = jobs.waiting();
    }
    return answer.and(told(jobs.take(cause)));
  }

  /** What was issued is told where it is put in place, and what failed is tried again. */
  private static Answer told(List<Ended> all) throws IOException {
    Answer answer = Answer.GOOD;
    for (Ended ended : all) {
      if (ended.state().equals(State.ISSUED.name())) {
        Answer told = Json.answer(ended.told());
        answer = answer.and(new Answer(told.said(), List.of(), told.problems(), true));
      }
    }
    return answer;
  }

  @Override
  public Making making(Order order, By by, Register register) {
    return new Asking(order, by, register, detached, waits);
  }

  /**
   * Waits before the workers' register is asked again: the longer, the more there is to be done.
   *
   * @param left how many issues are not made yet
   */
  static void pause(int left) throws IOException {
    try {
      Thread.sleep(Math.min(LONGEST_STEP_MS, STEP_MS + STEP_PER_ISSUE_MS * left));
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException(QueueText.STOPPED.inWords(), e);
    }
  }
}
