package gradepost.briefing.reissue;

import gradepost.briefing.Addendum;
import gradepost.briefing.Briefing;
import gradepost.briefing.Messages;
import gradepost.briefing.Table;
import gradepost.briefing.word.Tables;
import gradepost.briefing.word.Words;
import gradepost.pack.TemporaryRestriction;
import gradepost.reissue.ApproachChange;
import gradepost.reissue.Comparison;
import gradepost.reissue.RestrictionChange;
import gradepost.route.Path;
import gradepost.told.InstructionSheet;
import gradepost.told.PrintedFaster;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Composes what goes out at once: every restriction that changed, under the hour from which it is
 * in force; where a driver who goes by the old pack would brake too late; and which of his sheets
 * are no longer valid. Up to three restrictions take half a page if they fit; anything more takes
 * whole pages, which say that they are not to be cut.
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

  private static final int[] LATER_COLUMNS = {9, 22, 24, 16, 14};

  private static final int NOTE = 95;

  /** Lines that each hour after the first takes for itself. */
  private static final int LINES_OF_HEADING = 4;

  private final Messages messages;
  private final Words words;
  private final ChangeWriter writer;

  /**
   * @param writer that knows from when each change is in force
   */
  public AddendumWriter(Messages messages, Path path, ChangeWriter writer) {
    this.messages = messages;
    this.words = new Words(messages, path);
    this.writer = writer;
  }

  /** What cannot wait, as it is to be read from the hour at which the issue was made. */
  public Addendum addendum(Briefing now, Comparison comparison) {
    LocalDateTime printed = now.issue().details().issued();
    List<RestrictionChange> already = new ArrayList<>();
    SortedMap<LocalDateTime, List<RestrictionChange>> later = new TreeMap<>();
    for (RestrictionChange change : comparison.restrictions()) {
      LocalDateTime hour = writer.changeover().inForce(change);
      (hour.isAfter(printed) ? later.computeIfAbsent(hour, h -> new ArrayList<>()) : already)
          .add(change);
    }
    List<Table> groups = new ArrayList<>();
    already.stream()
        .map(writer.changeover()::inForce)
        .max(Comparator.naturalOrder())
        .ifPresent(last -> groups.add(inForce(last, already)));
    later.forEach((hour, changes) -> groups.add(later(hour, changes, printed)));
    int count = comparison.restrictions().size();
    List<String> few = notes(comparison, Math.max(0, MOST_ENTRIES - count));
    boolean half = count <= MOST_ON_HALF && lines(groups, few) <= MOST_LINES;
    return new Addendum(
        now.language(),
        messages.text("addendum.title", now.cover().heading(), now.issue().number()),
        now.subject(),
        now.issueLine(),
        now.issue(),
        now.cover().heading(),
        messages.text("addendum.printed", words.moment(printed), now.issue().number()),
        groups,
        later.isEmpty()
            ? ""
            : messages.text(
                groups.size() == 1 ? "addendum.notes-from" : "addendum.notes-from-each",
                words.moment(later.firstKey())),
        half ? few : notes(comparison, Integer.MAX_VALUE),
        half ? messages.text("addendum.half") : messages.text("addendum.whole", count));
  }

  /** Changes already in force; beside each row the row of the pack that it replaces. */
  private Table inForce(LocalDateTime hour, List<RestrictionChange> changes) {
    Tables table = new Tables(words, "addendum", "stands");
    for (RestrictionChange change : changes) {
      TemporaryRestriction any = change.any();
      boolean gone = change.after().isEmpty();
      LocalDateTime since = writer.changeover().inForce(change);
      table.row(
          true,
          change.reference(),
          writer.extent(any),
          gone ? gone(change) : writer.speed(any),
          gone ? words.moment(since) : words.moment(since) + ",\n" + writer.until(any),
          gone ? "" : writer.boards(any),
          change
              .before()
              .map(
                  b ->
                      messages.text(
                          "addendum.old-row", b.reference(), writer.extent(b), writer.speed(b)))
              .orElse(messages.text("addendum.new-row")));
    }
    return table.titled(messages.text("addendum.in-force", words.moment(hour))).build();
  }

  /** Changes in force from a later hour: for each the row until then, and the row from then. */
  private Table later(LocalDateTime hour, List<RestrictionChange> changes, LocalDateTime printed) {
    Tables table =
        new Tables(
            words, "addendum-" + words.moment(hour).replaceAll("[^0-9]+", "-"), "stands-later");
    for (RestrictionChange change : changes) {
      LocalDateTime ends = writer.changeover().earlierEnds(change);
      Optional<TemporaryRestriction> stands =
          change.before().filter(b -> ends.isAfter(printed) && b.imposed().isBefore(ends));
      TemporaryRestriction old = stands.orElse(change.any());
      boolean unknown = change.before().isEmpty() && change.any().changedFrom().isPresent();
      table.row(
          true,
          change.reference(),
          messages.text("addendum.until", words.moment(stands.isPresent() ? ends : hour)),
          writer.extent(old),
          stands
              .map(writer::speed)
              .orElse(messages.text(unknown ? "addendum.not-in-pack" : "addendum.no-restriction")),
          stands.map(writer::boards).orElse(""));
      boolean gone = change.after().isEmpty();
      TemporaryRestriction any = change.any();
      table.row(
          true,
          change.reference(),
          gone
              ? messages.text("addendum.from", words.moment(hour))
              : messages.text("addendum.from-until", words.moment(hour), writer.until(any)),
          writer.extent(any),
          gone ? gone(change) : writer.speed(any),
          gone ? "" : writer.boards(any));
    }
    return table.titled(messages.text("addendum.in-force", words.moment(hour))).build();
  }

  private String gone(RestrictionChange change) {
    return messages.text(
        writer.changeover().isWithdrawn(change) ? "addendum.withdrawn" : "addendum.ended");
  }

  /** How many lines they take, rather too many than too few. */
  private static int lines(List<Table> groups, List<String> notes) {
    int lines = LINES_OF_HEADING * (groups.size() - 1);
    for (Table group : groups) {
      boolean later = group.columns().size() != COLUMNS.length;
      int[] columns = later ? LATER_COLUMNS : COLUMNS;
      lines += later ? group.rows().size() / 2 : 0;
      for (Table.Row row : group.rows()) {
        int most = 0;
        for (int i = 0; i < columns.length; i++) {
          most = Math.max(most, lines(row.cells().get(i), columns[i]));
        }
        lines += most;
      }
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
      } else if (mayBeTooFast(change) && notes.size() < room) {
        notes.add(writer.ifFaster(change));
      } else {
        change.before().map(b -> b.target().name()).ifPresent(others::add);
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
    boolean brakes = change.after().flatMap(InstructionSheet::brakingPoint).isPresent();
    boolean braked = change.before().flatMap(InstructionSheet::brakingPoint).isPresent();
    return brakes && (!braked || change.movedM().map(m -> m < 0).orElse(false));
  }

  /**
   * Whether the new plan comes to a lower speed without a brake, so that it tells no point, while
   * whoever still drives by the old one may be too fast for it.
   */
  private static boolean mayBeTooFast(ApproachChange change) {
    Optional<PrintedFaster> faster = change.after().flatMap(InstructionSheet::faster);
    return change.after().flatMap(InstructionSheet::brakingPoint).isEmpty()
        && faster.flatMap(PrintedFaster::application).isPresent()
        && !change.before().flatMap(InstructionSheet::faster).equals(faster);
  }
}
