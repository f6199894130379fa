package gradepost.briefing.chart;

import java.util.List;

/** Brake pressure against time from the first application, as the leading gauge shows it. */
@SuppressWarnings("ArrayRecordComponent") // taken and given as copies
public record PressureChart(
    String id,
    String name,
    String says,
    String pressureUnit,
    String timeUnit,
    double topPressure,
    double pressureStep,
    double[] timesS,
    double[] pressures,
    List<Note> notes)
    implements Chart {

  /** A word at a time. */
  public record Note(double timeS, double pressure, String text) {}

  public PressureChart {
    timesS = timesS.clone();
    pressures = pressures.clone();
    notes = List.copyOf(notes);
  }

  @Override
  public double[] timesS() {
    return timesS.clone();
  }

  @Override
  public double[] pressures() {
    return pressures.clone();
  }

  @Override
  public <T> T match(Cases<T> cases) {
    return cases.pressure(this);
  }
}
