package gradepost.briefing.page;

import gradepost.briefing.ApproachChart;
import gradepost.briefing.ApproachPage;
import gradepost.briefing.Table;
import gradepost.briefing.line.CueSighting;
import gradepost.briefing.line.Lineside;
import gradepost.briefing.line.Stands;
import gradepost.briefing.word.ActionWords;
import gradepost.briefing.word.ApplicationLine;
import gradepost.briefing.word.Standing;
import gradepost.briefing.word.Words;
import gradepost.plan.Action;
import gradepost.plan.Application;
import gradepost.plan.Approach;
import gradepost.plan.BrakeTest;
import gradepost.plan.Plan;
import gradepost.plan.Run;
import gradepost.plan.Step;
import gradepost.task.Assignment;
import gradepost.task.Stops;
import gradepost.task.Target;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** One approach on one page. */
public final class ApproachWriter {
  private final Plan plan;
  private final Assignment assignment;
  private final Words words;
  private final Lineside lineside;
  private final Standing standing;
  private final ActionWords orders;
  private final CueSighting sight;
  private final CueWriter cues;
  private final LadderWriter ladder;
  private final FasterWriter faster;
  private final FindingWords findings;
  private final ApproachChartWriter charts;
  private final Run run;
  private final Stands stands;
  private final List<Action> actions;

  public ApproachWriter(Plan plan, Lineside lineside, Standing standing) {
    this.standing = standing;
    this.plan = plan;
    this.assignment = plan.assignment();
    this.words = lineside.words();
    this.lineside = lineside;
    this.orders = new ActionWords(words, assignment.stock());
    this.sight = new CueSighting(lineside, assignment.policy().run().landmarkReach().metres());
    this.cues = new CueWriter(words, sight);
    this.ladder = new LadderWriter(words, orders, assignment.policy().noticing().seconds());
    this.faster = new FasterWriter(words, orders, cues);
    this.findings = new FindingWords(words);
    this.run = new Run(plan.trace());
    this.stands = Stands.of(plan, run);
    this.charts = new ApproachChartWriter(plan, lineside, run);
    this.actions = plan.actions();
  }

  /** The page of one approach, for the part of the briefing with this identity. */
  public ApproachPage page(String part, Approach approach) {
    String id = part + "-a" + approach.number();
    String title = title(approach.target());
    String headline = headline(approach);
    List<ApproachPage.ActionLine> lines = lines(approach);
    ApproachChart chart = charts.chart(id + "-chart", approach, title, headline);
    List<Table> tables = new ArrayList<>(ladder.tables(id + "-ladder", approach));
    if (approach.applications().isEmpty()) {
      tables.add(0, new PassingWriter(words, run).table(id, approach, chart.track()));
    }
    return new ApproachPage(
        id,
        Integer.toString(approach.number()),
        title,
        targetLine(approach.target()),
        headline,
        marks(approach.target()),
        chart,
        lines,
        unbraked(approach),
        points(approach),
        tables,
        new SpreadWriter(words).chart(id, approach).stream().toList(),
        approach.findings().stream().map(findings::of).toList(),
        List.of());
  }

  private List<ApproachPage.Point> points(Approach approach) {
    List<ApproachPage.Point> out = new ArrayList<>();
    for (ApplicationLine begun : ApplicationLine.of(approach)) {
      Application application = begun.application();
      AnswerWriter answer =
          new AnswerWriter(words, sight, lineside, application, approach.target());
      boolean asked = answer.asked();
      boolean first = out.isEmpty();
      out.add(
          new ApproachPage.Point(
              begun.number(),
              asked
                  ? answer.question(
                      first ? "answer.question" : "answer.question-later",
                      assignment.stock().service().shortName(),
                      begun.number())
                  : "",
              asked ? answer.rail() : "",
              asked ? answer.first() : "",
              !asked ? List.of() : first ? answer.rest() : answer.inShort(),
              asked ? answer.last() : "",
              asked && answer.grave(),
              cues.goBy(application, begun.number(), onEarlierPage(approach, application))));
    }
    return out;
  }

  /** The action by whose clock a brake is put on that is the first thing on its own page. */
  private Optional<String> onEarlierPage(Approach approach, Application application) {
    double point = application.brakingPointM();
    return actions.stream()
        .filter(a -> a.atM() < point - 0.01)
        .reduce((a, next) -> next)
        .filter(a -> a.approach() != approach.number())
        .map(orders::done);
  }

  /**
   * The speed that the run has at a lower one for which no brake is put on; whoever is faster has
   * to brake. At the worst: rounded down it could look as if a margin were kept.
   */
  private List<String> unbraked(Approach approach) {
    Target target = approach.target();
    if (!target.isLowerSpeed() || approach.brakingPointM().isPresent()) {
      return List.of();
    }
    String met =
        words.text(
            BrakeThere.of(approach, actions).key("approach.unbraked"),
            words.place(target.atM()),
            words.speed(target.speedMps()),
            words.speedAtMost(run.speedAt(target.atM())),
            BrakeThere.since(approach, actions).map(a -> words.place(a.atM())).orElse(""),
            BrakeThere.since(approach, actions).map(a -> "" + a.approach()).orElse(""));
    List<String> faster = this.faster.sentences(approach);
    return faster.size() < 2
        ? List.of((met + " " + String.join(" ", faster)).strip())
        : List.of(met, faster.get(0), String.join(" ", faster.subList(1, faster.size())));
  }

