package gradepost.app;

import gradepost.app.Outcome.State;
import gradepost.app.PackLook.Seen;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.Register.By;
import gradepost.reissue.register.RegisterException;
import gradepost.route.Route;
import gradepost.source.NoticeFile;
import gradepost.source.PackFile;
import gradepost.source.Reading;
import gradepost.source.Sources;
import gradepost.units.MomentStyle;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Takes a notice into packs. All are looked at before any is changed; then each that is touched is
 * worked out, kept and registered, an act for each; and only when all are registered are files put
 * in place.
 *
 * <p>So a run that ends anywhere leaves issues that are whole, and files that no half-done
 * neighbour has altered: the next run puts in place what is registered, and works out the rest.
 */
public final class Reissue {
  private final Sources disk = Disk.sources();
  private final Clock clock;
  private final String who;
  private final Progress progress;

  /**
   * What is asked for.
   *
   * @param notice empty where the files in place have been edited by hand
   * @param validFrom empty means from the moment of issue
   * @param checkedBy who checked the data of the new issues; empty leaves a line to sign
   * @param threads how many packs are worked on at once
   * @param patience how long to wait for another run
   */
  public record Order(
      List<Path> packs,
      Optional<Path> notice,
      Path out,
      Store store,
      Optional<LocalDateTime> validFrom,
      Optional<String> checkedBy,
      boolean emergency,
      boolean dryRun,
      int threads,
      Duration patience,
      Optional<Path> templates,
      Edits edits) {
    public Order {
      packs = List.copyOf(packs);
    }
  }

  /**
   * What becomes of files that are not those of the last issue.
   *
   * @param fromArchive whether the last issue's files are restored first
   * @param confirmed references of restrictions, or names of files, for which an edit is right
   */
  public record Edits(boolean fromArchive, Set<String> confirmed) {
    /** Nothing is restored, nothing is confirmed. */
    public static final Edits NONE = new Edits(false, Set.of());

    public Edits {
      confirmed = Set.copyOf(confirmed);
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
      Optional<NoticeFile> notice = order.notice().map(file -> disk.noticeFile(Disk.name(file)));
      if (notice.isPresent() && notice.get().isEmpty()) {
        return Answer.refused(
            "%s: error: the notice holds no restriction: nothing was issued"
                .formatted(order.notice().orElseThrow()));
      }
      Answer fits = notice.isPresent() ? fits(order, notice.get(), packs) : Answer.GOOD;
      if (!fits.good()) {
        return fits.and(Answer.refused("error: nothing was issued"));
      }
      if (order.dryRun()) {
        return fits.and(dryRun(order, notice, packs));
      }
      By by = new By(who, now());
      String holder =
          "%s (process %d) since %s"
              .formatted(who, ProcessHandle.current().pid(), MomentStyle.MOMENT.format(by.when()));
      try (Lock lock = Lock.take(order.store().lock(), holder, order.patience());
          Register register = order.store().open()) {
        new Archive(order.store().archive()).tidy(lock);
        return fits.and(reissue(order, notice, packs, by, register));
      }
    } catch (IOException e) {
      return Answer.refused(Trouble.inWords(e));
    } catch (RegisterException e) {
      return Answer.refused("error: " + e.getMessage());
    }
  }

  /** Whether each notice is for a route of these packs. What cannot be read is told later. */
  private Answer fits(Order order, NoticeFile notice, List<Path> packs) throws IOException {
    Map<String, Route> routes = new ConcurrentHashMap<>();
    Crew.results(
        order.threads(),
        packs,
        pack -> {
          if (disk.pack(Disk.name(pack)) instanceof Reading.Good<PackFile> good) {
            routes.put(good.value().route().name(), good.value().route());
          }
          return pack;
        },
        (pack, why) -> pack);
    return Answer.of(notice.fits(routes.values()));
  }

  private LocalDateTime now() {
    return LocalDateTime.now(clock).truncatedTo(ChronoUnit.MINUTES);
  }

  private Answer dryRun(Order order, Optional<NoticeFile> notice, List<Path> packs)
      throws IOException, RegisterException {
    By by = new By(who, now());
    Answer laid = Answer.GOOD;
    List<Outcome> outcomes;
    if (order.store().exists()) {
      try (Register register = order.store().open()) {
        laid = fromArchive(order, packs, register);
        outcomes =
            laid.good() ? workedOut(order, notice, packs, by, Optional.of(register)) : List.of();
      }
    } else {
      outcomes = workedOut(order, notice, packs, by, Optional.empty());
    }
    return laid.and(ReissueTold.of(outcomes, true))
        .and(Answer.said("dry run: nothing was written"));
  }

