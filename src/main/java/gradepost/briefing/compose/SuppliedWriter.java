package gradepost.briefing.compose;

import gradepost.briefing.line.Lineside;
import gradepost.briefing.page.ApproachWriter;
import gradepost.briefing.word.Words;
import gradepost.drive.TrainAudit;
import gradepost.plan.Plan;
import gradepost.plan.SignalBraking;
import gradepost.route.Accepted;
import gradepost.route.PermanentRestriction;
import gradepost.route.Route;
import gradepost.task.Assignment;
import gradepost.task.Stops;
import gradepost.task.Target;
import gradepost.told.InstructionSheet;
import gradepost.told.PrintedApplication;
import gradepost.told.TrainSheet;
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
    String unseen =
        plan.told().sheets().stream()
            .filter(s -> s.applications().stream().anyMatch(SuppliedWriter::darkByNight))
            .map(this::unseen)
            .collect(Collectors.joining("; "));
    if (!unseen.isEmpty()) {
      out.add(words.text("missing.night", unseen));
    }
    TrainSheet train = TrainSheet.of(assignment.stock(), words.grid());
    named(out, "leaving", train.untested().stream());
    named(out, "failure-signs", train.signless().stream());
    if (assignment.policy().terminal().isEmpty()
        && plan.approaches().stream()
            .anyMatch(a -> a.target().stop().filter(Target.Stop::terminal).isPresent())) {
      out.add(words.text("missing.terminal"));
    }
    return out;
  }

  /** Whether nothing tells its place at night or in fog. */
  private static boolean darkByNight(PrintedApplication application) {
    return application.cues().seen().night().isEmpty();
  }

  /** An approach by its name; where it has some points with a cue by night, those without. */
  private String unseen(InstructionSheet sheet) {
    String name = ApproachWriter.title(words, plan.approaches().get(sheet.number() - 1).target());
    List<PrintedApplication> without =
        sheet.begun().stream().filter(SuppliedWriter::darkByNight).toList();
    return without.size() == sheet.applications().size()
        ? name
        : words.text(
            "missing.night.at",
            name,
            without.stream()
                .map(a -> Integer.toString(a.line()))
                .collect(Collectors.joining(", ")));
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
