package gradepost.briefing;

import java.util.List;

/** The train: what it is made of, what its handles do, and what they may not. */
public record TrainPage(
    String description,
    List<Fact> facts,
    TrainChart formation,
    StandsChart stands,
    List<Table> tables,
    List<PressureChart> technique,
    List<String> rules) {

  public TrainPage {
    facts = List.copyOf(facts);
    tables = List.copyOf(tables);
    technique = List.copyOf(technique);
    rules = List.copyOf(rules);
  }
}
