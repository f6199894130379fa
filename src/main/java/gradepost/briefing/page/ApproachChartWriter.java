package gradepost.briefing.page;

import gradepost.briefing.chart.ApproachChart;
import gradepost.briefing.chart.Curve;
import gradepost.briefing.chart.TrackStrip;
import gradepost.briefing.line.HeldBands;
import gradepost.briefing.line.Lineside;
import gradepost.briefing.line.SpeedCurves;
import gradepost.briefing.line.TrackStripWriter;
import gradepost.briefing.word.Words;
import gradepost.plan.Action;
import gradepost.plan.Application;
import gradepost.plan.Approach;
import gradepost.plan.Plan;
import gradepost.plan.Run;
import gradepost.plan.Step;
import gradepost.plan.Telling;
import gradepost.plan.fallback.Rung;
import gradepost.stock.BrakeSystem;
import gradepost.task.Target;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** The numbers of an approach chart. */
final class ApproachChartWriter {
  private static final double LEAST_SPAN_M = 300;

  /** How much of the track the two scales of distance show. */
  private static final double SHORT_M = 800;

  private static final double LONG_M = 2400;

  /** What is drawn of the way to a target that needs no brake: at least, and at most. */
  private static final double NEAR_M = 200;

  private static final double FAR_M = 2500;

  private final Plan plan;
  private final Words words;
  private final TrackStripWriter strips;
  private final Run run;
  private final SpeedCurves speeds;

  ApproachChartWriter(Plan plan, Lineside lineside, Run run) {
    this.plan = plan;
    this.run = run;
    this.words = lineside.words();
    this.speeds = new SpeedCurves(plan, words);
    this.strips = new TrackStripWriter(plan.assignment(), lineside);
  }

  /** Where the first thing is done for a target that needs no brake, not too far before it. */
  private static double firstM(Approach approach) {
    double target = approach.target().atM();
    double first =
        approach.actions().stream().mapToDouble(Action::atM).min().orElse(target - NEAR_M);
    double faster = approach.faster().map(Application::brakingPointM).orElse(target);
    return Math.max(Math.min(Math.min(first, faster), target - NEAR_M), target - FAR_M);
  }

  /** A stretch of the track. */
  private record Window(double fromM, double toM) {}

  /** The track that the chart shows, at one of two scales. */
  private Window window(Approach approach) {
    double target = approach.target().atM();
    double braking = approach.brakingPointM().orElse(approach.shutOffM().orElse(firstM(approach)));
    double span = Math.max(LEAST_SPAN_M, target - braking);
    double from = braking - 0.3 * span;
    double shutOff = approach.shutOffM().orElse(from);
    if (shutOff > target - 1.9 * span) {
      from = Math.min(from, shutOff - 0.06 * span);
    }
    from = Math.max(Math.max(from, 0), Math.min(approach.fromM(), target - LEAST_SPAN_M));
    double end = target + 0.14 * (target - from);
    Optional<Target.Stop> stop = approach.target().stop();
    if (stop.isPresent()) {
      end = Math.max(end, Math.min(stop.get().platformEndM(), end + 0.1 * span) + 0.02 * span);
    }
    double length = words.path().lengthM();
    double to = Math.min(end, length);
    double shown = to - from <= SHORT_M ? SHORT_M : Math.max(LONG_M, to - braking);
    from = Math.max(0, to - shown);
    return new Window(from, Math.min(length, Math.max(to, from + shown)));
  }

