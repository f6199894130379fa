package gradepost.app;

import gradepost.app.store.Answer;
import gradepost.app.store.Store;
import gradepost.pack.TemporaryRestriction;
import gradepost.reissue.register.Listing;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import gradepost.units.MomentStyle;
import java.io.IOException;
import java.time.Clock;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

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
    void take(KnownNotice known);
  }

  /** Hands each of them on; good, or why they cannot be had. */
  public Answer read(Optional<Long> days, Taker taker) {
    return OnRegister.of(store, register -> read(register, days, taker));
  }

  private Answer read(Register register, Optional<Long> days, Taker taker)
      throws IOException, RegisterException {
    List<String> lost = new ArrayList<>();
    List<KnownNotice> all = new KnownNotices(store, register, now).all(lost);
    if (!lost.isEmpty()) {
      return new Answer(List.of(), List.of(), lost, false);
    }
    all.stream()
        .filter(known -> days.map(n -> isDue(known, now.plusDays(n))).orElse(true))
        .sorted(
            Comparator.<KnownNotice, LocalDateTime>comparing(
                    k -> k.until().orElse(LocalDateTime.MAX))
                .thenComparing(KnownNotice::route)
                .thenComparing(k -> k.restriction().reference()))
        .forEach(taker::take);
    return Answer.GOOD;
  }

  private boolean isDue(KnownNotice known, LocalDateTime last) {
    boolean begins =
        known.restriction().imposed().isAfter(now) && !known.restriction().imposed().isAfter(last);
    return begins || known.until().filter(end -> !end.isAfter(last)).isPresent();
  }

  private List<String> row(KnownNotice known) {
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