  private Answer reissue(
      Order order, Optional<NoticeFile> notice, List<Path> packs, By by, Register register)
      throws IOException, RegisterException {
    Answer answer = fromArchive(order, packs, register);
    if (!answer.good()) {
      return answer.and(Answer.refused("error: nothing was restored and nothing was issued"));
    }
    for (Map.Entry<Entry, Answer> one : place(order, packs, by, register).entrySet()) {
      String said = " put in place, which an earlier run did not come to";
      answer = answer.and(one.getValue());
      answer = one.getValue().good() ? answer.and(Answer.said(one.getKey().name() + said)) : answer;
    }
    if (!answer.good()) {
      return answer.and(
          Answer.refused(
              "error: nothing more was done: what an earlier run registered comes first"));
    }
    List<Outcome> outcomes = workedOut(order, notice, packs, by, Optional.of(register));
    answer = answer.and(ReissueTold.of(outcomes, false).without(answer.problems()));
    if (any(outcomes, State.LEFT)) {
      return answer;
    }
    for (Answer one : place(order, packs, by, register).values()) {
      answer = answer.and(one);
    }
    return answer;
  }

  /** Restores the last issues' files, if the order says so. */
  private static Answer fromArchive(Order order, List<Path> packs, Register register)
      throws IOException, RegisterException {
    if (!order.edits().fromArchive()) {
      return Answer.GOOD;
    }
    Archive archive = new Archive(order.store().archive());
    LastFiles last = LastFiles.of(register, archive, packs, !order.dryRun());
    return new FromArchive(last, register, archive).lay(packs, order.dryRun());
  }

  /** Puts in place what is registered and does not lie there yet. */
  private static Map<Entry, Answer> place(Order order, List<Path> packs, By by, Register register)
      throws RegisterException {
    Placing placing = new Placing(order.store(), order.out());
    Map<Entry, Answer> placed = new LinkedHashMap<>();
    Set<String> waiting = register.undelivered();
    for (Path pack : packs) {
      if (waiting.contains(PackFiles.stem(pack))) {
        Entry entry = register.latest(PackFiles.stem(pack)).orElseThrow();
        Answer answer = placing.place(pack, entry);
        placed.put(entry, answer);
        if (answer.good()) {
          register.delivered(by, entry);
        }
      }
    }
    return placed;
  }

  /**
   * Every pack looked at, and those worked out that are touched; in the order of the packs. What
   * the look has read is what is worked on: a file that changes meanwhile mixes nothing.
   */
  private List<Outcome> workedOut(
      Order order,
      Optional<NoticeFile> notice,
      List<Path> packs,
      By by,
      Optional<Register> register)
      throws IOException, RegisterException {
    progress.expect(packs.size());
    Optional<LastFiles> last = Optional.empty();
    if (register.isPresent()) {
      Archive archive = new Archive(order.store().archive());
      last = Optional.of(LastFiles.of(register.get(), archive, packs, !order.dryRun()));
    }
    PackLook look = new PackLook(order, disk, notice, register, last, by.when());
    List<Seen> seen =
        Crew.results(
            order.threads(),
            packs,
            pack -> {
              Seen one = look.at(pack);
              if (one.outcome().state() != State.TOUCHED) {
                done(pack);
              }
              return one;
            },
            (pack, why) -> PackLook.done(pack, State.LEFT, why));
    List<Outcome> looked = seen.stream().map(Seen::outcome).toList();
    if (any(looked, State.UNREADABLE) || any(looked, State.STALE) || any(looked, State.LEFT)) {
      return looked;
    }
    List<Seen.Touched> touched =
        seen.stream().filter(Seen.Touched.class::isInstance).map(Seen.Touched.class::cast).toList();
    if (register.isPresent() && !order.dryRun()) {
      for (Seen.Touched each : touched) {
        if (each.outcome().base().isPresent()) {
          register.get().takeIn(by, each.outcome().base().get());
        }
      }
      Neighbours.takeIn(disk, touched, by, register.get(), new Archive(order.store().archive()));
    }
    Map<Path, Outcome> all = new LinkedHashMap<>();
    looked.forEach(o -> all.put(o.file(), o));
    made(order, touched, by, register).forEach(o -> all.put(o.file(), o));
    return new ArrayList<>(all.values());
  }

  private static boolean any(List<Outcome> outcomes, State state) {
    return outcomes.stream().anyMatch(o -> o.state() == state);
  }

  private List<Outcome> made(
      Order order, List<Seen.Touched> touched, By by, Optional<Register> register)
      throws IOException {
    ThreadLocal<Optional<Layout>> layouts = ThreadLocal.withInitial(Optional::empty);
    return Crew.results(
        order.threads(),
        touched,
        pack -> {
          if (layouts.get().isEmpty()) {
            layouts.set(Optional.of(new Layout(order.templates())));
          }
          Layout layout = layouts.get().orElseThrow();
          Outcome outcome = new PackReissue(order, disk, by, register, layout).of(pack);
          done(outcome.file());
          return outcome;
        },
        (pack, why) -> Outcome.of(pack.outcome().file(), State.LEFT, why));
  }

  private void done(Path pack) {
    synchronized (progress) {
      progress.done(PackFiles.stem(pack));
    }
  }
}
