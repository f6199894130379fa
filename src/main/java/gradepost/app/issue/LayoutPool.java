package gradepost.app.issue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/**
 * Makes several papers at once, as many as there are cores. A layout serves one thread at a time,
 * so that each paper under way has one of its own.
 */
public final class LayoutPool implements AutoCloseable {

  /** The making of one paper and of what belongs to it. */
  public interface Job<T> {
    /** Makes one paper on a layout that no other thread uses meanwhile. */
    T on(Layout layout) throws IOException;
  }

  private final Optional<Path> templates;
  private final ConcurrentLinkedQueue<Layout> idle = new ConcurrentLinkedQueue<>();
  private final ExecutorService pool =
      Executors.newFixedThreadPool(Runtime.getRuntime().availableProcessors());

  /** The first layout is made while the packs are read. */
  private final Future<Layout> first;

  /**
   * @param templates folder of a depot's own templates
   */
  public LayoutPool(Optional<Path> templates) {
    this.templates = templates;
    first = pool.submit(() -> new Layout(templates));
  }

  /** What the jobs make, in their order; where one fails, the rest is left. */
  public <T> List<T> all(List<Job<T>> jobs) throws IOException {
    List<Future<T>> begun = new ArrayList<>();
    jobs.forEach(job -> begun.add(pool.submit(() -> one(job))));
    try {
      List<T> made = new ArrayList<>();
      for (Future<T> future : begun) {
        made.add(result(future));
      }
      return made;
    } finally {
      begun.forEach(future -> future.cancel(false));
    }
  }

  /** Waits for the first layout, which fails where the templates cannot be used. */
  public void ready() throws IOException {
    idle.add(first());
  }

  /** The first layout, for somebody who lays out by himself. */
  public Layout first() throws IOException {
    return result(first);
  }

  private static <T> T result(Future<T> future) throws IOException {
    try {
      return future.get();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("stopped", e);
    } catch (ExecutionException e) {
      if (e.getCause() instanceof IOException io) {
        throw io;
      }
      if (e.getCause() instanceof RuntimeException fault) {
        throw fault;
      }
      throw new IllegalStateException(e.getCause());
    }
  }

  private <T> T one(Job<T> job) throws IOException {
    Layout free = idle.poll();
    Layout layout = free == null ? new Layout(templates) : free;
    try {
      return job.on(layout);
    } finally {
      idle.add(layout);
    }
  }

  @Override
  public void close() {
    pool.shutdown();
  }
}
