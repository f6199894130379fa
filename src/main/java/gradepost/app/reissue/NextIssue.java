package gradepost.app.reissue;

import gradepost.app.store.Answer;
import gradepost.briefing.Messages;
import gradepost.pack.IssueDetails;
import gradepost.pack.TemporaryRestriction;
import gradepost.reissue.register.Entry;
import gradepost.source.Sources;
import gradepost.source.file.Input;
import gradepost.source.pack.Amendment;
import gradepost.source.pack.PackFile;
import gradepost.units.MomentStyle;
import gradepost.yaml.Problems;
import gradepost.yaml.Reading;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What a pack becomes: its files with the notice taken in, the issue moved on, and what is said
 * first marked where it is no longer true. All of it is written before it is read, so that it is
 * read once.
 */
final class NextIssue {
  private final Sources sources;
  private final Order.Tell tell;
  private final LocalDateTime now;
  private final HighRiskItems saidFirst = new HighRiskItems(Messages.english());

  /**
   * @param now the hour of the run
   */
  NextIssue(Sources sources, Order.Tell tell, LocalDateTime now) {
    this.sources = sources;
    this.tell = tell;
    this.now = now;
  }

  /**
   * The files of a pack and what is to be taken into them.
   *
   * @param found as the files are
   * @param notices of its route
   * @param inputs the files with the notices
   */
  record Amended(
      Path file, PackFile found, List<TemporaryRestriction> notices, List<Input> inputs) {
    /** With these notices, if there are any. */
    static Amended of(Path file, PackFile found, List<TemporaryRestriction> notices) {
      List<Input> inputs =
          notices.isEmpty() ? found.inputs() : Amendment.withNotices(found, notices);
      return new Amended(file, found, notices, inputs);
    }
  }

  /**
   * The next issue.
   *
   * @param pack as it is to be issued; with an obstacle only with the notice taken in, which may
   *     not touch it
   * @param said what the clerk is told if it is issued
   * @param obstacle why it cannot be issued
   */
  record Next(PackFile pack, Answer said, Optional<Answer> obstacle) {}

  /**
   * What cannot be read as it would be issued is not read in another form: it is taken as a value.
   * Rejected where a pack that is not to be issued cannot be read with the notice.
   */
  Reading<Next> of(Amended amended, PackFile last, Optional<Entry> latest) {
    IssueDetails there = amended.found().issue();
    int number = latest.map(Entry::number).orElse(there.number());
    LocalDateTime before = last.issue().issued();
    LocalDateTime issued = now.isBefore(before) ? before : now;
    LocalDateTime from = tell.asOf().or(tell::validFrom).orElse(issued);
    String name = amended.found().id();
    Answer said =
        issued.equals(now)
            ? Answer.GOOD
            : Answer.said(
                "%s: the clock says %s, before the last issue: dated %s"
                    .formatted(
                        name, MomentStyle.MOMENT.format(now), MomentStyle.MOMENT.format(issued)));
    if (!from.isBefore(there.validTo())) {
      return withNoticeOnly(
          amended,
          said,
          Answer.refused(
              "%s: error: the pack is valid to %s: set a later valid-to before it is issued again"
                  .formatted(amended.file(), MomentStyle.MOMENT.format(there.validTo()))));
    }
    if (from.isBefore(last.issue().validFrom()) && from.isBefore(issued)) {
      return withNoticeOnly(
          amended,
          said,
          Answer.refused(
              "%s: error: valid from %s is before the last issue, which is valid from %s: give that hour or a later one"
                  .formatted(
                      amended.file(),
                      MomentStyle.MOMENT.format(from),
                      MomentStyle.MOMENT.format(last.issue().validFrom()))));
    }
    IssueDetails details = there.next(number, issued, from, tell.checkedBy());
    PackFile expected =
        amended
            .found()
            .with(details, Amendment.merged(amended.found().notices(), amended.notices()));
    Map<String, String> stale = saidFirst.stale(last, expected);
    for (String item : stale.keySet()) {
      String line =
          "%s: brief these first: “%s” was written for an earlier issue, and is marked so";
      said = said.and(Answer.said(line.formatted(name, item)));
    }
    Reading<PackFile> read = sources.pack(written(amended.inputs(), number, details, stale));
    Answer told = said;
    return read.match(
        good -> {
          Optional<Answer> lost = lost(amended.file(), expected.notices(), good.value().notices());
          return lost.isPresent()
              ? refused(expected, there, told, lost.get())
              : new Reading.Good<>(new Next(good.value(), told, Optional.empty()), good.problems());
        },
        rejected -> refused(expected, there, told, Answer.of(rejected.problems())));
  }

  private static Reading<Next> refused(
      PackFile expected, IssueDetails there, Answer told, Answer why) {
    PackFile asFound = expected.with(there, expected.notices());
    return new Reading.Good<>(new Next(asFound, told, Optional.of(why)), Problems.NONE);
  }

  /**
   * Whatever the layout of a file does to what is written into it: no notice is lost unseen.
   *
   * @param expected notices of the next issue
   * @param read the notices that its files hold
   */
  static Optional<Answer> lost(
      Path file, List<TemporaryRestriction> expected, List<TemporaryRestriction> read) {
    List<String> held = read.stream().map(TemporaryRestriction::reference).toList();
    List<String> lost =
        expected.stream()
            .map(TemporaryRestriction::reference)
            .filter(reference -> !held.contains(reference))
            .toList();
    return lost.isEmpty()
        ? Optional.empty()
        : Optional.of(
            Answer.refused(
                "%s: error: in its files as they would be written, %s would be lost%n  Maybe write the notice into them by hand, then: gradepost reissue"
                    .formatted(file, String.join(", ", lost))));
  }

  private static List<Input> written(
      List<Input> inputs, int number, IssueDetails details, Map<String, String> stale) {
    Input own = inputs.get(0);
    byte[] bytes =
        Amendment.issue(
            own.bytes(),
            details.number(),
            details.issued(),
            details.validFrom(),
            details.knownUpTo(),
            String.valueOf(number),
            details.checkedBy());
    List<Input> next = new ArrayList<>(inputs);
    next.set(0, new Input(own.name(), stale.isEmpty() ? bytes : Amendment.highRisk(bytes, stale)));
    return next;
  }

  /** What is not to be issued is read as its files would be with the notice alone. */
  private Reading<Next> withNoticeOnly(Amended amended, Answer said, Answer obstacle) {
    Reading<PackFile> read =
        amended.inputs().equals(amended.found().inputs())
            ? new Reading.Good<>(amended.found(), Problems.NONE)
            : sources.pack(amended.inputs());
    return read.match(
        good ->
            new Reading.Good<>(
                new Next(good.value(), said, Optional.of(obstacle)), good.problems()),
        rejected -> new Reading.Rejected<>(rejected.problems()));
  }
}
