package gradepost.briefing.line;

import gradepost.briefing.Table;
import gradepost.briefing.word.NoticeWords;
import gradepost.briefing.word.Tables;
import gradepost.briefing.word.Words;
import gradepost.pack.TemporaryRestriction;
import gradepost.route.Board;
import gradepost.route.BoardKind;
import gradepost.route.Differential;
import gradepost.route.PermanentRestriction;
import gradepost.task.Assignment;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** How fast, from where, and until the rear is clear of what. */
public final class SpeedTables {
  private final Assignment assignment;
  private final Lineside lineside;
  private final Words words;

  public SpeedTables(Assignment assignment, Lineside lineside) {
    this.assignment = assignment;
    this.lineside = lineside;
    this.words = lineside.words();
  }

  /** The permanent restrictions as they are signed. */
  public Table signed(String part) {
    double train = assignment.formation().lengthM();
    Tables table = new Tables(words, part, "permanent");
    assignment.route().restrictions().stream()
        .filter(r -> lineside.applies(r.applies()))
        .map(r -> lineside.over(r, r.extent()))
        .sorted(Comparator.comparingDouble(Lineside.Over::fromM))
        .forEach(
            o -> {
              PermanentRestriction r = o.what();
              boolean end = o.toM() + train > words.path().lengthM();
              table.row(
                  r.name(),
                  words.place(o.fromM()),
                  words.placePast(o.toM()),
                  end ? "" : words.placePast(o.toM() + train),
                  speeds(r.speed().metresPerSecond(), r.differentials()),
                  boards(r.boards(), words.text("table.permanent.no-boards")),
                  r.reason());
            });
    return table.build();
  }

  /** The restrictions by notice. */
  public Table temporary(String part) {
    double train = assignment.formation().lengthM();
    NoticeWords said = new NoticeWords(words, assignment.direction());
    Tables table = new Tables(words, part, "temporary");
    assignment.restrictions().stream()
        .filter(r -> lineside.applies(r.applies()))
        .map(r -> lineside.over(r, r.extent()))
        .sorted(Comparator.comparingDouble(Lineside.Over::fromM))
        .forEach(
            o -> {
              TemporaryRestriction r = o.what();
              double clear = Math.min(words.path().lengthM(), o.toM() + train);
              table.row(
                  true,
                  lines(
                      words.text(
                          "table.temporary.reference",
                          r.reference(),
                          words.text("notice." + TrackStripWriter.lower(r.kind())),
                          words.text("notice." + TrackStripWriter.lower(r.status()))),
                      said.made(r)),
                  lines(
                      words.text(
                          "table.temporary.extent",
                          words.place(o.fromM()),
                          words.placePast(o.toM()),
                          words.placePast(clear)),
                      said.where(r)),
                  speeds(r.speed().metresPerSecond(), r.differentials())
                      + r.normalSpeed()
                          .map(
                              n ->
                                  " "
                                      + words.text(
                                          "table.temporary.normal",
                                          words.speed(n.metresPerSecond())))
                          .orElse(""),
                  when(r),
                  lines(
                      boards(r.boards(), words.text("table.temporary.paper-only")),
                      said.aws(r).stream().toList()),
                  r.reason());
            });
    return table.build();
  }

  /** What a driver may still have in mind, or on a sheet that he should have destroyed. */
  public Optional<Table> withdrawn(String part, List<TemporaryRestriction> withdrawn) {
    Tables table = new Tables(words, part, "withdrawn");
    List<Lineside.Over<TemporaryRestriction>> own =
        withdrawn.stream()
            .filter(r -> lineside.applies(r.applies()))
            .map(r -> lineside.over(r, r.extent()))
            .sorted(Comparator.comparingDouble(Lineside.Over::fromM))
            .toList();
    own.forEach(
        o ->
            table.row(
                o.what().reference(),
                words.text("change.extent", words.place(o.fromM()), words.placePast(o.toM())),
                speeds(o.what().speed().metresPerSecond(), o.what().differentials()),
                o.what().reason()));
    return own.isEmpty() ? Optional.empty() : Optional.of(table.build());
  }

  private static String lines(String first, List<String> further) {
    return Stream.concat(Stream.of(first), further.stream()).collect(Collectors.joining("\n"));
  }

  private String when(TemporaryRestriction r) {
    String until = until(words, r);
    String changed =
        r.changedFrom()
            .map(c -> "\n" + words.text("table.temporary.changed", words.moment(c)))
            .orElse("");
    String span = words.text("table.temporary.when", words.moment(r.imposed()), until) + changed;
    return r.hours()
        .map(h -> span + "\n" + words.text("table.temporary.hours", h.from(), h.to()))
        .orElse(span);
  }

  /** When it ceases, in words. */
  static String until(Words words, TemporaryRestriction r) {
    return r.until().map(words::moment).orElse(words.text("table.temporary.further-notice"));
  }

  private String speeds(double general, List<Differential> differentials) {
    return words.number(general)
        + differentials.stream()
            .map(
                d ->
                    " "
                        + words.text(
                            "speed.differential",
                            d.trainClass(),
                            words.number(d.speed().metresPerSecond())))
            .collect(Collectors.joining());
  }

  private String boards(List<Board> boards, String none) {
    List<Lineside.Over<Board>> read = lineside.boards(boards);
    if (read.isEmpty()) {
      return none;
    }
    return read.stream()
        .map(
            o ->
                words.text(
                    "board.at",
                    words.text("board." + TrackStripWriter.lower(o.what().kind())),
                    o.what().kind() == BoardKind.TERMINATION
                        ? words.placePast(o.fromM())
                        : words.place(o.fromM())))
        .collect(Collectors.joining("\n"));
  }
}
