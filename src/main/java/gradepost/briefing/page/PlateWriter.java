package gradepost.briefing.page;

import gradepost.briefing.ApproachPage;
import gradepost.briefing.Fact;
import gradepost.briefing.Plate;
import gradepost.briefing.Table;
import gradepost.briefing.word.ActionWords;
import gradepost.briefing.word.Words;
import gradepost.told.InstructionSheet;
import gradepost.told.PrintedApplication;
import gradepost.told.PrintedCase;
import gradepost.told.PrintedCommand;
import gradepost.told.PrintedFaster;
import gradepost.told.PrintedOrder;
import gradepost.told.PrintedPassing;
import gradepost.told.PrintedPoint;
import gradepost.told.PrintedSpeedRow;
import gradepost.told.PrintedStep;
import gradepost.told.PrintedTarget;
import gradepost.told.print.PrintedPressure;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** Fills the boxes of a plate from what the driver is told of one approach. */
final class PlateWriter {
  private final Words words;
  private final ActionWords orders;
  private final CueWriter cues;

  PlateWriter(Words words, ActionWords orders) {
    this.words = words;
    this.orders = orders;
    this.cues = new CueWriter(words);
  }

  /**
   * The plate of one approach.
   *
   * @param fails what is left when the service brake gives nothing
   * @param points of the page, whose answers are its notes
   */
  Plate plate(
      InstructionSheet sheet,
      List<String> about,
      Optional<Table> fails,
      List<ApproachPage.Point> points) {
    int first = firstLine(sheet);
    return new Plate(
        grid(sheet),
        about,
        sheet.begun().stream().findFirst().map(a -> brakeAt(sheet, a)),
        words.text(sheet.passing().map(p -> unbraked(p.brake())).orElse("plate.no-brake")),
        first,
        words.units().pressureUnit(),
        section(sheet.target()),
        firstToFind(sheet).flatMap(a -> speeds(sheet, a)),
        fails,
        points.stream().flatMap(p -> p.answer().stream()).distinct().toList(),
        List.of());
  }

  /**
   * The section of the mileage, as it is written behind a place; empty text where there is none.
   */
  private String section(PrintedTarget target) {
    String at = words.place(target.at(), target);
    int cut = at.lastIndexOf(" (");
    return cut > 0 && at.endsWith(")") ? at.substring(cut) : "";
  }

  private static String unbraked(PrintedPassing.Brake brake) {
    return switch (brake) {
      case OFF -> "plate.no-brake";
      case CHECKS -> "plate.checks";
      case STILL_ON, SINCE_EARLIER -> "plate.still-on";
    };
  }

  /** Which of the grids it needs. */
  static Plate.Grid grid(InstructionSheet sheet) {
    return Plate.Grid.of(sheet.steps().size() - firstLine(sheet), sheet.begun().size() > 1);
  }

  /** The first that the sheet tells; where it tells none, that of a faster train. */
  private static Optional<PrintedApplication> firstToFind(InstructionSheet sheet) {
    return sheet.begun().stream()
        .findFirst()
        .or(() -> sheet.faster().flatMap(PrintedFaster::application));
  }

  /** From the last time that power is taken, or a speed held, before the brake goes on. */
  static int firstLine(InstructionSheet sheet) {
    List<PrintedStep> steps = sheet.steps();
    int brake =
        sheet.begun().stream().mapToInt(PrintedApplication::line).min().orElse(steps.size() + 1)
            - 1;
    for (int i = Math.min(brake, steps.size()) - 1; i >= 0; i--) {
      PrintedCommand does = steps.get(i).order().does();
      if (does.power().isPresent() || does.hold().isPresent()) {
        return i;
      }
    }
    return 0;
  }

  private Plate.BrakeAt brakeAt(InstructionSheet sheet, PrintedApplication a) {
    PrintedTarget target = sheet.target();
    List<Fact> rows = new ArrayList<>(cues.plate(a.cues(), a.cases().get(0).rail()));
    rows.add(
        2,
        new Fact(
            words.text("plate.at-speed", sheet.steps().get(a.line() - 1).speed().text()),
            pressures(sheet, a.line())));
    return new Plate.BrakeAt(words.place(a.point(), target), others(sheet, a), cues.setBy(a), rows);
  }

  /** The points on the other rails; those that are told alike together. */
  private List<String> others(InstructionSheet sheet, PrintedApplication a) {
    LadderCells cells = new LadderCells(words, orders, sheet, a);
    Map<String, List<String>> rails = new LinkedHashMap<>();
    for (PrintedCase c : a.cases().subList(1, a.cases().size())) {
      String other =
          c.point()
              .map(p -> other(sheet.target(), p, cells))
              .orElseGet(() -> words.text("plate.other-none"));
      rails.computeIfAbsent(other, k -> new ArrayList<>()).add(c.rail());
    }
    return rails.entrySet().stream()
        .map(
            r ->
                words.text(
                    "plate.other", String.join(words.text("plate.and"), r.getValue()), r.getKey()))
        .toList();
  }

