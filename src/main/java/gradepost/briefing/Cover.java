package gradepost.briefing;

import gradepost.briefing.chart.CodeChart;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The first page.
 *
 * @param directions what the pack covers, a line each
 * @param edition what is degraded, and what permits the run; empty for an ordinary one
 * @param issue what is said of the issue beside its number and validity
 * @param checked who prepared it and who checked it
 * @param restrictions temporary ones that stand for the run, and when they end
 * @param highRisk what is briefed first
 * @param contents the sheets of the paper
 * @param changes how many of the changes stand here; the rest stand in the reference
 * @param code what the machine-readable code on the cover says
 */
public record Cover(
    String heading,
    List<String> directions,
    List<Fact> train,
    List<Fact> edition,
    List<Fact> issue,
    List<Fact> checked,
    List<String> sources,
    List<Fact> restrictions,
    List<Risk> highRisk,
    List<String> cautions,
    List<Entry> contents,
    int changes,
    CodeChart code) {

  /** A line of the page list; {@code anchor} is the id of the heading that it leads to. */
  public record Entry(String anchor, String title, String issue, int depth) {
    /**
     * The same with the issue in which its sheet was last different.
     *
     * @param sheets issues by the anchors of the sheets
     */
    public Entry since(Map<String, Integer> sheets) {
      return Optional.ofNullable(sheets.get(anchor))
          .map(n -> new Entry(anchor, title, String.valueOf(n), depth))
          .orElse(this);
    }
  }

  /**
   * An item that is briefed first.
   *
   * @param item in the depot's own words
   * @param place of what it names; empty text where nothing on the run has such a name
   * @param anchor of the sheet about it; empty text where there is none
   */
  public record Risk(String item, String place, String anchor) {}

  public Cover {
    directions = List.copyOf(directions);
    train = List.copyOf(train);
    edition = List.copyOf(edition);
    issue = List.copyOf(issue);
    checked = List.copyOf(checked);
    sources = List.copyOf(sources);
    restrictions = List.copyOf(restrictions);
    highRisk = List.copyOf(highRisk);
    cautions = List.copyOf(cautions);
    contents = List.copyOf(contents);
  }

  /** The same with so many of the changes on it. */
  public Cover telling(int changesHere) {
    return new Cover(
        heading,
        directions,
        train,
        edition,
        issue,
        checked,
        sources,
        restrictions,
        highRisk,
        cautions,
        contents,
        changesHere,
        code);
  }

  /**
   * The same with the issue in which each sheet was last different.
   *
   * @param sheets issues by the anchors of the sheets
   */
  public Cover since(Map<String, Integer> sheets) {
    return new Cover(
        heading,
        directions,
        train,
        edition,
        issue,
        checked,
        sources,
        restrictions,
        highRisk,
        cautions,
        contents.stream().map(e -> e.since(sheets)).toList(),
        changes,
        code);
  }
}
