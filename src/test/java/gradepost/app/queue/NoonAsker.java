package gradepost.app.queue;

import gradepost.app.Depot;
import gradepost.app.reissue.Order;
import gradepost.app.reissue.Reissue;
import gradepost.app.store.Answer;
import gradepost.app.store.Disk;
import gradepost.app.store.Progress;
import gradepost.app.store.Store;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;

/** A clerk at noon: a reissue in a process of its own, always of the same minute. */
final class NoonAsker {
  /**
   * Exits as the command does, unless it is killed.
   *
   * @param args the address of the register, or empty text for a run without a queue; the folder of
   *     routes and papers; the notice; the threads of a run without a queue, two if not told
   */
  public static void main(String[] args) {
    boolean queued = !args[0].isEmpty();
    Path work = Path.of(args[1]);
    Store store =
        queued ? Store.of(args[0], Optional.of(Path.of(Store.REGISTER))) : new Depot(work).store();
    Optional<Queue> queue = queued ? Optional.of(Queue.awaited(left -> {})) : Optional.empty();
    int threads = args.length > 3 ? Integer.parseInt(args[3]) : 2;
    Answer answer = reissue(store, work, Path.of(args[2]), queue, threads);
    answer.said().forEach(System.out::println);
    answer.problems().forEach(System.out::println);
    System.out.println(Cost.ofThisProcess("asker"));
    System.exit(answer.good() ? 0 : 1);
  }

  /**
   * The same in this process.
   *
   * @param threads of a run without a queue
   */
  static Answer reissue(Store store, Path work, Path notice, Optional<Queue> queue, int threads) {
    Order order =
        new Order(
            new Order.Read(List.of(work.resolve("routes")), Optional.of(notice), Order.Edits.NONE),
            new Order.Tell(Optional.empty(), Optional.empty(), false, Optional.empty()),
            new Order.Put(work.resolve("out"), store, false),
            new Order.Pace(threads, Duration.ofSeconds(10)));
    return new Reissue(Depot.NOON, "a clerk", Progress.SILENT, Disk.sources(), queue.map(q -> q))
        .of(order);
  }

  private NoonAsker() {}
}