  private List<ApproachPage.ActionLine> lines(Approach approach) {
    List<ApproachPage.ActionLine> out = new ArrayList<>();
    List<ApplicationLine> begun = ApplicationLine.of(approach);
    double last = Double.NaN;
    for (Step step : Step.of(approach.actions())) {
      Action action = step.first();
      String number = Integer.toString(out.size() + 1);
      out.add(
          new ApproachPage.ActionLine(
              number,
              orders.todo(step, begun),
              orders.when(step),
              where(action, approach.target()),
              begun.stream()
                  .filter(b -> b.number().equals(number))
                  .findFirst()
                  .map(b -> cues.see(b.application()))
                  .orElseGet(() -> see(action, approach)),
              words.number(action.speedMps()),
              orders.gauge(action.command()),
              Double.isNaN(last) ? words.text("dash") : words.seconds(action.timeS() - last),
              begun.stream().anyMatch(b -> b.number().equals(number))));
      last = action.timeS();
    }
    return out;
  }

  private String where(Action action, Target target) {
    return action.trigger().isStart()
        ? words.place(stands.markM(action.atM()))
        : orders.where(action, target);
  }

  private String see(Action action, Approach approach) {
    Optional<Target.Stop> stop = approach.target().stop();
    if (action.command().isStand() && stop.isPresent()) {
      return stop.get().markText();
    }
    if (action.command().isPower() && action.speedMps() < 0.5) {
      return words.text("see.standing");
    }
    return sight.near(action.atM());
  }

  private String title(Target.OfApproach target) {
    return title(words, target);
  }

  /** What the page of an approach to this target is called. */
  public static String title(Words words, Target.OfApproach target) {
    return target.match(
        stop -> words.text("approach.stop", stop.name(), stop.call().platform().number()),
        lower -> title(words, lower));
  }

  private static String title(Words words, Target.Reduction r) {
    String key =
        switch (r.kind()) {
          case PERMANENT -> "approach.permanent";
          case TEMPORARY -> "approach.temporary";
          case JUNCTION -> "approach.junction";
        };
    return words.text(key, r.name(), words.speed(r.speedMps()));
  }

  private String targetLine(Target.OfApproach target) {
    return target.match(
        stop -> words.text("headline.stop", stop.markText(), words.place(stop.atM())),
        this::targetLine);
  }

  private String targetLine(Target.Reduction r) {
    String key =
        r.kind() == Target.Reduction.Kind.TEMPORARY ? "headline.temporary" : "headline.reduction";
    return words.text(
        key,
        words.speed(r.fromMps()),
        words.speed(r.speedMps()),
        words.place(r.atM()),
        r.reference(),
        standing.untilText(r.reference()));
  }

  private String headline(Approach approach) {
    Target.OfApproach target = approach.target();
    List<String> parts = new ArrayList<>();
    parts.add(targetLine(target));
    Optional<String> warned =
        target.match(
            stop -> Optional.empty(),
            lower ->
                Optional.of(
                    lower
                        .warningM()
                        .map(w -> words.text("headline.warned", words.place(w)))
                        .orElse(words.text("headline.not-warned"))));
    warned.ifPresent(parts::add);
    double from = approach.brakingPointM().or(approach::shutOffM).orElse(approach.fromM());
    if (approach.brakingPointM().isPresent()) {
      parts.add(words.text("headline.from", words.speed(approach.brakingSpeedMps())));
    }
    steepest(from, target.atM()).ifPresent(parts::add);
    lineside.bends().stream()
        .filter(b -> b.toM() > from && b.fromM() < target.atM())
        .min(Comparator.comparingDouble(b -> b.radiusM()))
        .ifPresent(
            b ->
                parts.add(
                    words.text(
                        b.checkLeft() || b.checkRight()
                            ? "headline.curve-checked"
                            : "headline.curve",
                        b.text(),
                        words.text(b.left() ? "hand.left" : "hand.right"),
                        words.place(b.fromM()))));
    tests(approach)
        .forEach(t -> parts.add(words.text("headline.brake-test", words.place(t.atM()))));
    return String.join(" ", parts);
  }

  /** The steepest fall and the steepest rise of a stretch. */
  private Optional<String> steepest(double fromM, double toM) {
    DoubleSummaryStatistics permille =
        lineside.slopes().stream()
            .filter(s -> s.toM() > fromM && s.fromM() < toM)
            .mapToDouble(s -> s.permille())
            .summaryStatistics();
    if (permille.getCount() == 0) {
      return Optional.empty();
    }
    String level = words.text("gradient.level.short");
    String fall = permille.getMin() < 0 ? words.slope(permille.getMin()) : level;
    String rise = permille.getMax() > 0 ? words.slope(permille.getMax()) : level;
    String key =
        fall.equals(level)
            ? rise.equals(level) ? "headline.slope-level" : "headline.slope-rise"
            : rise.equals(level) ? "headline.slope-fall" : "headline.slope-both";
    return Optional.of(words.text(key, words.place(fromM), fall, rise));
  }

  /** The running brake tests between the target before this one and this one. */
  private List<BrakeTest> tests(Approach approach) {
    double from =
        plan.approaches().stream()
            .filter(a -> a.number() < approach.number())
            .mapToDouble(a -> a.target().atM())
            .max()
            .orElse(0);
    return plan.brakeTests().stream()
        .filter(t -> t.atM() > from && t.atM() <= approach.target().atM())
        .toList();
  }

  private String marks(Target target) {
    return target.stop().map(this::marks).orElse("");
  }

  private String marks(Target.Stop stop) {
    String marks =
        Stops.marks(assignment, stop.call().platform()).stream()
            .map(
                m ->
                    words.text(
                        "stop-mark.at", m.cars(), words.place(words.path().metresAt(m.location()))))
            .collect(Collectors.joining("; "));
    String out = marks.isEmpty() ? words.text("stop-mark.none") : marks;
    return stop.buffersM()
        .map(b -> words.text("stop-mark.buffers", out, words.room(b - stop.atM())))
        .orElse(out);
  }
}
