package gradepost.briefing.line;

import gradepost.briefing.Table;
import gradepost.briefing.chart.TrackStrip.Bend;
import gradepost.briefing.word.Tables;
import gradepost.briefing.word.Words;
import gradepost.plan.BookedLeg;
import gradepost.plan.Plan;
import gradepost.route.CheckRail;
import gradepost.route.Curve;
import gradepost.route.Signal;
import gradepost.route.place.Direction;
import gradepost.route.place.Extent;
import gradepost.route.station.Platform;
import gradepost.task.Assignment;
import gradepost.task.Stops;
import gradepost.told.print.PrintedTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** What stands and lies along the line, each kind in a table of its own. */
public final class PlaceTables {
  private final Plan plan;
  private final Assignment assignment;
  private final Lineside lineside;
  private final Words words;

  public PlaceTables(Plan plan, Lineside lineside) {
    this.plan = plan;
    this.assignment = plan.assignment();
    this.lineside = lineside;
    this.words = lineside.words();
  }

  /** One table for each kind, for the part of the briefing with this identity. */
  public List<Table> all(String part) {
    List<Table> tables = new ArrayList<>(List.of(stations(part)));
    booked(part).ifPresent(tables::add);
    tables.addAll(places(part));
    return List.copyOf(tables);
  }

  private List<Table> places(String part) {
    return List.of(
        signals(part),
        new CautionTable(plan, lineside).table(part),
        gradients(part),
        curves(part),
        gaps(part),
        lowAdhesion(part),
        brakeTests(part),
        structures(part));
  }

  private Table stations(String part) {
    Tables table = new Tables(words, part, "stations");
    for (Lineside.Over<Lineside.Face> o : lineside.platforms()) {
      Platform p = o.what().platform();
      boolean calls =
          assignment.calls().stream()
              .anyMatch(c -> c.platform().equals(p) && c.station().equals(o.what().station()));
      String marks =
          Stops.marks(assignment, p).stream()
              .map(
                  m ->
                      words.text(
                          "stop-mark.short",
                          m.cars(),
                          words.place(words.path().metresAt(m.location()))))
              .collect(Collectors.joining("\n"));
      String end =
          p.bufferStops()
              .map(b -> words.text("table.stations.buffers", words.place(words.path().metresAt(b))))
              .orElse("");
      table.row(
          o.what().station().name() + (calls ? "" : " " + words.text("table.stations.passes")),
          p.number(),
          words.place(o.fromM()),
          words.place(o.toM()),
          words.room(o.toM() - o.fromM()),
          words.hand(lineside.seen(p.side())),
          marks.isEmpty() ? words.text("stop-mark.none") : marks,
          (end + " " + p.doorInstruction()).strip());
    }
    return table.build();
  }

  /** Leg by leg, what is booked and what the plan takes; empty where no running time is booked. */
  private Optional<Table> booked(String part) {
    Tables table = new Tables(words, part, "booked");
    List<BookedLeg> legs = BookedLeg.of(plan);
    for (BookedLeg leg : legs) {
      long late = leg.lateS();
      table.row(
          late > 0,
          leg.from().station().name(),
          leg.to().station().name(),
          words.minutes(leg.booked()),
          words.minutes(leg.planned()),
          late > 0
              ? words.text("table.booked.late", words.minutes(new PrintedTime(late)))
              : late < 0
                  ? words.text("table.booked.spare", words.minutes(new PrintedTime(-late)))
                  : words.text("table.booked.kept"));
    }
    return legs.isEmpty() ? Optional.empty() : Optional.of(table.build());
  }

  private Table signals(String part) {
    Tables table = new Tables(words, part, "signals");
    for (Lineside.Over<Signal> o : lineside.signals()) {
      Signal s = o.what();
      table.row(
          s.id(),
          words.text("signal." + TrackStripWriter.lower(s.kind())),
          words.place(o.fromM()),
          s.aws()
              .map(a -> words.place(words.path().metresAt(a)))
              .orElse(words.text("table.signals.no-aws")),
          routes(s),
          s.note());
    }
    return table.build(observed("signal", "table.signals.none"));
  }

  private String routes(Signal signal) {
    return signal.routes().stream()
        .map(
            r -> {
              String to =
                  r.indication().isBlank()
                      ? r.leadsTo()
                      : words.text("table.signals.route", r.leadsTo(), r.indication());
              return r.speed()
                  .map(
                      v ->
                          words.text(
                              "table.signals.route-speed", to, words.speed(v.metresPerSecond())))
                  .orElse(to);
            })
        .collect(Collectors.joining("\n"));
  }

