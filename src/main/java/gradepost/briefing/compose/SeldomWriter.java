package gradepost.briefing.compose;

import gradepost.briefing.Table;
import gradepost.drive.Approach;
import gradepost.drive.Assignment;
import gradepost.drive.Finding;
import gradepost.drive.Plan;
import gradepost.drive.Stops;
import gradepost.drive.Target;
import gradepost.drive.TrainAudit;
import gradepost.route.Accepted;
import gradepost.route.Junction;
import gradepost.route.JunctionRoute;
import gradepost.route.Route;
import gradepost.route.Signal;
import gradepost.route.SignalRoute;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What a driver seldom meets, and what the data does not hold. */
final class SeldomWriter {
  private final Plan plan;
  private final Assignment assignment;
  private final Lineside lineside;
  private final Words words;

  SeldomWriter(Plan plan, Lineside lineside) {
    this.plan = plan;
    this.assignment = plan.assignment();
    this.lineside = lineside;
    this.words = lineside.words();
  }

  Table table(String part) {
    Tables table = new Tables(words, part, "seldom");
    for (Lineside.Over<Junction> o :
        assignment.route().junctions().stream()
            .filter(j -> lineside.applies(j.applies()))
            .map(j -> lineside.over(j, j.extent()))
            .toList()) {
      for (JunctionRoute way : o.what().routes()) {
        if (way.diverging()) {
          table.row(
              words.place(o.fromM()),
              words.text(
                  "seldom.diverging",
                  o.what().name(),
                  way.name(),
                  words.speed(way.speed().metresPerSecond())),
              signalFor(way, o.fromM()));
        }
      }
    }
    for (Approach a : plan.approaches()) {
      for (Finding finding : a.findings()) {
        if (finding instanceof Finding.BigDrop
            || finding instanceof Finding.BoardTooLate
            || finding instanceof Finding.NoBoard) {
          table.row(
              words.place(a.target().atM()),
              new FindingWords(words).of(finding),
              words.text("seldom.approach", a.number()));
        }
      }
      if (a.target() instanceof Target.Stop stop && stop.terminal()) {
        table.row(
            words.place(stop.atM()),
            words.text(
                "seldom.terminal",
                stop.name(),
                stop.call().platform().number(),
                words.room(stop.buffersM().orElseThrow() - stop.atM())),
            words.text("seldom.approach", a.number()));
      }
    }
    return table.build();
  }

  /** The last signal before the junction that shows the way. */
  private String signalFor(JunctionRoute way, double atM) {
    String found = "";
    for (Lineside.Over<Signal> o : lineside.signals()) {
      if (o.fromM() <= atM) {
        for (SignalRoute r : o.what().routes()) {
          if (r.leadsTo().contains(way.name()) || way.name().contains(r.leadsTo())) {
            found =
                words.text("seldom.signal", o.what().id(), words.place(o.fromM()), r.indication());
          }
        }
      }
    }
    return found;
  }

  /**
   * Fields that the route's data lacks, what somebody looked for and did not find, and the findings
   * of the audit for which somebody answers.
   */
  List<String> notSupplied(List<Accepted> acceptedByPack) {
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
    String noMarks =
        assignment.calls().stream()
            .filter(c -> Stops.mark(assignment, c.platform()).isEmpty())
            .map(c -> c.station().name())
            .distinct()
            .collect(Collectors.joining(", "));
    if (!noMarks.isEmpty()) {
      out.add(words.text("missing.stop-marks", assignment.formation().cars(), noMarks));
    }
    String noAws =
        lineside.signals().stream()
            .filter(s -> s.what().aws().isEmpty())
            .map(s -> s.what().id())
            .collect(Collectors.joining(", "));
    if (!noAws.isEmpty()) {
      out.add(words.text("missing.aws", noAws));
    }
    if (assignment.policy().terminal().isEmpty()
        && plan.approaches().stream()
            .anyMatch(a -> a.target() instanceof Target.Stop s && s.terminal())) {
      out.add(words.text("missing.terminal"));
    }
    route
        .observations()
        .forEach(o -> out.add(words.text("missing.observed", o.subject(), o.statement())));
    Stream.concat(
            route.accepted().stream(),
            acceptedByPack.stream()
                .filter(a -> TrainAudit.concerns(plan.assignment(), a.finding())))
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
}
