package gradepost.briefing.page;

import gradepost.briefing.Table;
import gradepost.briefing.word.ActionWords;
import gradepost.briefing.word.Words;
import gradepost.told.InstructionSheet;
import gradepost.told.PrintedApplication;
import gradepost.told.PrintedBrake;
import gradepost.told.PrintedCase;
import gradepost.told.PrintedFaster;
import gradepost.told.PrintedRung;
import gradepost.told.PrintedSpeedRow;
import gradepost.told.PrintedSpeedRow.Point;
import gradepost.told.PrintedTarget;
import gradepost.told.print.PrintedPressure;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Where to brake from another speed, spelt. */
final class BySpeedWriter {
  private final Words words;
  private final ActionWords orders;

  BySpeedWriter(Words words, ActionWords orders) {
    this.words = words;
    this.orders = orders;
  }

  /** One for each application that is told; without one, that of a faster train. */
  List<Table> tables(String id, InstructionSheet sheet) {
    List<Table> out = new ArrayList<>();
    for (PrintedApplication begun : sheet.begun()) {
      String title =
          sheet.named()
              ? words.text("by-speed.title-at", begun.line(), orders.purpose(begun))
              : words.text("by-speed.title");
      add(out, id + "-" + begun.line(), title, sheet, begun);
    }
    if (sheet.begun().isEmpty()) {
      sheet
          .faster()
          .flatMap(PrintedFaster::application)
          .ifPresent(a -> add(out, id, words.text("by-speed.title"), sheet, a));
    }
    return out;
  }

  /** The table of one application; empty where it has no rows. */
  Optional<Table> table(String id, InstructionSheet sheet, PrintedApplication a) {
    List<Table> out = new ArrayList<>();
    String title =
        sheet.named() && a.line() > 0
            ? words.text("by-speed.title-at", a.line(), orders.purpose(a))
            : words.text("by-speed.title");
    add(out, id, title, sheet, a);
    return out.stream().findFirst();
  }

  /**
   * Of the same application only what a plate has no room for: on any other rail the pressures, one
   * after another; speeds with the same ones are one row. Empty where there is no other rail.
   *
   * @param title of the approach
   */
  Optional<Table> pressures(String id, String title, PrintedApplication a) {
    List<String> rails = rails(a);
    if (rails.isEmpty()) {
      return Optional.empty();
    }
    List<Table.Row> rows = new ArrayList<>();
    List<PrintedSpeedRow> told = a.bySpeed().stream().filter(r -> r.poorest().isPresent()).toList();
    int from = 0;
    for (int i = 1; i <= told.size(); i++) {
      String figures = figures(told.get(from));
      if (i == told.size() || !figures(told.get(i)).equals(figures)) {
        rows.add(Table.Row.of(span(told.get(from), told.get(i - 1)), figures));
        from = i;
      }
    }
    String rail =
        rails.size() > 1
            ? words.text("plate.not", a.cases().get(0).rail())
            : words.text("plate.rail", rails.get(0));
    String unit = words.units().pressureUnit();
    List<Table.Column> columns =
        List.of(
            new Table.Column(words.units().speedUnit(), "number"),
            new Table.Column(words.text("by-speed.figures", title, rail, unit), "text"));
    return Optional.of(new Table(id, "pressures", title, "", columns, rows, ""));
  }

  private String figures(PrintedSpeedRow row) {
    return row.poorest().map(p -> orders.figures(p.technique())).orElse(words.text("dash"));
  }

  /** One speed, or from the highest to the lowest of several. */
  private String span(PrintedSpeedRow high, PrintedSpeedRow low) {
    String most = Long.toString(high.speed().number());
    return high.equals(low) ? most : words.text("by-speed.span", most, low.speed().number());
  }

  private void add(
      List<Table> out, String id, String title, InstructionSheet sheet, PrintedApplication a) {
    if (!a.bySpeed().isEmpty()) {
      out.add(new Table(id, "by-speed", title, note(a), columns(a), rows(sheet.target(), a), ""));
    }
  }

