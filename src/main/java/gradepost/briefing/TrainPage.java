package gradepost.briefing;

import java.util.List;

/** The train: what it is made of, what its handles do, and what they may not. */
public record TrainPage(
    String description,
    List<Fact> facts,
    TrainChart formation,
    Table notches,
    Table brakes,
    Table pipe,
    List<PressureChart> technique,
    List<String> rules) {

  public TrainPage {
    facts = List.copyOf(facts);
    technique = List.copyOf(technique);
    rules = List.copyOf(rules);
  }
}
