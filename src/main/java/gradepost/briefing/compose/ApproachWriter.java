package gradepost.briefing.compose;

import gradepost.briefing.ApproachPage;
import gradepost.drive.Action;
import gradepost.drive.Approach;
import gradepost.drive.Assignment;
import gradepost.drive.Command;
import gradepost.drive.Plan;
import gradepost.drive.Run;
import gradepost.drive.Stops;
import gradepost.drive.Target;
import gradepost.stock.BrakeSystem;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** One approach on one page. */
final class ApproachWriter {
  private final Assignment assignment;
  private final Words words;
  private final Lineside lineside;
  private final Orders orders;
  private final Sight sight;
  private final LadderWriter ladder;
  private final FindingWords findings;
  private final ApproachChartWriter charts;
  private final Run run;
  private final List<Action> actions;

  ApproachWriter(Plan plan, Lineside lineside) {
    this.assignment = plan.assignment();
    this.words = lineside.words();
    this.lineside = lineside;
    this.orders = new Orders(words, assignment.stock());
    this.sight = new Sight(lineside, assignment.policy().run().landmarkReach().metres());
    this.ladder = new LadderWriter(words, sight, assignment.policy().noticing().seconds());
    this.findings = new FindingWords(words);
    this.charts = new ApproachChartWriter(plan, lineside);
    this.run = new Run(plan.trace());
    this.actions = plan.actions();
  }

  ApproachPage page(String part, Approach approach) {
    String id = part + "-a" + approach.number();
    String title = title(approach.target());
    String headline = headline(approach);
    List<ApproachPage.ActionLine> lines = lines(approach);
    boolean asked = approach.brakingPointM().isPresent() && !answers(approach).isEmpty();
    Optional<BrakeSystem> service =
        asked ? Optional.of(assignment.stock().service()) : Optional.empty();
    return new ApproachPage(
        id,
        Integer.toString(approach.number()),
        title,
        targetLine(approach.target()),
        headline,
        marks(approach.target()),
        charts.chart(id + "-chart", approach, title, headline),
        lines,
        unbraked(approach),
        service
            .map(
                s ->
                    words.text(
                        "answer.question",
                        s.shortName(),
                        numberOfFirst(approach),
                        words.placeTo(
                            approach.brakingPointM().orElseThrow(),
                            approach.target().atM(),
                            "where.before-short")))
            .orElse(""),
        asked ? ladder.rail(approach) : "",
        asked ? ladder.first(approach) : "",
        asked ? answer(approach) : List.of(),
        asked && !answers(approach).get(0).holds(),
        ladder.table(id + "-ladder", approach),
        new CueWriter(words, sight)
            .goBy(approach, numberOfFirst(approach), onEarlierPage(approach)),
        new SpreadWriter(words).chart(id, approach).stream().toList(),
        approach.findings().stream().map(findings::of).toList());
  }

  private List<String> answer(Approach approach) {
    List<String> out = new ArrayList<>(ladder.rest(approach));
    String before = brakedBefore(approach).stream().collect(Collectors.joining(", "));
    if (!before.isEmpty()) {
      out.add(words.text("answer.not-for", before));
    }
    return out;
  }

  /**
   * Numbers of the first applications ahead of the braking point, as where a terminal platform
   * steps its speeds down: the ladder is not for these.
   */
  private List<String> brakedBefore(Approach approach) {
    double point = approach.brakingPointM().orElse(0.0);
    List<Step> steps = Step.of(approach.actions());
    List<String> out = new ArrayList<>();
    for (int i = 0; i < steps.size(); i++) {
      Action action = steps.get(i).first();
      if (action.atM() < point - 1
          && action.command() instanceof Command.Brake brake
          && brake.stage() == Command.Stage.FIRST) {
        out.add(Integer.toString(i + 1));
      }
    }
    return out;
  }

  /** The action by whose clock a brake is put on that is the first thing on its own page. */
  private Optional<String> onEarlierPage(Approach approach) {
    return approach
        .brakingPointM()
        .flatMap(b -> actions.stream().filter(a -> a.atM() < b - 0.01).reduce((a, next) -> next))
        .filter(a -> a.approach() != approach.number())
        .map(orders::done);
  }

