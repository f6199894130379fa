package gradepost.app.shelf;

import gradepost.app.issue.Issue;
import gradepost.source.file.Input;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;

/**
 * What is known of one pack as its files are now.
 *
 * @param id by which the register knows it
 * @param file where it lies
 * @param problems what is wrong or worth knowing, each a line as {@code check} says it
 * @param whole what is in it; empty where it cannot be read
 */
public record ShelfPack(String id, Path file, List<String> problems, Optional<Whole> whole) {
  /** Copies the list. */
  public ShelfPack {
    problems = List.copyOf(problems);
  }

  /**
   * A pack that can be read.
   *
   * @param title of the pack, or of its route
   * @param number of the issue that the files are
   * @param validFrom its first moment
   * @param validTo its last moment
   * @param inputs all its files, as they were read
   * @param preparedBy who prepared the data
   * @param directions as the route calls them
   * @param formations by name
   * @param papers in the order in which they are made
   */
  public record Whole(
      String title,
      String route,
      int number,
      LocalDateTime validFrom,
      LocalDateTime validTo,
      List<Input> inputs,
      String preparedBy,
      List<String> directions,
      List<String> formations,
      List<ShelfPaper> papers) {
    /** Copies the lists. */
    public Whole {
      inputs = List.copyOf(inputs);
      directions = List.copyOf(directions);
      formations = List.copyOf(formations);
      papers = List.copyOf(papers);
    }

    /**
     * Of all its files: worked out when it is asked for, since a list of packs does not show it.
     */
    public String fingerprint() {
      return Issue.fingerprint(inputs);
    }
  }
}
