package gradepost.app.making;

import gradepost.app.store.Answer;
import gradepost.app.store.IoErrorText;
import gradepost.reissue.register.RegisterException;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.BiFunction;

/**
 * Works on several packs at once. Where a disk or the register fails, what is begun is brought to
 * an end and the rest is left: it would fail as well.
 */
public final class ParallelPacks {

  /** What is done to a pack. */
  public interface Work<P, T> {
    /** Does it. */
    T on(P pack) throws IOException, RegisterException;
  }

  /**
   * In the order of the packs. When this returns, nobody is at work any more.
   *
   * @param left what becomes of a pack that is left, and why
   */
  public static <P, T> List<T> results(
      int threads, List<P> packs, Work<P, T> work, BiFunction<P, Answer, T> left)
      throws IOException {
    AtomicBoolean stopped = new AtomicBoolean();
    ExecutorService pool = Executors.newFixedThreadPool(Math.max(1, threads));
    try {
      List<Future<T>> futures = new ArrayList<>();
      for (P pack : packs) {
        futures.add(pool.submit(() -> one(pack, work, left, stopped)));
      }
      List<T> results = new ArrayList<>();
      for (Future<T> future : futures) {
        results.add(future.get());
      }
      return results;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("stopped", e);
    } catch (ExecutionException e) {
      if (e.getCause() instanceof RuntimeException fault) {
        throw fault;
      }
      throw new IOException(String.valueOf(e.getCause()), e);
    } finally {
      stopped.set(true);
      pool.shutdown();
      ended(pool);
    }
  }

  private static <P, T> T one(
      P pack, Work<P, T> work, BiFunction<P, Answer, T> left, AtomicBoolean stopped) {
    if (stopped.get()) {
      return left.apply(pack, Answer.GOOD);
    }
    try {
      return work.on(pack);
    } catch (IOException e) {
      stopped.set(true);
      return left.apply(pack, Answer.refused(IoErrorText.inWords(e)));
    } catch (RegisterException e) {
      stopped.set(true);
      return left.apply(pack, Answer.refused("error: " + e.getMessage()));
    }
  }

  private static void ended(ExecutorService pool) throws IOException {
    try {
      if (!pool.awaitTermination(1, TimeUnit.HOURS)) {
        throw new IOException("a pack took more than an hour");
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("stopped", e);
    }
  }

  private ParallelPacks() {}
}
