package gradepost.app;

import gradepost.app.Outcome.State;
import gradepost.reissue.register.RegisterException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;

/**
 * Works on several packs at once. Where a disk or the register fails, what is begun is brought to
 * an end and the rest is left: it would fail as well.
 */
final class Crew {

  /** What is done to a pack. */
  interface Work {
    Outcome on(Path pack) throws IOException, RegisterException;
  }

  /** In the order of the packs. When this returns, nobody is at work any more. */
  static List<Outcome> outcomes(int threads, List<Path> packs, Work work) throws IOException {
    AtomicBoolean stopped = new AtomicBoolean();
    ExecutorService pool = Executors.newFixedThreadPool(Math.max(1, threads));
    try {
      List<Future<Outcome>> futures = new ArrayList<>();
      for (Path pack : packs) {
        futures.add(pool.submit(() -> one(pack, work, stopped)));
      }
      List<Outcome> outcomes = new ArrayList<>();
      for (Future<Outcome> future : futures) {
        outcomes.add(future.get());
      }
      return outcomes;
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

  private static Outcome one(Path pack, Work work, AtomicBoolean stopped) {
    if (stopped.get()) {
      return Outcome.of(pack, State.LEFT, Answer.GOOD);
    }
    try {
      return work.on(pack);
    } catch (IOException e) {
      stopped.set(true);
      return Outcome.of(pack, State.LEFT, Answer.refused(Trouble.inWords(e)));
    } catch (RegisterException e) {
      stopped.set(true);
      return Outcome.of(pack, State.LEFT, Answer.refused("error: " + e.getMessage()));
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

  private Crew() {}
}
