package gradepost.briefing;

import gradepost.briefing.chart.StripChart;
import java.util.List;

/**
 * One direction for one formation.
 *
 * @param id prefix of the ids of its headings
 * @param head for running heads: direction and formation
 * @param summary running time and the like
 * @param road the whole of it at a glance
 * @param strip rows of the strip, in the order of travel
 * @param evened the same rows with equal steps between what is met
 * @param seldom what the booked run does not meet, and a train of this direction may
 * @param hazards of the booked run itself
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
    List<StripChart> strip,
    List<StripChart> evened,
    List<Cue> story,
    List<ApproachPage> approaches,
    List<Table> tables,
    Table seldom,
    Table hazards,
    List<String> notSupplied,
    List<String> answeredFor) {

  public Part {
    summary = List.copyOf(summary);
    road = List.copyOf(road);
    strip = List.copyOf(strip);
    evened = List.copyOf(evened);
    story = List.copyOf(story);
    approaches = List.copyOf(approaches);
    tables = List.copyOf(tables);
    notSupplied = List.copyOf(notSupplied);
    answeredFor = List.copyOf(answeredFor);
  }
}
