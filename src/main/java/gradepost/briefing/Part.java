package gradepost.briefing;

import java.util.List;
import java.util.Optional;

/**
 * One direction for one formation.
 *
 * @param id prefix of the ids of its headings
 * @param head for running heads: direction and formation
 * @param summary running time and the like
 * @param road the whole of it at a glance
 * @param line drawn and told, sheet by sheet in the order of travel
 * @param approaches in the order of travel; those with a plate are pages
 * @param lower the lower speeds that are met without a brake and have no plate; empty where there
 *     is none
 * @param seldom what the booked run does not meet, and a train of this direction may
 * @param hazards of the booked run itself, which stand on its plates: for the sign-off
 * @param notSupplied what the data lacks, in words
 * @param answeredFor what was looked for and found not to be, and what somebody accepted
 */
public record Part(
    String id,
    String title,
    String head,
    List<Fact> summary,
    List<RoadSheet> road,
    TrainPage train,
    List<LineSheet> line,
    List<ApproachPage> approaches,
    Optional<Table> lower,
    List<Table> tables,
    Table seldom,
    Table hazards,
    List<String> notSupplied,
    List<String> answeredFor) {

  /** The approaches that are pages. */
  public List<ApproachPage> plates() {
    return approaches.stream().filter(a -> a.plate().isPresent()).toList();
  }

  /** Whether the lower speeds and other routes are a sheet of their own. */
  public boolean othersApart() {
    return road.stream().noneMatch(RoadSheet::others);
  }

  public Part {
    summary = List.copyOf(summary);
    road = List.copyOf(road);
    line = List.copyOf(line);
    approaches = List.copyOf(approaches);
    tables = List.copyOf(tables);
    notSupplied = List.copyOf(notSupplied);
    answeredFor = List.copyOf(answeredFor);
  }
}
