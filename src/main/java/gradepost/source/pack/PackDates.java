package gradepost.source.pack;

import gradepost.pack.TemporaryRestriction;
import gradepost.source.route.SpeedTables;
import gradepost.text.Mistake;
import gradepost.yaml.Key;
import gradepost.yaml.Problem;
import gradepost.yaml.Problems;
import gradepost.yaml.Severity;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What the clock says of a pack: whether it is over, and which restrictions ended or begin. */
public final class PackDates {
  private final PackFile pack;
  private final LocalDateTime now;

  /**
   * @param now the moment by the clock that was handed in
   */
  public PackDates(PackFile pack, LocalDateTime now) {
    this.pack = pack;
    this.now = now;
  }

  /** Whether the pack may not be used any more. */
  public boolean over() {
    return !pack.issue().validTo().isAfter(now);
  }

  /** An expired pack is an error; what has ended, or stands outside the validity, a warning. */
  public Problems problems() {
    return problems(Severity.ERROR);
  }

  /** The same where an expired pack is wanted: a warning too. */
  public Problems problemsOfWanted() {
    return problems(Severity.WARNING);
  }

  private Problems problems(Severity expired) {
    List<Problem> out = new ArrayList<>();
    if (over()) {
      out.add(
          new Problem(
              pack.origins().spot(pack.issue(), PackTable.VALID_TO.name()),
              expired,
              PackMistakes.EXPIRED.with(pack.issue().validTo(), now)));
    }
    for (TemporaryRestriction notice : pack.notices()) {
      if (notice.status() != TemporaryRestriction.Status.WITHDRAWN) {
        one(notice).ifPresent(out::add);
      }
    }
    return new Problems(out);
  }

  private Optional<Problem> one(TemporaryRestriction notice) {
    String reference = notice.reference();
    LocalDateTime from = pack.issue().validFrom();
    LocalDateTime to = pack.issue().validTo();
    Optional<LocalDateTime> ended = notice.until().filter(end -> !end.isAfter(now));
    if (ended.isPresent()) {
      boolean printed = ended.get().isAfter(from);
      return told(
          notice,
          SpeedTables.UNTIL,
          printed ? Severity.WARNING : Severity.NOTE,
          printed
              ? PackMistakes.ENDED.with(reference, ended.get())
              : PackMistakes.ENDED_LONG_AGO.with(reference, ended.get()));
    } else if (!notice.imposed().isBefore(to)) {
      return told(
          notice,
          SpeedTables.IMPOSED,
          Severity.WARNING,
          PackMistakes.BEGINS_TOO_LATE.with(reference, notice.imposed(), to));
    } else if (notice.until().filter(end -> !end.isAfter(from)).isPresent()) {
      return told(
          notice,
          SpeedTables.UNTIL,
          Severity.WARNING,
          PackMistakes.ENDS_TOO_EARLY.with(reference, notice.until().get(), from));
    } else if (notice.imposed().isAfter(now)) {
      return told(
          notice,
          SpeedTables.IMPOSED,
          Severity.NOTE,
          PackMistakes.BEGINS.with(reference, notice.imposed()));
    } else if (notice.imposed().isAfter(pack.issue().knownUpTo())) {
      return told(
          notice,
          SpeedTables.IMPOSED,
          Severity.NOTE,
          PackMistakes.AFTER_KNOWN_UP_TO.with(
              reference, notice.imposed(), pack.issue().knownUpTo()));
    }
    return Optional.empty();
  }

  private Optional<Problem> told(
      TemporaryRestriction notice, Key<?> key, Severity severity, Mistake mistake) {
    return Optional.of(new Problem(pack.origins().spot(notice, key.name()), severity, mistake));
  }
}
