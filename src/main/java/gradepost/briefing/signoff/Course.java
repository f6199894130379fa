package gradepost.briefing.signoff;

import gradepost.briefing.Briefing;
import gradepost.briefing.CoverIssue;
import gradepost.briefing.Fact;
import gradepost.briefing.Part;
import gradepost.briefing.Table;
import gradepost.briefing.compose.BriefingFacts;
import gradepost.policy.SignOffRules;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * What is signed for: one direction with one train, as one briefing teaches it.
 *
 * @param briefing of one part, the first one
 */
public record Course(BriefingFacts taught, Briefing briefing, SignOffRules rules) {

  Part part() {
    return briefing.parts().get(0);
  }

  CoverIssue issue() {
    return briefing.issue();
  }

  String text(String key, Object... holes) {
    return taught.text(key, holes);
  }

  String direction() {
    return taught.assignment().route().nameOf(taught.assignment().direction());
  }

  /** Route, direction, train and issue: on top of every document. */
  List<Fact> facts() {
    List<Fact> out = new ArrayList<>();
    var calls = taught.assignment().calls();
    out.add(new Fact(text("signoff.route"), taught.assignment().route().name()));
    out.add(
        new Fact(
            text("signoff.direction"),
            text(
                "signoff.direction.value",
                direction(),
                calls.get(0).station().name(),
                calls.get(calls.size() - 1).station().name())));
    out.add(
        new Fact(
            text("signoff.traction"),
            text(
                "signoff.traction.value",
                taught.assignment().stock().name(),
                taught.assignment().formation().name())));
    out.add(
        new Fact(
            text("signoff.issue"),
            text(
                "signoff.issue.value",
                issue().number(),
                taught.moment(issue().details().validFrom()),
                taught.moment(issue().details().validTo()))));
    out.add(new Fact(text("signoff.fingerprint"), issue().fingerprint().substring(0, 16)));
    return out;
  }

  /** A table whose headings are the texts {@code signoff.<name>.columns}, set off by bars. */
  Table table(String name, List<List<String>> rows) {
    List<Table.Column> columns = new ArrayList<>();
    for (String heading : text("signoff." + name + ".columns").split("\\|", -1)) {
      String plain = heading.strip();
      String kind = plain.startsWith("@") ? "place" : plain.startsWith("#") ? "number" : "text";
      columns.add(new Table.Column(kind.equals("text") ? plain : plain.substring(1), kind));
    }
    List<Table.Row> out = new ArrayList<>();
    for (List<String> cells : rows) {
      List<String> all = new ArrayList<>(cells);
      while (all.size() < columns.size()) {
        all.add("");
      }
      out.add(new Table.Row(all, false, false));
    }
    String emptyKey = "signoff." + name + ".none";
    return new Table(
        "so-" + name, name, "", "", columns, out, taught.hasText(emptyKey) ? text(emptyKey) : "");
  }

  static List<String> row(String... cells) {
    return Arrays.asList(cells);
  }

  static String percent(double share) {
    return Math.round(share * 100) + " %";
  }

  /** Papers of this course. */
  Papers papers(String kindKey, List<Fact> more, List<Sheet> sheets) {
    String kind = text(kindKey);
    List<Fact> facts = new ArrayList<>(facts());
    facts.addAll(more);
    return new Papers(
        briefing.language(),
        text("signoff.title", kind, briefing.title()),
        text("signoff.subject", kind, part().title()),
        briefing.issueLine(),
        issue(),
        kind,
        part().title(),
        part().head(),
        facts,
        sheets);
  }
}
