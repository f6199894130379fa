package gradepost.app.shelf;

import java.util.List;

/**
 * What the bench shows.
 *
 * @param fields with what stands in them
 * @param paper what the paper says of this braking
 * @param problems with what was typed; then there are no answers
 * @param answers in sentences
 * @param lines of the chart; none where there are problems
 * @param targetM where the target is, metres from where the chart begins
 * @param distanceUnit what the chart counts distance in, with {@code perUnitM} metres to one
 * @param speedUnit what the chart counts speed in
 */
public record BenchShown(
    List<Field> fields,
    String paper,
    List<String> problems,
    List<Said> answers,
    List<Line> lines,
    double targetM,
    String distanceUnit,
    double perUnitM,
    String speedUnit) {
  /** Copies the lists. */
  public BenchShown {
    fields = List.copyOf(fields);
    problems = List.copyOf(problems);
    answers = List.copyOf(answers);
    lines = List.copyOf(lines);
  }

  /**
   * One field.
   *
   * @param name in the address
   * @param label that a reader sees, with the unit
   * @param value that stands in it
   * @param options to choose from; none where a number is typed
   */
  public record Field(String name, String label, String value, List<Option> options) {
    /** Copies the list. */
    public Field {
      options = List.copyOf(options);
    }

    /** What stands in it, as a reader sees it. */
    public String seen() {
      return options.stream()
          .filter(option -> option.value().equals(value))
          .findFirst()
          .map(Option::label)
          .orElse(value);
    }
  }

  /** One choice of a field. */
  public record Option(String value, String label) {}

  /**
   * One answer.
   *
   * @param of what it is the answer to
   * @param text the answer
   * @param holds whether the target is met in time
   */
  public record Said(String of, String text, boolean holds) {}

  /**
   * One line of the chart.
   *
   * @param label what it is
   * @param kind plan, tried, safe or rescue
   * @param points metres from where the chart begins, and speed in its unit
   */
  public record Line(String label, String kind, List<double[]> points) {
    /** Copies the list. */
    public Line {
      points = List.copyOf(points);
    }
  }
}
