package gradepost.briefing.signoff;

import static gradepost.briefing.signoff.Course.row;

import gradepost.briefing.Table;
import gradepost.briefing.compose.BriefingFacts;
import gradepost.briefing.signoff.Sheet.Grid;
import gradepost.briefing.signoff.Sheet.Heading;
import gradepost.briefing.signoff.Sheet.Items;
import gradepost.briefing.signoff.Sheet.Lines;
import gradepost.briefing.signoff.Sheet.Words;
import gradepost.policy.Currency;
import gradepost.policy.DegradedRules;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What a learner keeps: trips, cues met, risks and cases talked through. */
final class LearnerSheets {
  private static final int TRIPS = 28;
  private final Course course;
  private final Optional<DegradedRules> degraded;

  LearnerSheets(Course course, Optional<DegradedRules> degraded) {
    this.course = course;
    this.degraded = degraded;
  }

  private String text(String key, Object... holes) {
    return course.text(key, holes);
  }

  Sheet log() {
    List<List<String>> rows = new ArrayList<>();
    for (int i = 1; i <= TRIPS; i++) {
      rows.add(row(Integer.toString(i), "", "", course.direction()));
    }
    return new Sheet(
        "so-log",
        text("signoff.log.title"),
        List.of(
            new Words(text("signoff.log.says")),
            new Items(leastTrips()),
            new Grid(course.table("log", rows), true)));
  }

  private List<String> leastTrips() {
    Currency.Trips least = course.rules().currency().leastTrips();
    List<String> out = new ArrayList<>();
    trips(out, "signoff.log.day", least.day());
    trips(out, "signoff.log.night", least.night());
    trips(out, "signoff.log.poor-rail", least.poorRail());
    return out.isEmpty() ? List.of(text("signoff.log.no-least")) : out;
  }

  private void trips(List<String> out, String key, int least) {
    if (least > 0) {
      out.add(text(key, least));
    }
  }

  /** Every cue by place, with a box for each trip on which it was met and named. */
  Sheet coverage() {
    List<List<String>> rows = new ArrayList<>();
    String last = "";
    for (BriefingFacts.At<String> cue : course.taught().cues()) {
      String place = course.taught().place(cue.atM());
      rows.add(row(place.equals(last) ? "" : place, cue.what()));
      last = place;
    }
    return new Sheet(
        "so-coverage",
        text("signoff.coverage.title"),
        List.of(
            new Words(text("signoff.coverage.says")),
            new Grid(course.table("coverage", rows), false),
            new Lines(text("signoff.coverage.gaps"), 3)));
  }

  /** The depot's own items, then what the plan itself found to be hard. */
  Sheet highRisk() {
    List<List<String>> rows = new ArrayList<>();
    for (String item : course.issue().highRisk()) {
      rows.add(row(Integer.toString(rows.size() + 1), item));
    }
    List<List<String>> found = new ArrayList<>();
    for (Table table : List.of(course.part().seldom(), course.part().hazards())) {
      for (Table.Row each : table.rows()) {
        found.add(row(each.cells().get(0), each.cells().get(1)));
      }
    }
    return new Sheet(
        "so-risk",
        text("signoff.risk.title"),
        List.of(
            new Words(text("signoff.risk.says")),
            new Grid(course.table("risk", rows), true),
            new Heading(text("signoff.seldom.title")),
            new Grid(course.table("seldom", found), true)));
  }

  Sheet degraded() {
    List<List<String>> rows = new ArrayList<>();
    for (DegradedCases.Case each : new DegradedCases(course.taught(), degraded).all()) {
      rows.add(row(Integer.toString(rows.size() + 1), each.asks()));
    }
    return new Sheet(
        "so-degraded",
        text("signoff.degraded.title"),
        List.of(
            new Words(text("signoff.degraded.says")),
            new Grid(course.table("degraded", rows), true)));
  }

  /** For the assessor, by the numbers of the cases: those to which the data have an answer. */
  Sheet degradedKey() {
    List<List<String>> rows = new ArrayList<>();
    int number = 0;
    for (DegradedCases.Case each : new DegradedCases(course.taught(), degraded).all()) {
      number++;
      if (!each.key().isEmpty()) {
        rows.add(row(Integer.toString(number), each.asks(), String.join("\n", each.key())));
      }
    }
    return new Sheet(
        "so-degraded-key",
        text("signoff.degraded-key.title"),
        List.of(
            new Words(text("signoff.degraded-key.says")),
            new Grid(course.table("degraded-key", rows), false)));
  }
}
