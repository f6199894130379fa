package gradepost.yaml;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** What is wrong with one or more files: file by file as they were read, then by place. */
public record Problems(List<Problem> all) {
  /** So many are printed; a file that is wholly out of step should not fill a screen ten times. */
  public static final int PRINTED = 50;

  public static final Problems NONE = new Problems(List.of());

  public Problems {
    all = inOrder(all);
  }

  private static List<Problem> inOrder(List<Problem> problems) {
    List<String> files = problems.stream().map(p -> p.spot().file()).distinct().toList();
    List<Problem> sorted = new ArrayList<>(new LinkedHashSet<>(problems));
    sorted.sort(
        Comparator.<Problem>comparingInt(p -> files.indexOf(p.spot().file()))
            .thenComparingInt(p -> p.spot().line())
            .thenComparingInt(p -> p.spot().column()));
    return List.copyOf(sorted);
  }

  /** Whether any of them is one for which a file is refused. */
  public boolean hasErrors() {
    return all.stream().anyMatch(p -> p.severity() == Severity.ERROR);
  }

  /** Both; what the same place is told of in the same words is told once. */
  public Problems and(Problems others) {
    if (all.isEmpty() || others.all.isEmpty()) {
      return all.isEmpty() ? others : this;
    }
    Set<Problem.Said> told = new HashSet<>();
    all.forEach(p -> told.add(p.said()));
    List<Problem> both = new ArrayList<>(all);
    others.all.stream().filter(p -> !told.contains(p.said())).forEach(both::add);
    return new Problems(both);
  }

  /**
   * As printed: at most {@value #PRINTED}, then how many more. Ends with a line feed unless empty.
   */
  public String text() {
    StringBuilder text = new StringBuilder();
    all.stream().limit(PRINTED).forEach(p -> text.append(p.text()).append('\n'));
    if (all.size() > PRINTED) {
      text.append(YamlMistakes.MORE_PROBLEMS.of(all.size() - PRINTED)).append('\n');
    }
    return text.toString();
  }
}
