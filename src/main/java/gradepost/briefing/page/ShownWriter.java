package gradepost.briefing.page;

import gradepost.briefing.ApproachPage;
import gradepost.briefing.Plate;
import gradepost.briefing.line.LineBreaks;
import gradepost.briefing.line.Lineside;
import gradepost.pack.Picture;
import gradepost.pack.Pictures;
import gradepost.route.Landmark;
import gradepost.route.place.Applies;
import gradepost.route.place.Direction;
import gradepost.task.Assignment;
import gradepost.told.InstructionSheet;
import gradepost.told.PrintedApplication;
import gradepost.told.PrintedCase;
import gradepost.told.PrintedCues;
import gradepost.told.Seen;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The pictures of the landmarks by which a braking point is found. They stand below the
 * instructions, in what these leave of their box, so that no box of the plate is moved by them.
 */
final class ShownWriter {
  /** How many stand side by side. */
  private static final int MOST = 3;

  private static final double TYPE_MM = 10 * 25.4 / 72;
  private static final double TODO_MM = 30.5;
  private static final double PLACE_MM = 21;
  private static final double SEE_MM = 27.5;

  /** From line to line, of the type of the rows and of their large figures. */
  private static final double LINE_MM = 3.75;

  private static final double FIGURE_MM = 4.12;
  private static final double ROW_MM = 0.65;

  /** The heads of the columns, and air above and below. */
  private static final double HEADS_MM = 8.5;

  private static final double NAME_MM = 4.1;

  /** How wide the box is. */
  private static final int BOX_MM = 114;

  /** How wide a picture is at the most, by how many there are: its words stand beside it. */
  private static final List<Integer> WIDE_MM = List.of(45, 45, 30, 20);

  /** Between a picture and its words, and at the right of them. */
  private static final int AIR_MM = 4;

  /** Smaller ones show nothing. */
  private static final int LEAST_MM = 12;

  private final Lineside lineside;
  private final Assignment assignment;
  private final Pictures pictures;

  ShownWriter(Assignment assignment, Lineside lineside, Pictures pictures) {
    this.assignment = assignment;
    this.lineside = lineside;
    this.pictures = pictures;
  }

  /**
   * Those of one sheet.
   *
   * @param lines what the box holds beside them
   * @param section as it is written behind a place, and left out in the box
   */
  List<Plate.Shown> of(
      InstructionSheet sheet,
      List<ApproachPage.ActionLine> lines,
      Plate.Grid grid,
      String section) {
    List<String> names =
        sheet.begun().stream()
            .flatMap(ShownWriter::cues)
            .filter(t -> t.kind() == Seen.Kind.LANDMARK)
            .map(Seen.Thing::name)
            .distinct()
            .filter(name -> picture(name).isPresent())
            .limit(MOST)
            .toList();
    double used =
        lines.stream().mapToDouble(line -> heightMm(line, go(sheet, line), section)).sum();
    double roomMm = grid.rowsMm() - HEADS_MM - used;
    List<Plate.Shown> out = new ArrayList<>();
    for (String name : names) {
      picture(name).ifPresent(p -> out.add(shown(name, p, names.size(), roomMm)));
    }
    return out;
  }

  private static Plate.Shown shown(String name, Picture picture, int pictures, double roomMm) {
    int slotMm = BOX_MM / Math.max(2, pictures);
    double across = picture.widthPx();
    double down = picture.heightPx();
    double scale = Math.min(WIDE_MM.get(pictures) / across, roomMm / down);
    int widthMm = (int) (across * scale);
    int heightMm = (int) (down * scale);
    int beside = pictures == 1 ? BOX_MM - widthMm : slotMm - widthMm;
    double words = NAME_MM * LineBreaks.lines(name, false, (beside - AIR_MM) / TYPE_MM);
    boolean fits = widthMm >= LEAST_MM && heightMm >= LEAST_MM && words <= roomMm;
    return new Plate.Shown(name, picture.data(), fits ? widthMm : 0, fits ? heightMm : 0);
  }

  /** What the driver goes by on each rail, that of the plan first. */
  private static Stream<Seen.Thing> cues(PrintedApplication a) {
    PrintedCues planned = a.cues();
    Stream<Seen> others =
        a.cases().stream().map(PrintedCase::point).flatMap(Optional::stream).map(p -> p.cue());
    return Stream.concat(Stream.of(planned.seen()), others)
        .flatMap(seen -> Stream.concat(seen.day().stream(), seen.night().stream()));
  }

  /** Of one that no other is called like. */
  private Optional<Picture> picture(String name) {
    List<Landmark> called =
        assignment.route().landmarks().stream()
            .filter(l -> l.name().equals(name) && lineside.applies(l.applies()))
            .toList();
    return called.size() == 1 && asSeen(called.get(0).applies())
        ? called.get(0).picture().flatMap(pictures::find)
        : Optional.empty();
  }

  /** A picture shows the view forward, but of what stands for the other direction alone. */
  private boolean asSeen(Applies applies) {
    return assignment.direction() == Direction.FORWARD
        || !applies.directions().contains(Direction.FORWARD);
  }

  /** What stands under "see"; at the first point the box of the point has it. */
  private static String go(InstructionSheet sheet, ApproachPage.ActionLine line) {
    boolean above =
        sheet.begun().stream()
            .limit(1)
            .anyMatch(first -> line.number().equals(Integer.toString(first.line())));
    return line.when().isEmpty() ? above ? "" : line.see() : line.when();
  }

  private static double heightMm(ApproachPage.ActionLine line, String go, String section) {
    String place = section.isEmpty() ? line.where() : line.where().replace(section, "");
    int text =
        Stream.of(
                LineBreaks.lines(line.todo(), true, TODO_MM / TYPE_MM),
                LineBreaks.lines(place, true, PLACE_MM / TYPE_MM),
                LineBreaks.lines(go, false, SEE_MM / TYPE_MM))
            .max(Integer::compare)
            .orElse(1);
    int figures = line.gauge().split(", ", -1).length;
    return Math.max(text * LINE_MM, figures * FIGURE_MM) + ROW_MM;
  }
}
