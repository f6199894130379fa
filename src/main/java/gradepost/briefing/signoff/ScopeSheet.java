package gradepost.briefing.signoff;

import gradepost.briefing.Fact;
import gradepost.briefing.compose.BriefingFacts;
import gradepost.briefing.signoff.Sheet.Fields;
import gradepost.briefing.signoff.Sheet.Heading;
import gradepost.briefing.signoff.Sheet.Items;
import gradepost.briefing.signoff.Sheet.Words;
import gradepost.route.Junction;
import gradepost.route.JunctionRoute;
import gradepost.stock.Formation;
import gradepost.task.Assignment;
import gradepost.task.Call;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What a signature covers, and what it does not: lines, platforms, ways at junctions, trains. */
final class ScopeSheet {
  private final Course course;
  private final BriefingFacts taught;
  private final Assignment assignment;

  ScopeSheet(Course course) {
    this.course = course;
    this.taught = course.taught();
    this.assignment = taught.assignment();
  }

  private String text(String key, Object... holes) {
    return course.text(key, holes);
  }

  Sheet sheet() {
    return new Sheet(
        "so-scope",
        text("signoff.scope.title"),
        List.of(
            new Heading(text("signoff.scope.covers")),
            new Items(covered()),
            new Heading(text("signoff.scope.not")),
            new Items(notCovered()),
            new Heading(text("signoff.scope.conditions")),
            new Words(text("signoff.scope.conditions.says")),
            new Fields(
                List.of(
                    new Fact(text("signoff.scope.day"), ""),
                    new Fact(text("signoff.scope.weather"), ""),
                    new Fact(text("signoff.scope.rail"), "")))));
  }

  private List<String> covered() {
    List<String> out = new ArrayList<>();
    out.add(text("signoff.scope.lines", joined(List.copyOf(assignment.lines()))));
    out.add(
        text(
            "signoff.scope.platforms",
            joined(assignment.calls().stream().map(this::platform).toList())));
    List<String> ways =
        junctions().stream()
            .filter(j -> j.routes().size() > 1)
            .map(j -> text("signoff.scope.way", j.name(), taken(j).name()))
            .toList();
    if (!ways.isEmpty()) {
      out.add(text("signoff.scope.ways", joined(ways)));
    }
    out.add(text("signoff.scope.train", assignment.stock().name(), assignment.formation().name()));
    return out;
  }

  private List<String> notCovered() {
    List<String> out = new ArrayList<>();
    List<String> lines =
        assignment.route().lines().stream()
            .map(l -> l.name())
            .filter(l -> !assignment.lines().contains(l))
            .toList();
    if (!lines.isEmpty()) {
      out.add(text("signoff.scope.lines", joined(lines)));
    }
    List<String> platforms =
        assignment.route().stations().stream()
            .flatMap(
                s ->
                    s.platforms().stream()
                        .filter(
                            p ->
                                assignment.calls().stream()
                                    .noneMatch(c -> is(c, s.name(), p.number())))
                        .map(p -> text("platform.called", s.name(), p.number())))
            .toList();
    if (!platforms.isEmpty()) {
      out.add(text("signoff.scope.platforms", joined(platforms)));
    }
    List<String> ways =
        junctions().stream()
            .flatMap(
                j ->
                    j.routes().stream()
                        .filter(r -> !r.equals(taken(j)))
                        .map(r -> text("signoff.scope.way", j.name(), r.name())))
            .toList();
    if (!ways.isEmpty()) {
      out.add(text("signoff.scope.ways", joined(ways)));
    }
    List<String> formations =
        assignment.stock().formations().stream()
            .filter(f -> !f.equals(assignment.formation()))
            .map(Formation::name)
            .toList();
    if (!formations.isEmpty()) {
      out.add(text("signoff.scope.formations", joined(formations)));
    }
    out.add(text("signoff.scope.other-direction"));
    return out;
  }

  private static boolean is(Call call, String station, String platform) {
    return call.station().name().equals(station) && call.platform().number().equals(platform);
  }

  private String platform(Call call) {
    return text("platform.called", call.station().name(), call.platform().number());
  }

  private List<Junction> junctions() {
    return assignment.route().junctions().stream()
        .filter(j -> taught.applies(j.applies()))
        .toList();
  }

  /** The first way of a junction is taken where the pack names none. */
  private JunctionRoute taken(Junction junction) {
    return Optional.ofNullable(assignment.junctionRoutes().get(junction.name()))
        .orElse(junction.routes().get(0));
  }

  private static String joined(List<String> names) {
    return String.join("; ", names);
  }
}