  private Table gradients(String part) {
    Tables table = ways(part, "gradients");
    assignment.route().gradients().stream()
        .map(g -> lineside.over(g, g.extent()))
        .sorted(Comparator.comparingDouble(Lineside.Over::fromM))
        .forEach(
            o -> {
              double permille = o.what().gradient().permille();
              table.row(
                  where(o.what().extent()),
                  words.apart(o.toM() - o.fromM()),
                  words.slope(permille),
                  words.way(permille),
                  words.way(-permille));
            });
    return table.build();
  }

  private Table curves(String part) {
    Tables table = ways(part, "curves");
    for (Lineside.Over<Curve> o : lineside.curves()) {
      Bend bend = lineside.bend(o);
      String there = words.text(bend.left() ? "hand.left" : "hand.right");
      String back = words.text(bend.left() ? "hand.right" : "hand.left");
      CheckRail check = o.what().checkRail();
      table.row(
          where(o.what().extent()),
          bend.text(),
          Math.round(o.what().cant().metres() * 1000) + " mm",
          check == CheckRail.NONE
              ? ""
              : words.text("table.curves." + TrackStripWriter.lower(check)),
          forwards() ? there : back,
          forwards() ? back : there);
    }
    return table.build(observed("curve", "table.curves.none"));
  }

  /** What differs by the way in which it is passed has a column for each at the end. */
  private Tables ways(String part, String name) {
    return new Tables(words, part, name)
        .column(assignment.route().nameOf(Direction.FORWARD), "text")
        .column(assignment.route().nameOf(Direction.BACKWARD), "text");
  }

  private boolean forwards() {
    return assignment.direction() == Direction.FORWARD;
  }

  private Table gaps(String part) {
    Tables table = new Tables(words, part, "gaps");
    assignment.route().railGaps().stream()
        .filter(g -> lineside.applies(g.applies()))
        .map(g -> lineside.over(g, g.extent()))
        .sorted(Comparator.comparingDouble(Lineside.Over::fromM))
        .forEach(
            o ->
                table.row(
                    o.what().name(), where(o.what().extent()), words.overrun(o.toM() - o.fromM())));
    return table.build(observed("gap", "table.gaps.none"));
  }

  /** Printed places that have all of it between them, told alike in both directions. */
  private String around(Lineside.Over<?> o) {
    String from = words.place(o.fromM());
    String to = words.placePast(o.toM());
    return forwards()
        ? words.text("table.stretch", from, to)
        : words.text("table.stretch", to, from);
  }

  /** From end to end as it is in the data, told alike in both directions. */
  private String where(Extent extent) {
    return words.text(
        "table.stretch",
        assignment.route().text(extent.from()),
        assignment.route().text(extent.to()));
  }

  private Table lowAdhesion(String part) {
    Tables table = new Tables(words, part, "low-adhesion");
    assignment.route().lowAdhesion().stream()
        .filter(g -> lineside.applies(g.applies()))
        .map(g -> lineside.over(g, g.extent()))
        .sorted(Comparator.comparingDouble(Lineside.Over::fromM))
        .forEach(o -> table.row(o.what().name(), around(o), o.what().note()));
    return table.build(observed("adhesion", "table.low-adhesion.none"));
  }

  private Table brakeTests(String part) {
    Tables table = new Tables(words, part, "brake-tests");
    plan.brakeTests()
        .forEach(
            t ->
                table.row(
                    words.place(t.atM()),
                    words.number(t.place().speed().metresPerSecond()),
                    words.number(t.plannedMps()),
                    words.text(
                        "brake-test.asked",
                        words.pressure(t.pressurePa()),
                        words.seconds(t.heldS())),
                    t.made() ? words.number(t.speedAfterMps()) : words.text("dash"),
                    words.text(t.made() ? "brake-test.made" : "brake-test.no-room"),
                    t.place().note()));
    return table.build(observed("brake test", "table.brake-tests.none"));
  }

  private Table structures(String part) {
    Tables table = new Tables(words, part, "structures");
    assignment.route().structures().stream()
        .map(s -> lineside.over(s, s.extent()))
        .sorted(Comparator.comparingDouble(Lineside.Over::fromM))
        .forEach(
            o ->
                table.row(
                    lineside.said(o.what()),
                    o.toM() - o.fromM() < 1 ? words.place(o.fromM()) : where(o.what().extent())));
    return table.build(observed("structure", "table.structures.none"));
  }

  /** What the data says of an empty list, else that nothing was supplied. */
  private String observed(String subject, String key) {
    return lineside.observed(subject).orElseGet(() -> words.text(key));
  }
}
