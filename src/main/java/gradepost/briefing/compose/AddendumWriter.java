package gradepost.briefing.compose;

import gradepost.briefing.Addendum;
import gradepost.briefing.Briefing;
import gradepost.briefing.Messages;
import gradepost.drive.Approach;
import gradepost.reissue.ApproachChange;
import gradepost.reissue.Comparison;
import gradepost.reissue.RestrictionChange;
import gradepost.route.Path;
import gradepost.route.TemporaryRestriction;
import java.util.ArrayList;
import java.util.List;

/**
 * Composes the half page that goes out at once: every restriction that changed; where a driver who
 * goes by the old pack would now brake too late; and which of his sheets no longer hold.
 */
public final class AddendumWriter {
  /** Restrictions and braking points together fill half a page with so many lines. */
  private static final int MOST_LINES = 7;

  private final Messages messages;
  private final Words words;
  private final ChangeWriter writer;

  public AddendumWriter(Messages messages, Path path) {
    this.messages = messages;
    this.words = new Words(messages, path);
    this.writer = new ChangeWriter(messages, path);
  }

  /** Half a page for what cannot wait. */
  public Addendum addendum(Briefing now, Comparison comparison, String printed) {
    Tables table = new Tables(words, "addendum", "stands");
    for (RestrictionChange change : comparison.restrictions()) {
      TemporaryRestriction any = change.any();
      boolean gone = change.after().isEmpty();
      table.row(
          true,
          change.reference(),
          writer.extent(any),
          gone ? messages.text("addendum.withdrawn") : writer.speed(any),
          gone ? "" : words.moment(any.imposed()) + ",\n" + writer.until(any),
          gone ? "" : writer.boards(any),
          change
              .before()
              .map(
                  b ->
                      messages.text(
                          "addendum.old-row", b.reference(), writer.extent(b), writer.speed(b)))
              .orElse(messages.text("addendum.new-row")));
    }
    return new Addendum(
        now.language(),
        messages.text("addendum.title", now.cover().heading(), now.issue().number()),
        now.subject(),
        now.issueLine(),
        now.issue(),
        now.cover().heading(),
        messages.text("addendum.printed", printed, now.issue().number()),
        table.build(),
        notes(comparison));
  }

  /** A point that does not find room is named among the sheets that do not hold: none is lost. */
  private List<String> notes(Comparison comparison) {
    int room = Math.max(0, MOST_LINES - comparison.restrictions().size());
    List<String> notes = new ArrayList<>();
    List<String> others = new ArrayList<>();
    for (ApproachChange change : comparison.approaches()) {
      if (change.renumberedOnly()) {
        continue;
      }
      if (tooLateNow(change) && notes.size() < room) {
        notes.add(writer.pointOnly(change));
      } else {
        change
            .before()
            .map(b -> messages.text("approach.heading", b.number(), b.target().name()))
            .ifPresent(others::add);
      }
    }
    if (!others.isEmpty()) {
      notes.add(
          messages.text("addendum.others", String.join(messages.text("addendum.list"), others)));
    }
    return notes;
  }

  /** Whether the brake goes on sooner than the old sheet says, or where it says nothing. */
  private static boolean tooLateNow(ApproachChange change) {
    boolean brakes = change.after().flatMap(Approach::brakingPointM).isPresent();
    boolean braked = change.before().flatMap(Approach::brakingPointM).isPresent();
    return brakes && (!braked || change.movedM().map(m -> m < 0).orElse(false));
  }
}