  /** The point on another rail; at the same place it has the same cue. */
  private String other(PrintedTarget target, PrintedPoint p, LadderCells cells) {
    if (cells.samePlace(p)) {
      return words.text(cells.taughtAlike(p) ? "plate.other-same" : "plate.other-place");
    }
    String place = words.place(p.place(), target);
    return cues.other(
        p.speed().map(v -> words.text("plate.other-at", place, v.text())).orElse(place), p.cue());
  }

  /** The first pressure, and the main one that follows it by the clock. */
  private String pressures(InstructionSheet sheet, int line) {
    PrintedOrder order = sheet.steps().get(line - 1).order();
    String first = orders.gauge(order.does());
    return order.further().stream()
        .flatMap(
            f ->
                f
                    .on()
                    .waited()
                    .map(
                        t -> words.text("plate.then", first, orders.gauge(f.does()), words.time(t)))
                    .stream())
        .findFirst()
        .orElse(first);
  }

  private Optional<Plate.Speeds> speeds(InstructionSheet sheet, PrintedApplication a) {
    if (a.bySpeed().isEmpty()) {
      return Optional.empty();
    }
    List<String> rails =
        a.bySpeed().stream()
            .flatMap(r -> r.poorest().stream())
            .map(PrintedSpeedRow.Poor::rail)
            .distinct()
            .toList();
    List<String> columns = new ArrayList<>();
    columns.add(words.units().speedUnit());
    columns.add(a.cases().get(0).rail());
    columns.add(words.units().pressureUnit());
    if (!rails.isEmpty()) {
      columns.add(
          rails.size() > 1
              ? words.text("plate.not", a.cases().get(0).rail())
              : words.text("plate.rail", rails.get(0)));
      columns.add(words.units().pressureUnit());
    }
    String title =
        sheet.named() && a.line() > 0
            ? words.text("by-speed.title-at", a.line(), orders.purpose(a))
            : words.text("plate.speeds");
    List<Plate.Speed> rows = new ArrayList<>();
    for (PrintedSpeedRow row : a.bySpeed()) {
      rows.add(speed(sheet.target(), row, rails.size()));
    }
    return Optional.of(new Plate.Speeds(title, columns, rows, notes(a)));
  }

  private Plate.Speed speed(PrintedTarget target, PrintedSpeedRow row, int rails) {
    List<String> cells = new ArrayList<>();
    cells.add(Long.toString(row.speed().number()));
    cells.add(row.planned().map(p -> place(target, p.at())).orElse(words.text("dash")));
    cells.add(row.planned().map(p -> orders.number(p.most())).orElse(words.text("dash")));
    if (rails > 0) {
      cells.add(
          row.poorest()
              .map(
                  p ->
                      rails > 1
                          ? words.text("by-speed.on", place(target, p.at()), p.rail())
                          : place(target, p.at()))
              .orElse(words.text("dash")));
      cells.add(row.poorest().flatMap(this::most).orElse(words.text("dash")));
    }
    return new Plate.Speed(
        cells,
        row.planned().filter(p -> p.at().asPlanned()).isPresent(),
        row.poorest().filter(p -> p.at().asPlanned()).isPresent());
  }

  /** The heaviest application of a technique. */
  private Optional<String> most(PrintedSpeedRow.Poor poor) {
    return poor.technique().stream()
        .flatMap(o -> o.does().brake().stream())
        .map(PrintedCommand.Brake::pressure)
        .max(Comparator.comparingLong(PrintedPressure::steps))
        .map(orders::number);
  }

  private String place(PrintedTarget target, PrintedSpeedRow.Point point) {
    String place = words.place(point.place(), target);
    return (point.leavesFallback() ? "" : "▲\u00a0")
        + (point.brakeOn() ? words.text("by-speed.with-brake-on", place) : place);
  }

  private List<String> notes(PrintedApplication a) {
    List<String> out = new ArrayList<>();
    out.add(words.text("plate.between"));
    Stream<PrintedSpeedRow.Point> points = a.bySpeed().stream().flatMap(PrintedSpeedRow::points);
    if (points.anyMatch(p -> !p.leavesFallback())) {
      PrintedCase first = a.cases().get(0);
      out.add(words.text("plate.late", FallbackWords.next(first), LadderCells.service(first)));
    }
    return out;
  }
}
