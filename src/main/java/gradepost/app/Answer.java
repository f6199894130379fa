package gradepost.app;

import java.nio.file.Path;
import java.util.List;

/**
 * What came of a command.
 *
 * @param said results in words, a line each
 * @param written the files that now lie in their place
 * @param problems each in the house form, one or more lines, for whoever keeps the data
 * @param good whether all that was asked for was done and nothing needs anyone's eye
 */
public record Answer(List<String> said, List<Path> written, List<String> problems, boolean good) {
  public Answer {
    said = List.copyOf(said);
    written = List.copyOf(written);
    problems = List.copyOf(problems);
  }

  /** Nothing could be done, and why. */
  static Answer refused(String problem) {
    return new Answer(List.of(), List.of(), List.of(problem), false);
  }
}
