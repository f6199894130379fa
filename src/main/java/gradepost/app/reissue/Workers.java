package gradepost.app.reissue;

import gradepost.app.making.Making;
import gradepost.app.store.Answer;
import gradepost.reissue.register.Jobs;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.Register.By;
import gradepost.reissue.register.RegisterException;
import java.io.IOException;
import java.util.List;
import java.util.Optional;

/** Others who make the issues of a run, in processes of their own. */
public interface Workers {
  /**
   * Waits for what an earlier run asked for and did not see the end of, and tells of it.
   *
   * <p>What another cause asked for is in the way.
   */
  Answer earlier(Order order, Register register) throws IOException, RegisterException;

  /** What they make for this run. */
  Making making(Order order, By by, Register register) throws IOException;

  /** What works out a run that only says what would happen; empty where this process does. */
  default Optional<Making> dry(Order order) {
    return Optional.empty();
  }

  /** What workers have still to do is done before a run begins, or is in its way. */
  static Answer earlier(Optional<Workers> workers, Order order, Register register)
      throws IOException, RegisterException {
    if (workers.isPresent()) {
      return workers.get().earlier(order, register);
    }
    List<Jobs.Open> open = register.jobs().open();
    return open.isEmpty() ? Answer.GOOD : inTheWay(open);
  }

  /** What workers have still to do for another cause is in the way. */
  static Answer inTheWay(List<Jobs.Open> open) {
    Jobs.Open first = open.get(0);
    return Answer.refused(
        "error: "
            + ReissueText.AT_WORK.with(open.size(), first.job().name(), first.who()).inWords());
  }
}
