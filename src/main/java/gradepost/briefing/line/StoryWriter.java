package gradepost.briefing.line;

import gradepost.briefing.Cue;
import gradepost.briefing.chart.TrackStrip.Bend;
import gradepost.briefing.chart.TrackStrip.Slope;
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
import gradepost.route.Curve;
import gradepost.route.Junction;
import gradepost.route.JunctionRoute;
import gradepost.route.Signal;
import gradepost.route.Structure;
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
import java.util.stream.Stream;

/** Everything that is met, in the order in which it is met. */
public final class StoryWriter {
  private final Plan plan;
  private final Assignment assignment;
  private final Lineside lineside;
  private final Standing standing;
  private final Words words;
  private final StoryRows rows;

  public StoryWriter(Plan plan, Lineside lineside, Standing standing, Run run) {
    this.standing = standing;
    this.plan = plan;
    this.assignment = plan.assignment();
    this.lineside = lineside;
    this.words = lineside.words();
    this.rows = new StoryRows(plan, words, run);
  }

  /** The whole story, in the order of travel. */
  public List<Cue> story() {
    stations();
    speeds();
    signals();
    track();
    places();
    ActionWords orders = new ActionWords(words, assignment.stock());
    Map<Action, PrintedApplication> named = named();
    for (Step step : Step.of(plan.actions())) {
      Optional<PrintedApplication> begun = Optional.ofNullable(named.get(step.first()));
      rows.action(step.first(), orders.whole(Telling.order(words.grid(), step), begun));
    }
    plan.approaches().forEach(this::stands);
    return rows.cues();
  }

