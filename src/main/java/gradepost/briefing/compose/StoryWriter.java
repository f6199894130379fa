package gradepost.briefing.compose;

import gradepost.briefing.Cue;
import gradepost.briefing.TrackStrip.Bend;
import gradepost.briefing.TrackStrip.Slope;
import gradepost.drive.Action;
import gradepost.drive.Assignment;
import gradepost.drive.BrakeTest;
import gradepost.drive.Call;
import gradepost.drive.CeilingStep;
import gradepost.drive.Command;
import gradepost.drive.Plan;
import gradepost.drive.Run;
import gradepost.drive.Target;
import gradepost.route.Curve;
import gradepost.route.Junction;
import gradepost.route.JunctionRoute;
import gradepost.route.Section;
import gradepost.route.Signal;
import gradepost.route.Structure;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Everything that is met, in the order in which it is met. */
final class StoryWriter {
  /** One thing at one place; what is to be done there comes after what is seen there. */
  private record Item(double atM, String text, boolean todo, boolean heading) {}

  private final Plan plan;
  private final Assignment assignment;
  private final Lineside lineside;
  private final Words words;
  private final Run run;
  private final List<Item> items = new ArrayList<>();

  StoryWriter(Plan plan, Lineside lineside, Run run) {
    this.plan = plan;
    this.assignment = plan.assignment();
    this.lineside = lineside;
    this.words = lineside.words();
    this.run = run;
  }

  List<Cue> story() {
    stations();
    speeds();
    signals();
    track();
    places();
    Orders orders = new Orders(words, assignment.stock());
    List<Begun> begun = plan.approaches().stream().flatMap(a -> Begun.of(a).stream()).toList();
    for (Step step : Step.of(plan.actions())) {
      todo(step.first().atM(), orders.whole(step, begun));
    }
    for (var approach : plan.approaches()) {
      if (approach.target() instanceof Target.Stop stop) {
        see(approach.endM(), words.text("story.stops", stop.name(), stop.markText()), false);
      }
    }
    items.sort(
        Comparator.comparingDouble(Item::atM)
            .thenComparing(Item::todo)
            .thenComparing(i -> !i.heading()));
    return merged();
  }

  private void see(double atM, String text, boolean heading) {
    items.add(new Item(Math.max(0, atM), text, false, heading));
  }

  private void todo(double atM, String text) {
    items.add(new Item(atM, text, true, false));
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
        see(
            step.fromM(),
            words.text(
                "story.speed-falls", words.speed(step.speedMps()), words.cause(step.cause())),
            false);
      } else if (step.speedMps() > before.speedMps()) {
        todo(step.fromM(), words.text("story.speed-rises", words.speed(step.speedMps())));
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
        .filter(item -> !toldAlready(item))
        .forEach(items::add);
  }

  /** A board that says what the permissible speed at its place says is not told twice. */
  private boolean toldAlready(Item board) {
    String of = board.text().substring(board.text().indexOf(": ") + 1);
    return items.stream()
        .anyMatch(i -> Math.abs(i.atM() - board.atM()) < 12 && i.text().endsWith(":" + of));
  }

  private Item told(Lineside.Over<gradepost.route.Board> board, String of) {
    String kind = words.text("board." + TrackStripWriter.lower(board.what().kind()));
    return new Item(board.fromM(), words.text("story.board", kind, of), false, false);
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
                words.speed(taken.speed().metresPerSecond())),
            false);
      }
    }
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
    assignment.route().lowAdhesion().stream()
        .filter(g -> lineside.applies(g.applies()))
        .map(g -> lineside.over(g, g.extent()))
        .forEach(
            o ->
                see(
                    o.fromM(),
                    words.text("story.low-adhesion", o.what().name(), words.placePast(o.toM())),
                    false));
    plan.brakeTests().forEach(t -> todo(t.atM(), brakeTest(t)));
  }

  /** A test belongs to its place: where the planned run does not suit it, it says so. */
  private String brakeTest(BrakeTest test) {
    String asked = words.speed(test.place().speed().metresPerSecond());
    String planned = words.speed(test.plannedMps());
    Optional<Command> handle =
        plan.actions().stream()
            .filter(a -> a.atM() <= test.atM())
            .reduce((a, next) -> next)
            .map(Action::command);
    if (handle.filter(Command.Brake.class::isInstance).isPresent()) {
      return words.text("story.brake-test-braked", asked, planned);
    } else if (handle.filter(Command.Power.class::isInstance).isPresent()) {
      return words.text("story.brake-test-power", asked, planned);
    }
    return words.text(
        asked.equals(planned) ? "story.brake-test" : "story.brake-test-coasting", asked, planned);
  }

  private List<Cue> merged() {
    List<Cue> out = new ArrayList<>();
    double end =
        plan.approaches().isEmpty()
            ? words.path().lengthM()
            : plan.approaches().get(plan.approaches().size() - 1).endM();
    double lastM = Double.NaN;
    double lastS = 0;
    int i = 0;
    while (i < items.size()) {
      Item first = items.get(i);
      String place = words.place(first.atM());
      List<String> what = new ArrayList<>();
      List<String> todo = new ArrayList<>();
      boolean heading = false;
      int j = i;
      while (j < items.size()
          && items.get(j).atM() - first.atM() < words.units().placeStepM()
          && words.place(items.get(j).atM()).equals(place)) {
        Item item = items.get(j++);
        List<String> list = item.todo() ? todo : what;
        if (!list.contains(item.text())) {
          list.add(item.text());
        }
        heading |= item.heading();
      }
      i = j;
      boolean ridden = first.atM() <= end + 1;
      double time = run.timeAt(first.atM());
      boolean started = !Double.isNaN(lastM);
      out.add(
          new Cue(
              place,
              started ? words.apart(first.atM() - lastM) : "",
              started && ridden ? words.seconds(time - lastS) : "",
              ridden ? words.number(run.speedAt(first.atM())) : "",
              what,
              todo,
              heading));
      lastM = first.atM();
      lastS = time;
    }
    return out;
  }
}
