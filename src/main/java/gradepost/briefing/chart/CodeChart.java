package gradepost.briefing.chart;

/** A machine-readable square that says {@code text}. */
public record CodeChart(String id, String name, String says, String text) implements Chart {
  @Override
  public <T> T match(Cases<T> cases) {
    return cases.code(this);
  }
}