  /** The speed that a run without a brake has at the lower one; whoever is faster has to brake. */
  private String unbraked(Approach approach) {
    Target target = approach.target();
    return target instanceof Target.Reduction && approach.brakingPointM().isEmpty()
        ? words.text(
            "approach.unbraked",
            words.place(target.atM()),
            words.speed(target.speedMps()),
            words.speed(run.speedAt(target.atM())))
        : "";
  }

  private static List<gradepost.drive.FailureAnswer> answers(Approach approach) {
    return approach.cases().isEmpty() ? List.of() : approach.cases().get(0).answers();
  }

  private String numberOfFirst(Approach approach) {
    List<Step> steps = Step.of(approach.actions());
    for (int i = 0; i < steps.size(); i++) {
      if (isFirst(steps.get(i).first(), approach)) {
        return Integer.toString(i + 1);
      }
    }
    return words.text("dash");
  }

  private static boolean isFirst(Action action, Approach approach) {
    return action.command() instanceof Command.Brake brake
        && brake.stage() != Command.Stage.CHECK
        && approach.brakingPointM().isPresent()
        && action.atM() >= approach.brakingPointM().get() - 1;
  }

  private List<ApproachPage.ActionLine> lines(Approach approach) {
    List<ApproachPage.ActionLine> out = new ArrayList<>();
    boolean firstSeen = false;
    double last = Double.NaN;
    for (Step step : Step.of(approach.actions())) {
      Action action = step.first();
      boolean key = !firstSeen && isFirst(action, approach);
      firstSeen |= key;
      out.add(
          new ApproachPage.ActionLine(
              Integer.toString(out.size() + 1),
              orders.todo(step),
              orders.when(step),
              orders.where(action, approach.target()),
              see(action, approach),
              words.number(action.speedMps()),
              orders.gauge(action.command()),
              Double.isNaN(last) ? words.text("dash") : words.seconds(action.timeS() - last),
              key));
      last = action.timeS();
    }
    return out;
  }

  private String see(Action action, Approach approach) {
    if (action.command() instanceof Command.Stand
        && approach.target() instanceof Target.Stop stop) {
      return stop.markText();
    }
    if (action.command() instanceof Command.Power && action.speedMps() < 0.5) {
      return words.text("see.standing");
    }
    return sight.near(action.atM());
  }

  String title(Target target) {
    if (target instanceof Target.Stop stop) {
      return words.text("approach.stop", stop.name(), stop.call().platform().number());
    }
    Target.Reduction r = (Target.Reduction) target;
    String key =
        switch (r.kind()) {
          case PERMANENT -> "approach.permanent";
          case TEMPORARY -> "approach.temporary";
          case JUNCTION -> "approach.junction";
          case TERMINAL -> "approach.terminal";
        };
    return words.text(key, r.name(), words.speed(r.speedMps()));
  }

  private String targetLine(Target target) {
    if (target instanceof Target.Stop stop) {
      return words.text("headline.stop", stop.markText(), words.place(stop.atM()));
    }
    Target.Reduction r = (Target.Reduction) target;
    String key =
        r.kind() == Target.Reduction.Kind.TEMPORARY ? "headline.temporary" : "headline.reduction";
    return words.text(
        key,
        words.speed(r.fromMps()),
        words.speed(r.speedMps()),
        words.place(r.atM()),
        r.reference());
  }

  private String headline(Approach approach) {
    Target target = approach.target();
    List<String> parts = new ArrayList<>();
    parts.add(targetLine(target));
    if (target instanceof Target.Reduction r) {
      parts.add(
          r.warningM()
              .map(w -> words.text("headline.warned", words.place(w)))
              .orElse(words.text("headline.not-warned")));
    }
    double from = approach.brakingPointM().or(approach::shutOffM).orElse(approach.fromM());
    if (approach.brakingPointM().isPresent()) {
      parts.add(words.text("headline.from", words.speed(approach.brakingSpeedMps())));
    }
    lineside.slopes().stream()
        .filter(s -> s.toM() > from && s.fromM() < target.atM())
        .min(Comparator.comparingDouble(s -> s.permille()))
        .ifPresent(s -> parts.add(words.text("headline.slope", words.gradient(s.permille()))));
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
    return String.join(" ", parts);
  }

  private String marks(Target target) {
    if (!(target instanceof Target.Stop stop)) {
      return "";
    }
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
