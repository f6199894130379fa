package gradepost.briefing.compose;

import gradepost.briefing.LineSheet;
import gradepost.briefing.Messages;
import gradepost.briefing.chart.Chart;
import gradepost.briefing.chart.TrackStrip;
import gradepost.briefing.chart.TrackStrip.Bend;
import gradepost.briefing.chart.TrackStrip.Slope;
import gradepost.briefing.line.HeldBands;
import gradepost.briefing.line.LineWriter;
import gradepost.briefing.line.Lineside;
import gradepost.briefing.line.PlateRule;
import gradepost.briefing.line.TrackStripWriter;
import gradepost.briefing.page.ApproachWriter;
import gradepost.briefing.word.Standing;
import gradepost.briefing.word.Words;
import gradepost.pack.IssueDetails;
import gradepost.plan.Approach;
import gradepost.plan.Plan;
import gradepost.route.Board;
import gradepost.route.Landmark;
import gradepost.route.Path;
import gradepost.route.Signal;
import gradepost.route.place.Applies;
import gradepost.route.place.Extent;
import gradepost.route.place.Hand;
import gradepost.stock.BrakeSystem;
import gradepost.task.Assignment;
import gradepost.task.Target;
import gradepost.units.Rounding;
import gradepost.units.UnitStyle;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What one plan's briefing teaches, in the briefing's own words, for papers that ask it again or
 * compare with it.
 */
public final class BriefingFacts {
  /** A thing at a place, distance run in metres. */
  public record At<T>(T what, double atM) {}

  private final Plan plan;
  private final Words words;
  private final Lineside lineside;

  public BriefingFacts(Plan plan, Messages messages) {
    this.plan = plan;
    this.words = new Words(messages, plan.assignment().path());
    this.lineside = new Lineside(plan.assignment(), words);
  }

  /** Whether an approach is a page of its own; else a row among the lower speeds tells of it. */
  public boolean hasPlate(Approach approach) {
    return new PlateRule(plan, lineside).holds(approach);
  }

  /** The plan that is taught. */
  public Plan plan() {
    return plan;
  }

  /** What the plan was made for. */
  public Assignment assignment() {
    return plan.assignment();
  }

  /** The route in the direction of travel. */
  public Path path() {
    return words.path();
  }

  /** The units of the route. */
  public UnitStyle units() {
    return words.units();
  }

  /** The speeds that the plan holds between two places. */
  public List<Chart.HeldBand> held(double fromM, double toM) {
    return HeldBands.of(plan, words, fromM, toM);
  }

  /** A text by its key, with its holes filled. */
  public String text(String key, Object... holes) {
    return words.text(key, holes);
  }

  /** Whether there is a text under this key. */
  public boolean hasText(String key) {
    return words.messages().has(key);
  }

  /** A place that the driver comes to. */
  public String place(double atM) {
    return words.place(atM);
  }

  /**
   * Whether the page tells a place on the way to a target by its mileage; close to the target it is
   * told as so many yards or metres before it.
   */
  public boolean byMileage(double atM, Target target) {
    return words.placeTo(atM, target).equals(words.place(atM));
  }

  /** A length to the nearest yard or metre, of what was observed and not of what is advised. */
  public String nearestLength(double metres) {
    return units().length(metres, Rounding.NEAREST);
  }

  /** A notch as it is called. */
  public String notch(String name) {
    return words.notch(name);
  }

  /** A place that the train must have reached. */
  public String placePast(double atM) {
    return words.placePast(atM);
  }

  /** A permissible or planned speed with its unit, rounded down. */
  public String speed(double mps) {
    return words.speed(mps);
  }

  /** The same without the unit. */
  public String number(double mps) {
    return words.number(mps);
  }

  /** A speed in the unit of the route, not rounded. */
  public double speedValue(double mps) {
    return words.speedValue(mps);
  }

  /** A gauge pressure with its unit, from pascals. */
  public String pressure(double pascals) {
    return words.pressure(pascals);
  }

  /** A gradient with its way, from per mille; rising is positive. */
  public String gradient(double permille) {
    return words.gradient(permille);
  }

