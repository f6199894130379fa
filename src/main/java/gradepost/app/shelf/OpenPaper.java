package gradepost.app.shelf;

import gradepost.app.store.Paper;
import java.util.List;
import java.util.Optional;

/**
 * A paper that was planned and laid out.
 *
 * @param failures why its plan is not fit for issue; then there is nothing else
 * @param files PDF and HTML
 * @param road place by place in the order of travel
 */
public record OpenPaper(List<String> failures, List<Paper> files, List<RoadStep> road) {
  /** Copies the lists. */
  public OpenPaper {
    failures = List.copyOf(failures);
    files = List.copyOf(files);
    road = List.copyOf(road);
  }

  /** The file whose name ends so, such as {@code .html}. */
  public Optional<Paper> file(String ending) {
    return files.stream().filter(f -> f.name().endsWith(ending)).findFirst();
  }
}
