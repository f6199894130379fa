package gradepost.app;

import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.Register.By;
import gradepost.reissue.register.RegisterException;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/**
 * Takes a notice into packs: read, compare, make anew what it touches, keep, register, put in
 * place.
 *
 * <p>Nothing that lies in place is changed before the register has the new issue, and that is one
 * transaction. Whatever is interrupted after it, the next run puts in place from the archive.
 */
public final class Reissue {
  private final Clock clock;
  private final String who;
  private final Progress progress;

  /**
   * What is asked for.
   *
   * @param notice empty where the files in place have been edited by hand
   * @param validFrom empty means from the moment of issue
   * @param threads how many packs are worked on at once
   * @param patience how long to wait for another run
   */
  public record Order(
      List<Path> packs,
      Optional<Path> notice,
      Path out,
      Store store,
      Optional<LocalDateTime> validFrom,
      boolean emergency,
      boolean dryRun,
      int threads,
      Duration patience,
      Optional<Path> templates) {
    public Order {
      packs = List.copyOf(packs);
    }
  }

  public Reissue(Clock clock, String who, Progress progress) {
    this.clock = clock;
    this.who = who;
    this.progress = progress;
  }

  public Answer of(Order order) {
    try {
      List<Path> packs = PackFiles.packs(order.packs());
      Optional<String> obstacle = PackFiles.obstacle(order.packs(), packs);
      if (obstacle.isPresent()) {
        return Answer.refused(obstacle.get());
      }
      if (order.dryRun()) {
        return dryRun(order, packs);
      }
      By by = new By(who, now());
      String holder =
          "%s (process %d) since %s".formatted(who, ProcessHandle.current().pid(), by.when());
      try (Lock lock = Lock.take(order.store().lock(), holder, order.patience());
          Register register = order.store().open()) {
        new Archive(order.store().archive()).tidy(lock);
        return reissue(order, packs, by, register);
      }
    } catch (IOException e) {
      return Answer.refused(Trouble.inWords(e));
    } catch (RegisterException e) {
      return Answer.refused("error: " + e.getMessage());
    }
  }

  private LocalDateTime now() {
    return LocalDateTime.now(clock).truncatedTo(ChronoUnit.MINUTES);
  }

  private Answer dryRun(Order order, List<Path> packs) throws IOException, RegisterException {
    By by = new By(who, now());
    Answer answer;
    if (order.store().exists()) {
      try (Register register = order.store().open()) {
        answer = told(drafted(order, packs, by, Optional.of(register)));
      }
    } else {
      answer = told(drafted(order, packs, by, Optional.empty()));
    }
    return answer.and(Answer.said("dry run: nothing was written"));
  }

  private Answer reissue(Order order, List<Path> packs, By by, Register register)
      throws IOException, RegisterException {
    List<Outcome> outcomes = drafted(order, packs, by, Optional.of(register));
    Answer answer = told(outcomes);
    if (outcomes.stream().anyMatch(o -> o.state() == Outcome.State.UNREADABLE)) {
      return answer.and(Answer.refused("error: nothing was issued: every pack has to be readable"));
    }
    for (Outcome outcome : outcomes) {
      if (outcome.entry().isPresent()) {
        register.issue(by, outcome.base(), outcome.entry().get());
      } else if (outcome.base().isPresent()) {
        register.takeIn(by, outcome.base().get());
      }
    }
    Placing placing = new Placing(order.store(), order.out());
    for (Outcome outcome : outcomes) {
      Optional<Entry> entry = outcome.entry().or(outcome::known);
      if (entry.isPresent() && !register.isDelivered(entry.get())) {
        Answer placed = placing.place(outcome.file(), entry.get());
        answer = answer.and(placed);
        if (placed.good()) {
          register.delivered(by, entry.get());
        }
      }
    }
    return answer;
  }

  private static Answer told(List<Outcome> outcomes) {
    Answer answer = Answer.GOOD;
    for (Outcome outcome : outcomes) {
      answer = answer.and(outcome.told().without(answer.problems()));
    }
    if (!outcomes.isEmpty()
        && outcomes.stream().allMatch(o -> o.state() == Outcome.State.ELSEWHERE)) {
      answer =
          answer.and(Answer.refused("error: no pack here is of a route that the notice names"));
    }
    return answer;
  }

  /** Every pack worked out; results in the order of the packs. */
  private List<Outcome> drafted(Order order, List<Path> packs, By by, Optional<Register> register)
      throws IOException {
    progress.expect(packs.size());
    ExecutorService pool = Executors.newFixedThreadPool(Math.max(1, order.threads()));
    try {
      ThreadLocal<Optional<Layout>> layouts = ThreadLocal.withInitial(Optional::empty);
      List<Future<Outcome>> futures = new ArrayList<>();
      for (Path pack : packs) {
        futures.add(
            pool.submit(
                () -> {
                  if (layouts.get().isEmpty()) {
                    layouts.set(Optional.of(new Layout(order.templates())));
                  }
                  PackReissue one =
                      new PackReissue(order, by, register, layouts.get().orElseThrow());
                  Outcome outcome = one.of(pack);
                  synchronized (progress) {
                    progress.done(PackFiles.stem(pack));
                  }
                  return outcome;
                }));
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
      if (e.getCause() instanceof IOException io) {
        throw io;
      } else if (e.getCause() instanceof RuntimeException fault) {
        throw fault;
      }
      throw new IOException(String.valueOf(e.getCause().getMessage()), e);
    } finally {
      pool.shutdownNow();
    }
  }
}
