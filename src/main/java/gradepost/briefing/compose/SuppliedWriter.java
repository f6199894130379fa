package gradepost.briefing.compose;

import gradepost.briefing.line.CueSighting;
import gradepost.briefing.line.Lineside;
import gradepost.briefing.page.CueWriter;
import gradepost.briefing.word.ApplicationLine;
import gradepost.briefing.word.Words;
import gradepost.drive.TrainAudit;
import gradepost.plan.Approach;
import gradepost.plan.Plan;
import gradepost.plan.SignalBraking;
import gradepost.route.Accepted;
import gradepost.route.PermanentRestriction;
import gradepost.route.Route;
import gradepost.task.Assignment;
import gradepost.task.Stops;
import gradepost.task.Target;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What the data does not hold, what was looked for, and what somebody answers for. */
final class SuppliedWriter {
  private final Plan plan;
  private final Assignment assignment;
  private final Lineside lineside;
  private final Words words;
  private final CueWriter cues;

  SuppliedWriter(Plan plan, Lineside lineside) {
    this.plan = plan;
    this.assignment = plan.assignment();
    this.lineside = lineside;
    this.words = lineside.words();
    this.cues =
        new CueWriter(
            words, new CueSighting(lineside, assignment.policy().run().landmarkReach().metres()));
  }

  /** Fields that the route's data lacks. */
  List<String> notSupplied() {
    Route route = assignment.route();
    List<String> out = new ArrayList<>();
    missing(out, "signals", route.signals().isEmpty() && lineside.observed("signal").isEmpty());
    missing(out, "curves", route.curves().isEmpty() && lineside.observed("curve").isEmpty());
    missing(
        out, "landmarks", route.landmarks().isEmpty() && lineside.observed("landmark").isEmpty());
    missing(
        out,
        "structures",
        route.structures().isEmpty() && lineside.observed("structure").isEmpty());
    missing(out, "rail-gaps", route.railGaps().isEmpty() && lineside.observed("gap").isEmpty());
    missing(
        out,
        "low-adhesion",
        route.lowAdhesion().isEmpty() && lineside.observed("adhesion").isEmpty());
    missing(
        out,
        "brake-tests",
        route.brakeTests().isEmpty() && lineside.observed("brake test").isEmpty());
    missing(out, "posts", route.posts().isBlank());
    named(
        out,
        "boards",
        route.restrictions().stream()
            .filter(r -> lineside.applies(r.applies()))
            .filter(r -> lineside.boards(r.boards()).isEmpty())
            .map(PermanentRestriction::name));
    String noMarks =
        names(
            assignment.calls().stream()
                .filter(c -> Stops.mark(assignment, c.platform()).isEmpty())
                .map(c -> c.station().name()));
    if (!noMarks.isEmpty()) {
      out.add(words.text("missing.stop-marks", assignment.formation().cars(), noMarks));
    }
    named(
        out,
        "aws",
        lineside.signals().stream().filter(s -> s.what().aws().isEmpty()).map(s -> s.what().id()));
    named(
        out,
        "cautions",
        plan.signals().stream()
            .filter(s -> s.caution().isEmpty())
            .map(SignalBraking::signal)
            .map(s -> s.id()));
    named(
        out,
        "night",
        plan.approaches().stream()
            .filter(a -> a.applications().stream().anyMatch(p -> !cues.byNight(p)))
            .map(this::unseen));
    if (assignment.policy().terminal().isEmpty()
        && plan.approaches().stream()
            .anyMatch(a -> a.target().stop().filter(Target.Stop::terminal).isPresent())) {
      out.add(words.text("missing.terminal"));
    }
    return out;
  }

  /** An approach by its number; where it has some points with a cue by night, those without. */
  private String unseen(Approach approach) {
    String number = Integer.toString(approach.number());
    List<ApplicationLine> without =
        ApplicationLine.of(approach).stream().filter(b -> !cues.byNight(b.application())).toList();
    return without.size() == approach.applications().size()
        ? number
        : words.text(
            "missing.night.at",
            number,
            without.stream().map(ApplicationLine::number).collect(Collectors.joining(", ")));
  }

  /** What somebody looked for, and the findings of the audit for which somebody answers. */
  List<String> answeredFor(List<Accepted> acceptedByPack) {
    Route route = assignment.route();
    List<String> out = new ArrayList<>();
    route
        .observations()
        .forEach(o -> out.add(words.text("missing.observed", o.subject(), o.statement())));
    Stream.concat(
            route.accepted().stream(),
            acceptedByPack.stream().filter(a -> TrainAudit.concerns(assignment, a.finding())))
        .forEach(
            a ->
                out.add(
                    words.text(
                        "missing.accepted", a.finding(), a.by(), a.on().toString(), a.reason())));
    return out;
  }

  private void missing(List<String> out, String subject, boolean missing) {
    if (missing) {
      out.add(words.text("missing." + subject));
    }
  }

  private void named(List<String> out, String subject, Stream<String> names) {
    String all = names(names);
    if (!all.isEmpty()) {
      out.add(words.text("missing." + subject, all));
    }
  }

  private static String names(Stream<String> names) {
    return names.distinct().collect(Collectors.joining(", "));
  }
}