  /**
   * @param heightMm of the drawing
   */
  ApproachChart chart(
      String id, Approach approach, String title, String headline, double heightMm) {
    double target = approach.target().atM();
    Window window = window(approach);
    double from = window.fromM();
    double to = window.toM();
    SpeedCurves.Axis axis = speeds.axis(0, words.path().lengthM());
    List<Curve> curves = new ArrayList<>();
    curves.add(speeds.permissible(from, to));
    curves.add(speeds.run(Curve.Kind.PLANNED, words.text("curve.planned"), plan.trace(), from, to));
    List<ApproachChart.Pin> pins = new ArrayList<>();
    List<Step> steps = Step.of(approach.actions());
    for (int i = 0; i < steps.size(); i++) {
      Action a = steps.get(i).first();
      pins.add(
          new ApproachChart.Pin(Integer.toString(i + 1), a.atM(), words.speedValue(a.speedMps())));
    }
    return new ApproachChart(
        id,
        words.text("chart.approach", title),
        says(approach, headline),
        words.units().speedUnit(),
        axis.top(),
        axis.step(),
        curves,
        pins,
        HeldBands.of(plan, words, from, to),
        target,
        heightMm,
        last(approach),
        strips.strip(
            from,
            to,
            new TrackStrip.Sign(target, called(approach.target()), TrackStrip.Kind.TARGET)));
  }

  /** From the earlier to the later of the last places of the service brake and the next one. */
  private Optional<ApproachChart.Last> last(Approach approach) {
    List<Rung> rungs =
        approach.first().or(approach::faster).stream()
            .flatMap(a -> a.cases().get(0).ladder().stream())
            .filter(r -> r.brake().role() != BrakeSystem.Role.EMERGENCY)
            .filter(r -> r.latest().point().isPresent())
            .sorted(Comparator.comparingDouble(ApproachChartWriter::exactM))
            .toList();
    if (rungs.size() < 2) {
      return Optional.empty();
    }
    Rung early = rungs.get(0);
    Rung late = rungs.get(rungs.size() - 1);
    return Optional.of(
        new ApproachChart.Last(
            lastM(early),
            lastM(late),
            words.text("chart.last", early.brake().shortName(), late.brake().shortName())));
  }

  private static double exactM(Rung rung) {
    return rung.latest().point().orElseThrow().exactM();
  }

  private static double lastM(Rung rung) {
    return rung.latest().point().orElseThrow().printedM();
  }

  private String called(Target.OfApproach target) {
    return target.match(
        Target.Stop::markText,
        lower -> words.text("target.reduction", words.speed(lower.speedMps())));
  }

  /** What a reader who does not see the chart is told of its curves. */
  private String says(Approach approach, String headline) {
    Target target = approach.target();
    Optional<Application> first = approach.first();
    if (first.isEmpty()) {
      return words.text(
          PassingWords.key(
              "chart.approach.says-no-brake", Telling.brakeThere(approach, plan.actions())),
          headline,
          words.speedAtMost(run.speedAt(target.atM())));
    }
    double braking = first.get().brakingPointM();
    String planned =
        words.text(
            target.isStop() ? "chart.approach.says-stop" : "chart.approach.says",
            headline,
            words.place(braking),
            words.speed(approach.brakingSpeedMps()),
            words.speed(target.speedMps()),
            words.placeTo(downM(target, braking), target.atM(), "where.before-reduction"),
            words.speedAtMost(run.speedAt(target.atM())));
    String latest =
        first.get().cases().get(0).ladder().stream()
            .flatMap(r -> last(r, target).stream())
            .collect(Collectors.joining(words.text("change.list")));
    return latest.isEmpty() ? planned : words.text("chart.approach.says-latest", planned, latest);
  }

  private Optional<String> last(Rung rung, Target target) {
    return rung.latest()
        .point()
        .map(
            p ->
                words.text(
                    "chart.approach.says-brake",
                    rung.brake().shortName(),
                    words.placeTo(p.printedM(), target)));
  }

  /** Where the planned run is down to the lower speed; the place of the target if not before it. */
  private double downM(Target target, double fromM) {
    return plan.trace().points().stream()
        .filter(p -> p.atM() >= fromM && p.speedMps() <= target.speedMps())
        .mapToDouble(p -> Math.min(p.atM(), target.atM()))
        .findFirst()
        .orElse(target.atM());
  }
}
