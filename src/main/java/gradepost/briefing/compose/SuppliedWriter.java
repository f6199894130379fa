package gradepost.briefing.compose;

import gradepost.drive.Approach;
import gradepost.drive.Assignment;
import gradepost.drive.Plan;
import gradepost.drive.SignalBraking;
import gradepost.drive.Stops;
import gradepost.drive.Target;
import gradepost.drive.TrainAudit;
import gradepost.route.Accepted;
import gradepost.route.PermanentRestriction;
import gradepost.route.Route;
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

  SuppliedWriter(Plan plan, Lineside lineside) {
    this.plan = plan;
    this.assignment = plan.assignment();
    this.lineside = lineside;
    this.words = lineside.words();
  }

  /** Fields that the route's data lacks. */
  List<String> notSupplied() {
    Route route = assignment.route();
    List<String> out = new ArrayList<>();
    missing(out, "signals", route.signals().isEmpty());
    missing(out, "curves", route.curves().isEmpty());
    missing(out, "landmarks", route.landmarks().isEmpty());
    missing(out, "structures", route.structures().isEmpty());
    missing(out, "rail-gaps", route.railGaps().isEmpty());
    missing(out, "low-adhesion", route.lowAdhesion().isEmpty());
    missing(out, "brake-tests", route.brakeTests().isEmpty());
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
            .filter(a -> a.applications().stream().anyMatch(p -> p.cues().night().isEmpty()))
            .map(Approach::number)
            .map(String::valueOf));
    if (assignment.policy().terminal().isEmpty()
        && plan.approaches().stream()
            .anyMatch(a -> a.target() instanceof Target.Stop s && s.terminal())) {
      out.add(words.text("missing.terminal"));
    }
    return out;
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
