package gradepost.briefing.line;

import gradepost.briefing.word.ActionWords;
import gradepost.briefing.word.Standing;
import gradepost.briefing.word.Words;
import gradepost.plan.Action;
import gradepost.plan.Approach;
import gradepost.plan.BrakeTest;
import gradepost.plan.Plan;
import gradepost.plan.Run;
import gradepost.plan.Step;
import gradepost.plan.Telling;
import gradepost.route.Board;
import gradepost.route.BoardKind;
import gradepost.route.Junction;
import gradepost.route.JunctionRoute;
import gradepost.route.PermanentRestriction;
import gradepost.route.Signal;
import gradepost.route.Structure;
import gradepost.route.place.Hand;
import gradepost.route.place.Section;
import gradepost.task.Assignment;
import gradepost.task.Call;
import gradepost.task.CeilingStep;
import gradepost.task.Target;
import gradepost.told.InstructionSheet;
import gradepost.told.PrintedApplication;
import gradepost.told.print.PrintedTime;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;

/** Everything that is met and done, in the order in which it is met. */
final class LineTeller {
  private final Plan plan;
  private final Assignment assignment;
  private final Lineside lineside;
  private final Standing standing;
  private final Views views;
  private final Words words;
  private final Run run;
  private final LineRows rows;

  LineTeller(Plan plan, Lineside lineside, Standing standing, Views views) {
    this.views = views;
    this.standing = standing;
    this.plan = plan;
    this.assignment = plan.assignment();
    this.lineside = lineside;
    this.words = lineside.words();
    this.run = new Run(plan.trace());
    this.rows = new LineRows(plan, words, run);
  }

  /** All of it, in the order of travel. To be asked of once. */
  List<LineRows.Row> rows() {
    stations();
    speeds();
    signals();
    track();
    places();
    states();
    plan.brakeTests().forEach(this::brakeTest);
    ActionWords orders = new ActionWords(words, assignment.stock());
    EarlierRails earlier = new EarlierRails(plan, words);
    Map<Action, PrintedApplication> begun = begun();
    Map<Action, PrintedApplication> named = named();
    for (Step step : Step.of(plan.actions())) {
      Optional<PrintedApplication> purpose = Optional.ofNullable(named.get(step.first()));
      Optional<PrintedApplication> application = Optional.ofNullable(begun.get(step.first()));
      String text = orders.whole(Telling.order(words.grid(), step), purpose);
      rows.action(
          step.first(),
          application.map(a -> earlier.told(text, a, step.first().approach())).orElse(text),
          application.isPresent());
    }
    plan.approaches().forEach(this::stands);
    views.all().forEach(rows::show);
    return rows.rows();
  }

  /** What has a name of its own beside the line, whatever is driven there. */
  List<LineRows.Row> fixed() {
    stations();
    signals();
    junctions();
    places();
    return rows.rows();
  }

  /**
   * What always stands beside the line, whatever is driven there and whatever notices are in force:
   * by it the sheets are cut. Speeds are told shortly: only their height matters.
   */
  List<LineRows.Row> always() {
    stations();
    assignment.route().restrictions().stream()
        .filter(r -> lineside.applies(r.applies()))
        .forEach(this::signed);
    signals();
    track();
    places();
    states();
    return rows.rows();
  }

  /** Its beginning, its boards, and where the rear of the train is clear of it. */
  private void signed(PermanentRestriction r) {
    Lineside.Over<PermanentRestriction> o = lineside.over(r, r.extent());
    String speed = words.speed(r.speed().metresPerSecond());
    see(o.fromM(), words.text("line.speed-falls", speed, r.name()), false);
    lineside.boards(r.boards()).stream()
        .map(b -> told(b, r.name()))
        .filter(board -> !toldAlready(board))
        .forEach(board -> see(board.atM(), board.text(), false));
    double clearM = o.toM() + assignment.formation().lengthM();
    see(Math.min(clearM, words.path().lengthM()), words.text("line.speed-rises", speed), false);
  }

  /** The applications by what begins them. */
  private Map<Action, PrintedApplication> begun() {
    return applications(sheet -> true);
  }

  /** Those that are called by what they are for. */
  private Map<Action, PrintedApplication> named() {
    return applications(InstructionSheet::named);
  }

