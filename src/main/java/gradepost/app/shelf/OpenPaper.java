package gradepost.app.shelf;

import gradepost.app.store.Paper;
import java.io.IOException;
import java.util.List;
import java.util.Optional;

/**
 * A paper that was planned.
 *
 * @param failures why its plan is not fit for issue; then there is nothing else
 * @param road place by place in the order of travel
 * @param faces PDF and HTML, laid out when somebody looks
 */
public record OpenPaper(List<String> failures, List<RoadStep> road, List<Face> faces) {
  /** Copies the lists. */
  public OpenPaper {
    failures = List.copyOf(failures);
    road = List.copyOf(road);
    faces = List.copyOf(faces);
  }

  /** One that has no plan, and why. */
  static OpenPaper failed(List<String> failures) {
    return new OpenPaper(failures, List.of(), List.of());
  }

  /**
   * The file whose name ends so, such as {@code .html}; empty where there is none.
   *
   * @throws IOException where it cannot be laid out
   */
  public Optional<Paper> file(String ending) throws IOException {
    for (Face face : faces) {
      if (face.ending().equals(ending)) {
        return Optional.of(face.paper());
      }
    }
    return Optional.empty();
  }

  /** One form of a paper; laid out once. */
  static final class Face {
    /** Lays a paper out. */
    interface Laying {
      Paper paper() throws IOException;
    }

    private final String ending;
    private final Laying laying;
    private Optional<Paper> laid = Optional.empty();

    Face(String ending, Laying laying) {
      this.ending = ending;
      this.laying = laying;
    }

    String ending() {
      return ending;
    }

    synchronized Paper paper() throws IOException {
      Paper paper = laid.isPresent() ? laid.get() : laying.paper();
      laid = Optional.of(paper);
      return paper;
    }
  }
}
