package gradepost.app.queue;

import gradepost.app.store.Answer;
import gradepost.app.store.Store;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;

/** A worker until all is done, which tells its processor time. */
final class CountedWorker {
  /**
   * Works and ends.
   *
   * @param args the address of the register, and the number of threads
   */
  public static void main(String[] args) {
    Store store = Store.of(args[0], Optional.of(Path.of(Store.REGISTER)));
    Worker.Pace pace = new Worker.Pace(Integer.parseInt(args[1]), Duration.ofSeconds(15), true);
    Answer answer =
        new Worker(store, pace, told -> told.problems().forEach(System.out::println)).run();
    answer.problems().forEach(System.out::println);
    System.out.println(Cost.ofThisProcess("worker"));
    System.exit(answer.good() ? 0 : 1);
  }

  private CountedWorker() {}
}
