package gradepost.briefing.chart;

import java.util.List;

/**
 * Where this formation stands at each platform: the train and its platforms, one above another, all
 * with the front of the train at the same place.
 *
 * @param carsM lengths of the vehicles, the leading one first
 * @param stands in the order in which the train calls
 */
public record StandsChart(
    String id, String name, String says, List<Double> carsM, List<Stand> stands) implements Chart {

  /**
   * One platform. Distances are from the front of the standing train, forwards positive.
   *
   * @param at where its mark is, in words
   * @param room what lies before the front and behind the rear, in words
   * @param tooShort whether the train does not stand at it whole
   */
  public record Stand(
      String station,
      String at,
      String room,
      boolean tooShort,
      double startM,
      double endM,
      List<Mark> marks,
      List<Double> buffersM) {
    public Stand {
      marks = List.copyOf(marks);
      buffersM = List.copyOf(buffersM);
    }
  }

  /**
   * A stop mark.
   *
   * @param own whether it is for this formation
   */
  public record Mark(String cars, double atM, boolean own) {}

  public StandsChart {
    carsM = List.copyOf(carsM);
    stands = List.copyOf(stands);
    if (carsM.isEmpty() || stands.isEmpty()) {
      throw new IllegalArgumentException("a train of one vehicle at least, at one platform");
    }
  }

  /** The same with another identity. */
  public StandsChart called(String other) {
    return new StandsChart(other, name, says, carsM, stands);
  }

  @Override
  public <T> T match(Cases<T> cases) {
    return cases.stands(this);
  }
}
