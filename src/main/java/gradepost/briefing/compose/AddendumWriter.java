package gradepost.briefing.compose;

import gradepost.briefing.Addendum;
import gradepost.briefing.Briefing;
import gradepost.briefing.Messages;
import gradepost.briefing.Table;
import gradepost.drive.Approach;
import gradepost.reissue.ApproachChange;
import gradepost.reissue.Comparison;
import gradepost.reissue.RestrictionChange;
import gradepost.route.Path;
import gradepost.route.TemporaryRestriction;
import java.util.ArrayList;
import java.util.List;

/**
 * Composes what goes out at once: every restriction that changed; where a driver who goes by the
 * old pack would now brake too late; and which of his sheets no longer hold. Up to three
 * restrictions are half a page where they find room; what does not is whole pages, and says that it
 * is not to be cut.
 */
public final class AddendumWriter {
  /** Of so many restrictions it is half a page, if their words leave room. */
  private static final int MOST_ON_HALF = 3;

  /** Restrictions and braking points together on half a page. */
  private static final int MOST_ENTRIES = 7;

  /** Lines of rows and notes on half a page, below the heading and above the last words. */
  private static final int MOST_LINES = 15;

  /** Letters that surely stand in a line of each column, and of a note. */
  private static final int[] COLUMNS = {9, 24, 7, 17, 12, 22};

  private static final int NOTE = 95;

  private final Messages messages;
  private final Words words;
  private final ChangeWriter writer;

  public AddendumWriter(Messages messages, Path path) {
    this.messages = messages;
    this.words = new Words(messages, path);
    this.writer = new ChangeWriter(messages, path);
  }

  /** What cannot wait. */
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
    Table rows = table.build();
    int count = comparison.restrictions().size();
    List<String> few = notes(comparison, Math.max(0, MOST_ENTRIES - count));
    boolean half = count <= MOST_ON_HALF && lines(rows, few) <= MOST_LINES;
    return new Addendum(
        now.language(),
        messages.text("addendum.title", now.cover().heading(), now.issue().number()),
        now.subject(),
        now.issueLine(),
        now.issue(),
        now.cover().heading(),
        messages.text("addendum.printed", printed, now.issue().number()),
        rows,
        half ? few : notes(comparison, Integer.MAX_VALUE),
        half ? messages.text("addendum.half") : messages.text("addendum.whole", count));
  }

  /** How many lines they take, rather too many than too few. */
  private static int lines(Table rows, List<String> notes) {
    int lines = 0;
    for (Table.Row row : rows.rows()) {
      int most = 0;
      for (int i = 0; i < COLUMNS.length; i++) {
        most = Math.max(most, lines(row.cells().get(i), COLUMNS[i]));
      }
      lines += most;
    }
    for (String note : notes) {
      lines += lines(note, NOTE);
    }
    return lines;
  }

  private static int lines(String text, int letters) {
    return text.lines().mapToInt(line -> (line.length() + letters - 1) / letters).sum();
  }

  /** A point that does not find room is named among the sheets that do not hold: none is lost. */
  private List<String> notes(Comparison comparison, int room) {
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