  private Map<Action, PrintedApplication> applications(Predicate<InstructionSheet> of) {
    Map<Action, PrintedApplication> out = new HashMap<>();
    List<InstructionSheet> sheets = plan.told().sheets();
    for (int i = 0; i < sheets.size(); i++) {
      List<Step> steps = Step.of(plan.approaches().get(i).actions());
      if (of.test(sheets.get(i))) {
        sheets.get(i).begun().forEach(a -> out.put(steps.get(a.line() - 1).first(), a));
      }
    }
    return out;
  }

  private void stands(Approach approach) {
    approach.target().stop().ifPresent(stop -> stands(approach, stop));
  }

  private void stands(Approach approach, Target.Stop stop) {
    PrintedTime dwell = words.grid().time(stop.call().dwell().seconds());
    String after = words.minutes(legS(approach));
    rows.stands(
        approach,
        dwell.seconds() > 0
            ? words.text("line.stops-for", stop.name(), stop.markText(), after, words.time(dwell))
            : words.text("line.stops", stop.name(), stop.markText(), after));
  }

  /** From stand to stand: a leg's own time, whatever the legs before it take. */
  private double legS(Approach approach) {
    double before = 0;
    for (Stands.Stand stand : Stands.of(plan, run).all()) {
      if (stand.markM() == approach.target().atM()) {
        return stand.timeS() - before;
      }
      before = stand.timeS();
    }
    throw new IllegalStateException("no stand at " + approach.target().name());
  }

  private void see(double atM, String text, boolean heading) {
    rows.see(atM, text, heading);
  }

  private void stations() {
    for (Lineside.Over<Lineside.Face> o : lineside.platforms()) {
      Lineside.Face face = o.what();
      Optional<Call> call =
          assignment.calls().stream()
              .filter(c -> c.platform().equals(face.platform()))
              .filter(c -> c.station().equals(face.station()))
              .findFirst();
      see(
          o.fromM(),
          words.text(
              call.isPresent() ? "line.station" : "line.station-pass",
              face.station().name(),
              face.platform().number(),
              words.hand(lineside.seen(face.platform().side()))),
          true);
    }
  }

  private void speeds() {
    CeilingStep before = null;
    for (CeilingStep step : plan.ceiling()) {
      if (before == null) {
        see(step.fromM(), words.text("line.speed-starts", words.speed(step.speedMps())), false);
      } else if (step.speedMps() < before.speedMps()) {
        rows.falls(
            step.fromM(),
            words.text(
                "line.speed-falls", words.speed(step.speedMps()), standing.causesUndated(step)));
      } else if (step.speedMps() > before.speedMps()) {
        see(
            words.path().printedAtOrAfter(step.fromM()),
            words.text("line.speed-rises", words.speed(step.speedMps())),
            false);
      }
      before = step;
    }
    Stream.concat(
            assignment.route().restrictions().stream()
                .filter(r -> lineside.applies(r.applies()))
                .flatMap(r -> lineside.boards(r.boards()).stream().map(b -> told(b, r.name()))),
            assignment.restrictions().stream()
                .filter(r -> lineside.applies(r.applies()))
                .flatMap(
                    r -> lineside.boards(r.boards()).stream().map(b -> told(b, r.reference()))))
        .filter(board -> !toldAlready(board))
        .forEach(board -> see(board.atM(), board.text(), false));
  }

  private static boolean says(String text, String of) {
    return text.endsWith(":" + of)
        || text.contains(":" + of + " (")
        || text.contains(":" + of + ",");
  }

  /** A board that says what the permissible speed at its place says is not told twice. */
  private boolean toldAlready(LineRows.Told board) {
    String of = board.text().substring(board.text().indexOf(": ") + 1);
    return rows.told().stream()
        .anyMatch(i -> Math.abs(i.atM() - board.atM()) < 12 && says(i.text(), of));
  }

  /** As the table of restrictions has it: where something ends, at or after it. */
  private LineRows.Told told(Lineside.Over<Board> board, String of) {
    BoardKind kind = board.what().kind();
    return new LineRows.Told(
        kind == BoardKind.TERMINATION
            ? words.path().printedAtOrAfter(board.fromM())
            : board.fromM(),
        words.text("line.board", words.text("board." + TrackStripWriter.lower(kind)), of));
  }

