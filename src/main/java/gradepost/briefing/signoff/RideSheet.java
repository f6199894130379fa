package gradepost.briefing.signoff;

import static gradepost.briefing.signoff.Course.row;

import gradepost.briefing.Fact;
import gradepost.briefing.signoff.Sheet.Fields;
import gradepost.briefing.signoff.Sheet.Grid;
import gradepost.briefing.signoff.Sheet.Items;
import gradepost.briefing.signoff.Sheet.Lines;
import gradepost.briefing.signoff.Sheet.Words;
import gradepost.plan.Approach;
import gradepost.policy.RideRules;
import gradepost.ride.RideJudge;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** The assessor's sheet: what was briefed, and room for what was driven. */
final class RideSheet {
  private final Course course;

  RideSheet(Course course) {
    this.course = course;
  }

  private String text(String key, Object... holes) {
    return course.text(key, holes);
  }

  Sheet sheet() {
    List<List<String>> rows = new ArrayList<>();
    for (Approach a : course.taught().plan().approaches()) {
      rows.add(
          row(
              Integer.toString(a.number()),
              course.taught().title(a),
              a.brakingPointM().map(course.taught()::place).orElse(text("dash")),
              a.brakingPointM().isPresent()
                  ? course.taught().number(a.brakingSpeedMps())
                  : text("dash"),
              RideJudge.firstPressure(a).map(course.taught()::pressure).orElse(text("dash")),
              a.target().isStop()
                  ? course.taught().place(a.target().atM())
                  : text("signoff.ride.no-stop")));
    }
    return new Sheet(
        "so-ride",
        text("signoff.ride.title"),
        List.of(
            new Grid(course.table("ride-head", List.of(row(""))), true),
            new Grid(course.table("ride", rows), true),
            new Words(text("signoff.ride.how")),
            new Items(rules(course)),
            new Fields(List.of(new Fact(text("signoff.ride.points"), ""))),
            new Lines(text("signoff.ride.remarks"), 3)));
  }

  /** The score rule in words, with the operator's figures. */
  static List<String> rules(Course course) {
    RideRules r = course.rules().ride();
    var taught = course.taught();
    String fails =
        r.fails().stream()
            .map(f -> course.text("fault." + f.name().toLowerCase(Locale.ROOT)))
            .collect(Collectors.joining(", "));
    return List.of(
        course.text("score.point", taught.room(r.early().metres()), taught.room(r.late().metres())),
        course.text("score.speed", taught.speed(r.speedWithin().metresPerSecond())),
        course.text("score.pressure", taught.pressure(r.pressureWithin().pascals())),
        course.text(
            "score.stop", taught.room(r.stopShort().metres()), taught.room(r.stopPast().metres())),
        course.text(
            "score.permissible",
            taught.speed(r.overspeed().metresPerSecond()),
            taught.seconds(r.overspeedFor().seconds())),
        course.text("score.handles"),
        course.text("score.pass", Course.percent(r.passScore()), Course.percent(r.leastObserved())),
        fails.isEmpty() ? course.text("score.no-fails") : course.text("score.fails", fails));
  }

  private static void line(StringBuilder out, String name, String value) {
    out.append(name).append(",\"").append(value.replace("\"", "\"\"")).append("\",,,,,,,\n");
  }

  /** The same approaches as lines of a file to type observations into. */
  static String form(Course course) {
    StringBuilder out = new StringBuilder();
    var assignment = course.taught().plan().assignment();
    line(out, "issue", course.issue().number());
    line(out, "direction", assignment.route().nameOf(assignment.direction()));
    line(out, "formation", assignment.formation().name());
    line(out, "driver", "");
    line(out, "assessor", "");
    line(out, "date", "");
    var taught = course.taught();
    String speed = taught.units().speedUnit();
    out.append(
        "approach,name,braked at,speed (%s),first pressure (%s),stop error (%s),over (%s),"
                .formatted(speed, taught.units().pressureUnit(), taught.units().lengthUnit(), speed)
            + "forbidden movements,note\n");
    for (Approach a : course.taught().plan().approaches()) {
      out.append(a.number())
          .append(",\"")
          .append(course.taught().title(a).replace("\"", "\"\""))
          .append("\",,,,,,,\n");
    }
    return out.toString();
  }
}
