package gradepost.briefing;

import gradepost.briefing.chart.CodeChart;
import java.util.List;

/**
 * The first page.
 *
 * @param directions what the pack covers, a line each
 * @param contents the page list
 * @param code what the machine-readable code on the cover says
 */
public record Cover(
    String heading,
    List<String> directions,
    List<Fact> train,
    List<Fact> issue,
    List<String> sources,
    List<String> highRisk,
    List<String> cautions,
    List<Entry> contents,
    CodeChart code) {

  /** A line of the page list; {@code anchor} is the id of the heading that it leads to. */
  public record Entry(String anchor, String title, String issue, int depth) {}

  public Cover {
    directions = List.copyOf(directions);
    train = List.copyOf(train);
    issue = List.copyOf(issue);
    sources = List.copyOf(sources);
    highRisk = List.copyOf(highRisk);
    cautions = List.copyOf(cautions);
    contents = List.copyOf(contents);
  }
}