  /** A length that must not be overstated, with its unit, from metres. */
  public String room(double metres) {
    return words.room(metres);
  }

  /** A length that must not be understated, with its unit, from metres. */
  public String overrun(double metres) {
    return words.overrun(metres);
  }

  /** A time in whole seconds. */
  public String seconds(double seconds) {
    return words.seconds(seconds);
  }

  /** A date and hour. */
  public String moment(LocalDateTime moment) {
    return words.moment(moment);
  }

  /** What an approach is called on its page. */
  public String title(Approach approach) {
    return ApproachWriter.title(words, approach.target());
  }

  /** What a brake is called in the ladder. */
  public String called(BrakeSystem brake) {
    return words.called(brake);
  }

  /** Whether something stands for this train on its lines. */
  public boolean applies(Applies applies) {
    return lineside.applies(applies);
  }

  /** The gradients in the order of travel. */
  public List<Slope> slopes() {
    return lineside.slopes();
  }

  /** The curves in the order of travel. */
  public List<Bend> bends() {
    return lineside.bends();
  }

  /** The signals that this train reads, in the order of travel. */
  public List<At<Signal>> signals() {
    return lineside.signals().stream().map(o -> new At<>(o.what(), o.fromM())).toList();
  }

  /**
   * The last signal before a place that can show danger; empty where there is none. What is printed
   * at the same place as the signal is not behind it.
   */
  public Optional<At<Signal>> protecting(double atM) {
    return signals().stream()
        .filter(s -> s.what().kind().stops() && s.atM() <= atM - units().placeStepM())
        .reduce((a, b) -> b);
  }

  /** The landmarks of this direction, in the order of travel. */
  public List<At<Landmark>> landmarks() {
    return lineside.landmarks().stream().map(o -> new At<>(o.what(), o.fromM())).toList();
  }

  /** Boards of a restriction that this direction reads. */
  public List<At<Board>> boards(List<Board> boards) {
    return lineside.boards(boards).stream().map(o -> new At<>(o.what(), o.fromM())).toList();
  }

  /** Where a stretch begins for this direction. */
  public double begins(Extent extent) {
    return lineside.over(extent, extent).fromM();
  }

  /** A side of the line as this direction sees it. */
  public Hand seen(Hand side) {
    return lineside.seen(side);
  }

  /** How long a stretch is, metres. */
  public double length(Extent extent) {
    return Math.abs(path().metresAt(extent.to()) - path().metresAt(extent.from()));
  }

  /** The track and what stands beside it. */
  public TrackStrip track(double fromM, double toM) {
    return new TrackStripWriter(assignment(), lineside).strip(fromM, toM);
  }

  /** The line with what has a name beside it, to be filled in by a learner. */
  public List<LineSheet> lineToFillIn(String idPrefix, IssueDetails issue) {
    return new LineWriter(plan, lineside, new Standing(words, issue, assignment()))
        .toFillIn(idPrefix);
  }

  /** Everything with a name of its own beside the line, in order. */
  public List<At<String>> cues() {
    List<At<String>> out = new ArrayList<>();
    lineside.landmarks().stream()
        .filter(lineside::tellsMore)
        .forEach(l -> out.add(new At<>(l.what().name(), l.fromM())));
    signals().forEach(s -> out.add(new At<>(text("signal.called", s.what().id()), s.atM())));
    lineside
        .platforms()
        .forEach(
            p ->
                out.add(
                    new At<>(
                        text(
                            "platform.called",
                            p.what().station().name(),
                            p.what().platform().number()),
                        p.fromM())));
    assignment().route().structures().stream()
        .filter(s -> !s.name().isBlank())
        .forEach(s -> out.add(new At<>(s.name(), begins(s.extent()))));
    assignment().route().junctions().stream()
        .filter(j -> applies(j.applies()))
        .forEach(j -> out.add(new At<>(j.name(), begins(j.extent()))));
    out.sort(Comparator.comparingDouble((At<String> c) -> c.atM()).thenComparing(At::what));
    return List.copyOf(out);
  }
}
