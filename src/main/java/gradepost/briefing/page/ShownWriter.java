package gradepost.briefing.page;

import gradepost.briefing.ApproachPage;
import gradepost.briefing.Plate;
import gradepost.briefing.Shown;
import gradepost.briefing.line.LineBreaks;
import gradepost.briefing.line.Views;
import gradepost.told.InstructionSheet;
import gradepost.told.PrintedApplication;
import gradepost.told.Seen;
import gradepost.told.print.PrintGrid;
import gradepost.told.print.PrintedPlace;
import java.util.List;
import java.util.stream.Stream;

/**
 * The pictures of what by which a braking point is found. They stand below the instructions, in
 * what these leave of their box, so that no box of the plate is moved by them.
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

  private final Views views;
  private final PrintGrid grid;

  ShownWriter(Views views, PrintGrid grid) {
    this.views = views;
    this.grid = grid;
  }

  /**
   * Those of one sheet.
   *
   * @param targetM of its approach, metres run
   * @param lines what the box holds beside them
   * @param section as it is written behind a place, and left out in the box
   */
  List<Shown> of(
      InstructionSheet sheet,
      double targetM,
      List<ApproachPage.ActionLine> lines,
      Plate.Grid boxes,
      String section) {
    List<Views.View> cues =
        sheet.begun().stream().flatMap(a -> cues(a, targetM)).distinct().limit(MOST).toList();
    double used =
        lines.stream().mapToDouble(line -> heightMm(line, go(sheet, line), section)).sum();
    double roomMm = boxes.rowsMm() - HEADS_MM - used;
    return cues.stream().map(v -> shown(v, cues.size(), roomMm)).toList();
  }

  private static Shown shown(Views.View view, int pictures, double roomMm) {
    int slotMm = BOX_MM / Math.max(2, pictures);
    double across = view.picture().widthPx();
    double down = view.picture().heightPx();
    double scale = Math.min(WIDE_MM.get(pictures) / across, roomMm / down);
    int widthMm = (int) (across * scale);
    int heightMm = (int) (down * scale);
    int beside = pictures == 1 ? BOX_MM - widthMm : slotMm - widthMm;
    double words = NAME_MM * LineBreaks.lines(view.name(), false, (beside - AIR_MM) / TYPE_MM);
    boolean fits = widthMm >= LEAST_MM && heightMm >= LEAST_MM && words <= roomMm;
    String data = view.picture().data();
    return new Shown(view.name(), data, fits ? widthMm : 0, fits ? heightMm : 0);
  }

  /** What the driver goes by on each rail, that of the plan first. */
  private Stream<Views.View> cues(PrintedApplication a, double targetM) {
    Stream<Views.View> planned = views(a.cues().seen(), a.point(), targetM);
    Stream<Views.View> others =
        a.cases().stream()
            .flatMap(c -> c.point().stream())
            .flatMap(p -> views(p.cue(), p.place(), targetM));
    return Stream.concat(planned, others);
  }

  private Stream<Views.View> views(Seen seen, PrintedPlace place, double targetM) {
    double atM = grid.metres(place, targetM);
    return Stream.concat(seen.day().stream(), seen.night().stream())
        .flatMap(thing -> views.cue(thing, atM).stream());
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
