package gradepost.told;

import java.util.List;

/**
 * Something that the driver or the clerk must know.
 *
 * @param key of its sentence
 * @param values for its holes, in order
 */
public record PrintedFinding(String key, List<PrintedValue> values) {
  public PrintedFinding {
    values = List.copyOf(values);
  }
}