  private void signals() {
    for (Lineside.Over<Signal> o : lineside.signals()) {
      Signal s = o.what();
      String kind = words.text("signal." + TrackStripWriter.lower(s.kind()));
      String text = words.text("line.signal", s.id(), kind);
      if (s.side() == Hand.RIGHT) {
        text = words.text("line.signal-right", text);
      }
      if (s.aws().isPresent()) {
        text = words.text("line.aws", text);
      }
      if (!s.routes().isEmpty()) {
        text =
            words.text(
                "line.signal-routes",
                text,
                String.join(", ", s.routes().stream().map(r -> r.leadsTo()).toList()));
      }
      see(o.fromM(), s.note().isBlank() ? text : words.text("line.noted", text, s.note()), false);
    }
  }

  private void track() {
    double start = 0;
    for (Section section : words.path().sections()) {
      if (start > 0) {
        see(start, words.text("line.section-changes", section.name()), false);
      }
      start += section.lengthM();
    }
    junctions();
  }

  private void junctions() {
    for (Junction j : assignment.route().junctions()) {
      if (lineside.applies(j.applies())) {
        Lineside.Over<Junction> o = lineside.over(j, j.extent());
        JunctionRoute taken = assignment.junctionRoutes().getOrDefault(j.name(), j.routes().get(0));
        see(
            o.fromM(),
            words.text(
                junctionKey(taken, o),
                j.name(),
                taken.name(),
                words.speed(permissible(o.fromM(), o.toM()))),
            false);
      }
    }
  }

  private String junctionKey(JunctionRoute taken, Lineside.Over<Junction> junction) {
    if (!taken.diverging()) {
      return "line.junction";
    }
    return new JunctionWays(assignment, lineside).trailing(taken, junction)
        ? "line.junction-trailing"
        : "line.junction-diverging";
  }

  /** The lowest permissible speed of a stretch: over points it may be less than the way's own. */
  private double permissible(double fromM, double toM) {
    return plan.ceiling().stream()
        .filter(s -> s.toM() > fromM && s.fromM() < toM)
        .mapToDouble(CeilingStep::speedMps)
        .min()
        .orElseThrow();
  }

  private void places() {
    lineside.landmarks().stream()
        .filter(l -> lineside.tellsMore(l))
        .forEach(
            l ->
                see(
                    l.fromM(),
                    words.text(
                        l.what().night() ? "line.landmark" : "line.landmark-day",
                        l.what().name(),
                        words.hand(lineside.seen(l.what().side()))),
                    false));
    for (Structure s : assignment.route().structures()) {
      Lineside.Over<Structure> o = lineside.over(s, s.extent());
      if (s.note().isBlank() && lineside.namedByLandmark(o)) {
        continue;
      }
      see(o.fromM(), lineside.said(s), false);
    }
  }

  /** How things are there: no orders. */
  private void states() {
    assignment.route().railGaps().stream()
        .filter(g -> lineside.applies(g.applies()))
        .map(g -> lineside.over(g, g.extent()))
        .forEach(
            o ->
                see(
                    o.fromM(),
                    words.text("line.gap", o.what().name(), words.apart(o.toM() - o.fromM())),
                    false));
    lineside
        .lowAdhesion()
        .forEach(
            o ->
                see(
                    o.fromM(),
                    words.text("line.low-adhesion", o.what().name(), words.placePast(o.toM())),
                    false));
  }

  /** A test that the run makes is told by its instructions, and announced here. */
  private void brakeTest(BrakeTest test) {
    String asked = words.speed(test.place().speed().metresPerSecond());
    String planned = words.speed(test.plannedMps());
    see(
        test.atM(),
        test.noRoom()
            .map(why -> words.text("line.brake-test-no-room", asked, planned, instead(why)))
            .orElseGet(
                () ->
                    words.text(
                        "line.brake-test", asked, planned, words.speed(test.speedAfterMps()))),
        false);
    test.noRoom()
        .flatMap(BrakeTest.NoRoom::instead)
        .ifPresent(
            there ->
                see(
                    there.atM(),
                    words.text(
                        "line.brake-test-instead",
                        words.place(test.atM()),
                        words.speed(there.mps())),
                    false));
  }

  private String instead(BrakeTest.NoRoom why) {
    return why.instead()
        .map(there -> words.text("line.brake-test-there", words.place(there.atM())))
        .orElseGet(() -> words.text("line.brake-test-nowhere"));
  }
}
