package gradepost.briefing.chart;

import java.util.List;

/** The formation as it stands in the direction of travel, leading vehicle first. */
public record TrainChart(
    String id, String name, String says, String leads, List<Car> cars, String total)
    implements Chart {

  /** One vehicle. */
  public record Car(String type, double lengthM, String length, boolean motored) {}

  public TrainChart {
    cars = List.copyOf(cars);
  }

  /** The same with another identity. */
  public TrainChart called(String other) {
    return new TrainChart(other, name, says, leads, cars, total);
  }

  @Override
  public <T> T match(Cases<T> cases) {
    return cases.train(this);
  }
}