  /** The applications that are called by what they are for, by what begins them. */
  private Map<Action, PrintedApplication> named() {
    Map<Action, PrintedApplication> out = new HashMap<>();
    List<InstructionSheet> sheets = plan.told().sheets();
    for (int i = 0; i < sheets.size(); i++) {
      List<Step> steps = Step.of(plan.approaches().get(i).actions());
      if (sheets.get(i).named()) {
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
    rows.stands(
        approach,
        dwell.seconds() > 0
            ? words.text("story.stops-for", stop.name(), stop.markText(), words.time(dwell))
            : words.text("story.stops", stop.name(), stop.markText()));
  }

  private void see(double atM, String text, boolean heading) {
    rows.see(atM, text, heading);
  }

  private void todo(double atM, String text) {
    rows.todo(atM, text);
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
              call.isPresent() ? "story.station" : "story.station-pass",
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
        see(step.fromM(), words.text("story.speed-starts", words.speed(step.speedMps())), false);
      } else if (step.speedMps() < before.speedMps()) {
        rows.falls(
            step.fromM(),
            words.text("story.speed-falls", words.speed(step.speedMps()), standing.causes(step)));
      } else if (step.speedMps() > before.speedMps()) {
        todo(
            words.path().printedAtOrAfter(step.fromM()),
            words.text("story.speed-rises", words.speed(step.speedMps())));
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
  private boolean toldAlready(StoryRows.Told board) {
    String of = board.text().substring(board.text().indexOf(": ") + 1);
    return rows.told().stream()
        .anyMatch(i -> Math.abs(i.atM() - board.atM()) < 12 && says(i.text(), of));
  }

  /** As the table of restrictions has it: where something ends, at or after it. */
  private StoryRows.Told told(Lineside.Over<Board> board, String of) {
    BoardKind kind = board.what().kind();
    return new StoryRows.Told(
        kind == BoardKind.TERMINATION
            ? words.path().printedAtOrAfter(board.fromM())
            : board.fromM(),
        words.text("story.board", words.text("board." + TrackStripWriter.lower(kind)), of));
  }

  private void signals() {
    for (Lineside.Over<Signal> o : lineside.signals()) {
      Signal s = o.what();
      String kind = words.text("signal." + TrackStripWriter.lower(s.kind()));
      String text = words.text("story.signal", s.id(), kind);
      if (!s.routes().isEmpty()) {
        text =
            words.text(
                "story.signal-routes",
                text,
                String.join(", ", s.routes().stream().map(r -> r.leadsTo()).toList()));
      }
      see(o.fromM(), s.note().isBlank() ? text : words.text("story.noted", text, s.note()), false);
      s.aws().ifPresent(a -> see(words.path().metresAt(a), words.text("story.aws", s.id()), false));
    }
  }

  private void track() {
    double start = 0;
    for (Section section : words.path().sections()) {
      if (start > 0) {
        see(start, words.text("story.section", section.name()), false);
      }
      start += section.lengthM();
    }
    for (Slope s : lineside.slopes()) {
      see(s.fromM(), words.text("story.gradient", words.gradient(s.permille())), false);
    }
    for (Lineside.Over<Curve> o : lineside.curves()) {
      Bend b = lineside.bend(o);
      String curve = words.text("story.curve", b.text(), side(b.left()));
      if (b.checkLeft() || b.checkRight()) {
        String rail =
            b.checkLeft() && b.checkRight()
                ? words.text("check-rail.both")
                : words.text("check-rail.beside", side(b.checkLeft()));
        curve = words.text("story.curve-checked", curve, rail);
      }
      see(o.fromM(), curve, false);
    }
    for (Junction j : assignment.route().junctions()) {
      if (lineside.applies(j.applies())) {
        Lineside.Over<Junction> o = lineside.over(j, j.extent());
        JunctionRoute taken = assignment.junctionRoutes().getOrDefault(j.name(), j.routes().get(0));
        see(
            o.fromM(),
            words.text(
                taken.diverging() ? "story.junction-diverging" : "story.junction",
                j.name(),
                taken.name(),
                words.speed(permissible(o.fromM(), o.toM()))),
            false);
      }
    }
  }

  /** The lowest permissible speed of a stretch: over points it may be less than the way's own. */
  private double permissible(double fromM, double toM) {
    return plan.ceiling().stream()
        .filter(s -> s.toM() > fromM && s.fromM() < toM)
        .mapToDouble(CeilingStep::speedMps)
        .min()
        .orElseThrow();
  }

  private String side(boolean left) {
    return words.text(left ? "hand.left" : "hand.right");
  }

  private void places() {
    lineside.landmarks().stream()
        .filter(l -> lineside.tellsMore(l))
        .forEach(
            l ->
                see(
                    l.fromM(),
                    words.text(
                        l.what().night() ? "story.landmark" : "story.landmark-day",
                        l.what().name(),
                        words.hand(lineside.seen(l.what().side()))),
                    false));
    for (Structure s : assignment.route().structures()) {
      Lineside.Over<Structure> o = lineside.over(s, s.extent());
      String kind = words.text("structure." + TrackStripWriter.lower(s.kind()));
      String text = s.name().isBlank() ? kind : words.text("story.structure", kind, s.name());
      see(o.fromM(), s.note().isBlank() ? text : words.text("story.noted", text, s.note()), false);
    }
    assignment.route().railGaps().stream()
        .filter(g -> lineside.applies(g.applies()))
        .map(g -> lineside.over(g, g.extent()))
        .forEach(
            o -> {
              todo(
                  o.fromM(),
                  words.text("story.gap", o.what().name(), words.apart(o.toM() - o.fromM())));
            });
    lineside
        .lowAdhesion()
        .forEach(
            o ->
                see(
                    o.fromM(),
                    words.text("story.low-adhesion", o.what().name(), words.placePast(o.toM())),
                    false));
    plan.brakeTests().forEach(t -> todo(t.atM(), brakeTest(t)));
  }

  /** A test that the run makes is told by its instructions, and announced here. */
  private String brakeTest(BrakeTest test) {
    String asked = words.speed(test.place().speed().metresPerSecond());
    return test.made()
        ? words.text(
            "story.brake-test",
            asked,
            words.speed(test.plannedMps()),
            words.speed(test.speedAfterMps()))
        : words.text("story.brake-test-no-room", asked, words.speed(test.plannedMps()));
  }
}