  private static List<String> rails(PrintedApplication a) {
    return a.bySpeed().stream()
        .flatMap(r -> r.poorest().stream())
        .map(PrintedSpeedRow.Poor::rail)
        .distinct()
        .toList();
  }

  private List<Table.Column> columns(PrintedApplication a) {
    List<Table.Column> out = new ArrayList<>();
    String rail = a.cases().get(0).rail();
    out.add(new Table.Column(words.text("by-speed.speed"), "number"));
    out.add(new Table.Column(words.text("by-speed.planned", rail), "place"));
    out.add(new Table.Column(words.text("by-speed.most"), "number"));
    List<String> other = rails(a);
    if (!other.isEmpty()) {
      out.add(
          new Table.Column(
              other.size() > 1
                  ? words.text("by-speed.others", rail)
                  : words.text("by-speed.other", rail, other.get(0)),
              "place"));
      out.add(new Table.Column(words.text("by-speed.technique"), "text"));
    }
    return out;
  }

  private List<Table.Row> rows(PrintedTarget target, PrintedApplication a) {
    int rails = rails(a).size();
    List<Table.Row> out = new ArrayList<>();
    for (PrintedSpeedRow row : a.bySpeed()) {
      List<String> cells = new ArrayList<>();
      cells.add(row.speed().text());
      cells.add(place(target, row.planned().map(PrintedSpeedRow.Planned::at)));
      cells.add(
          row.planned()
              .map(PrintedSpeedRow.Planned::most)
              .map(PrintedPressure::text)
              .orElse(words.text("dash")));
      if (rails > 0) {
        String place = place(target, row.poorest().map(PrintedSpeedRow.Poor::at));
        cells.add(
            row.poorest()
                .filter(p -> rails > 1)
                .map(p -> words.text("by-speed.on", place, p.rail()))
                .orElse(place));
        cells.add(
            row.poorest().map(p -> orders.technique(p.technique())).orElse(words.text("dash")));
      }
      out.add(new Table.Row(cells, false, row.points().anyMatch(p -> !p.leavesFallback())));
    }
    return out;
  }

  private String place(PrintedTarget target, Optional<Point> point) {
    return point.map(p -> place(target, p)).orElse(words.text("dash"));
  }

  private String place(PrintedTarget target, Point point) {
    String place = words.place(point.place(), target);
    return (point.leavesFallback() ? "" : "▲ ")
        + words.text(
            point.asPlanned()
                ? point.brakeOn() ? "by-speed.as-planned-on" : "by-speed.as-planned"
                : point.brakeOn() ? "by-speed.with-brake-on" : "by-speed.place",
            place);
  }

  private String note(PrintedApplication a) {
    return String.join(" ", notes(a));
  }

  /** How the table of an application is read, sentence by sentence. */
  List<String> notes(PrintedApplication a) {
    List<String> out = new ArrayList<>();
    out.add(words.text("by-speed.note"));
    List<Point> points = a.bySpeed().stream().flatMap(PrintedSpeedRow::points).toList();
    int columns = rails(a).isEmpty() ? 1 : 2;
    if (points.size() < columns * a.bySpeed().size()) {
      out.add(words.text("by-speed.dash"));
    }
    if (points.stream().anyMatch(Point::brakeOn)) {
      out.add(words.text("by-speed.brake-on"));
    }
    if (points.stream().anyMatch(p -> !p.leavesFallback())) {
      PrintedCase first = a.cases().get(0);
      out.add(
          words.text(
              "by-speed.late",
              called(first, PrintedBrake.Kind.FALLBACK),
              called(first, PrintedBrake.Kind.SERVICE)));
    }
    return out;
  }

  private String called(PrintedCase c, PrintedBrake.Kind kind) {
    return c.ladder().stream()
        .map(PrintedRung::brake)
        .filter(b -> b.kind() == kind)
        .map(PrintedBrake::called)
        .findFirst()
        .orElse("");
  }
}
