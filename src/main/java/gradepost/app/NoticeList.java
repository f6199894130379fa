package gradepost.app;

import gradepost.app.issue.ArchivedInputs;
import gradepost.app.store.Answer;
import gradepost.app.store.Archive;
import gradepost.app.store.Disk;
import gradepost.app.store.IoErrorText;
import gradepost.app.store.Store;
import gradepost.pack.TemporaryRestriction;
import gradepost.pack.TemporaryRestriction.Status;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Listing;
import gradepost.reissue.register.Question;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import gradepost.source.Sources;
import gradepost.source.pack.PackFile;
import gradepost.units.MomentStyle;
import gradepost.units.Rounding;
import gradepost.units.UnitStyle;
import java.io.IOException;
import java.time.Clock;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/**
 * Which restrictions are on the papers of the last issues: from when, until when, in which packs.
 * They are read from the inputs of the issues, as the archive keeps them.
 */
public final class NoticeList {
  private static final List<String> COLUMNS =
      List.of("notice", "route", "where", "speed", "from", "until", "state", "issues");

  private final Store store;
  private final LocalDateTime now;

  public NoticeList(Store store, Clock clock) {
    this.store = store;
    this.now = LocalDateTime.now(clock).truncatedTo(ChronoUnit.MINUTES);
  }

  /**
   * A restriction, the same in all issues that are named.
   *
   * @param route that it is on, by name
   * @param where from and to, in the units of the route
   * @param speed in the units of the route
   * @param issues whose papers tell it, such as "valley/4", in their order
   */
  public record Known(
      TemporaryRestriction restriction,
      String route,
      String where,
      String speed,
      List<String> issues) {
    /** Copies the list. */
    public Known {
      issues = List.copyOf(issues);
    }

    /** When it ends; empty for one that stands until further notice. */
    public Optional<LocalDateTime> until() {
      return restriction.until();
    }
  }

  /** The moment by the clock that was handed in. */
  public LocalDateTime now() {
    return now;
  }

  /**
   * As a table, those that end first on top.
   *
   * @param days only what has ended, or ends or begins within so many days; empty for all
   */
  public Found table(Optional<Long> days) {
    List<List<String>> rows = new ArrayList<>();
    Answer answer = read(days, known -> rows.add(row(known)));
    return answer.good() ? new Found.Rows(new Listing(COLUMNS, rows)) : new Found.Nothing(answer);
  }

  /** Takes each of them. */
  public interface Taker {
    /** Takes one. */
    void take(Known known);
  }

  /** Hands each of them on; good, or why they cannot be had. */
  public Answer read(Optional<Long> days, Taker taker) {
    if (!store.exists()) {
      return store.missing();
    }
    try (Register register = store.open()) {
      List<String> lost = new ArrayList<>();
      List<Known> all = all(register, lost);
      if (!lost.isEmpty()) {
        return new Answer(List.of(), List.of(), lost, false);
      }
      all.stream()
          .filter(known -> days.map(n -> isDue(known, now.plusDays(n))).orElse(true))
          .sorted(
              Comparator.<Known, LocalDateTime>comparing(k -> k.until().orElse(LocalDateTime.MAX))
                  .thenComparing(Known::route)
                  .thenComparing(k -> k.restriction().reference()))
          .forEach(taker::take);
      return Answer.GOOD;
    } catch (IOException e) {
      return Answer.refused(IoErrorText.inWords(e));
    } catch (RegisterException e) {
      return Answer.refused("error: " + e.getMessage());
    }
  }

  private boolean isDue(Known known, LocalDateTime last) {
    boolean begins =
        known.restriction().imposed().isAfter(now) && !known.restriction().imposed().isAfter(last);
    return begins || known.until().filter(end -> !end.isAfter(last)).isPresent();
  }

  private List<Known> all(Register register, List<String> lost)
      throws IOException, RegisterException {
    Set<String> packs = new LinkedHashSet<>();
    register.list(Question.latestInputs()).rows().forEach(row -> packs.add(row.get(0)));
    Sources sources = Disk.sources();
    Archive archive = new Archive(store.archive());
    Map<Known, List<String>> issues = new LinkedHashMap<>();
    for (String pack : new TreeSet<>(packs)) {
      Entry latest = register.latest(pack).orElseThrow();
      Optional<PackFile> read = ArchivedInputs.pack(sources, archive, latest);
      if (read.isEmpty()) {
        lost.add("error: " + AppText.INPUTS_LOST.with(latest.name()).inWords());
      } else {
        met(read.get())
            .forEach(k -> issues.computeIfAbsent(k, none -> new ArrayList<>()).add(latest.name()));
      }
    }
    return issues.entrySet().stream()
        .map(
            e ->
                new Known(
                    e.getKey().restriction(),
                    e.getKey().route(),
                    e.getKey().where(),
                    e.getKey().speed(),
                    e.getValue()))
        .toList();
  }

  /** Those on the papers of an issue; its trains can meet them. */
  private static List<Known> met(PackFile pack) {
    UnitStyle units = pack.route().units();
    return pack.standing().stream()
        .filter(r -> r.status() != Status.WITHDRAWN)
        .filter(
            r ->
                pack.directions().stream()
                    .anyMatch(d -> r.applies().to(d.direction(), Set.copyOf(d.lines()))))
        .map(
            r ->
                new Known(
                    r,
                    pack.route().name(),
                    "%s to %s"
                        .formatted(
                            units.mileage(r.extent().from().mileage()),
                            units.mileage(r.extent().to().mileage())),
                    units.speed(r.speed().metresPerSecond(), Rounding.NEAREST),
                    List.of()))
        .toList();
  }

  private List<String> row(Known known) {
    TemporaryRestriction r = known.restriction();
    return List.of(
        r.reference(),
        known.route(),
        known.where(),
        known.speed(),
        MomentStyle.MOMENT.format(r.imposed()),
        r.until().map(MomentStyle.MOMENT::format).orElse("further notice"),
        state(r),
        String.join(" ", known.issues()));
  }

  private String state(TemporaryRestriction r) {
    if (r.until().filter(end -> !end.isAfter(now)).isPresent()) {
      return "ended";
    }
    return r.imposed().isAfter(now) ? "begins" : "in force";
  }
}
