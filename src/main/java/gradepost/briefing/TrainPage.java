package gradepost.briefing;

import gradepost.briefing.chart.PressureChart;
import gradepost.briefing.chart.StandsChart;
import gradepost.briefing.chart.TrainChart;
import java.util.List;

/**
 * The train: what it is made of, what its handles do, and what they may not.
 *
 * @param leaving the tests before leaving, and the signs that a brake has failed
 * @param leavingRules what is to be said of both
 */
public record TrainPage(
    String description,
    List<Fact> facts,
    TrainChart formation,
    StandsChart stands,
    List<Table> tables,
    List<PressureChart> technique,
    List<String> rules,
    List<Table> leaving,
    List<String> leavingRules) {

  public TrainPage {
    facts = List.copyOf(facts);
    tables = List.copyOf(tables);
    technique = List.copyOf(technique);
    rules = List.copyOf(rules);
    leaving = List.copyOf(leaving);
    leavingRules = List.copyOf(leavingRules);
  }
}
