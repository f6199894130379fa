package gradepost.briefing.chart;

/**
 * Where the train comes to its target when the technique is carried out as printed and the driver
 * corrects it. Distances in the paper's unit of length, before the target positive.
 *
 * @param past one run in twenty ends further on than this
 * @param middle as many end before this as after it
 * @param before one run in twenty ends further back than this
 * @param pastText how far past or before, with the unit; so for the other two
 * @param target what stands at nought
 */
public record SpreadChart(
    String id,
    String name,
    String says,
    double past,
    double middle,
    double before,
    String pastText,
    String beforeText,
    String target)
    implements Chart {

  public SpreadChart {
    if (past > middle || middle > before) {
      throw new IllegalArgumentException("shares of a spread are in order");
    }
  }

  @Override
  public <T> T match(Cases<T> cases) {
    return cases.spread(this);
  }
}
