package gradepost.app.author;

import gradepost.app.author.Checked.Found;
import java.util.List;
import java.util.Optional;

/**
 * Cells, or a text with cells in it.
 *
 * @param text empty where it cannot be made
 * @param found what is wrong or worth knowing
 */
public record Taken(Optional<String> text, List<Found> found) {
  /** Copies the list. */
  public Taken {
    found = List.copyOf(found);
  }
}
