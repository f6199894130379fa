package gradepost.app.store;

import gradepost.yaml.Problem;
import gradepost.yaml.Problems;
import gradepost.yaml.Severity;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
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
  /** So many problems are worth printing. */
  public static final int PRINTED = Problems.PRINTED;

  public static final Answer GOOD = new Answer(List.of(), List.of(), List.of(), true);

  public Answer {
    said = List.copyOf(said);
    written = List.copyOf(written);
    problems = List.copyOf(problems);
  }

  /** Good, with one line to say. */
  public static Answer said(String line) {
    return new Answer(List.of(line), List.of(), List.of(), true);
  }

  /** Good, with the files that were written. */
  public static Answer wrote(List<Path> files) {
    return new Answer(List.of(), files, List.of(), true);
  }

  /** Something could not be done, and why. */
  public static Answer refused(String problem) {
    return new Answer(List.of(), List.of(), List.of(problem), false);
  }

  /** What reading found; a note needs nobody's eye, and stands behind all that does. */
  public static Answer of(Problems problems) {
    return of(problems, FailOn.WARNINGS);
  }

  /** The same where not every problem keeps it from being good. */
  public static Answer of(Problems problems, FailOn failOn) {
    return new Answer(
        List.of(),
        List.of(),
        problems.all().stream()
            .sorted(Comparator.comparing(p -> p.severity() == Severity.NOTE))
            .map(Problem::text)
            .toList(),
        problems.all().stream().noneMatch(failOn::counts));
  }

  /** The same where what was said tells of something that needs an eye. */
  public Answer butFound() {
    return new Answer(said, written, problems, false);
  }

  /** Both; a problem of a file that two packs name is told once. */
  public Answer and(Answer other) {
    return new Answer(
        both(said, other.said),
        both(written, other.written),
        both(problems, other.problems).stream().distinct().toList(),
        good && other.good);
  }

  /** The same without problems that were told already. */
  public Answer without(List<String> told) {
    List<String> fresh = problems.stream().filter(p -> !told.contains(p)).toList();
    return new Answer(said, written, fresh, good);
  }

  private static <T> List<T> both(List<T> first, List<T> second) {
    List<T> all = new ArrayList<>(first);
    all.addAll(second);
    return all;
  }
}
