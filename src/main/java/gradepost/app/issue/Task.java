package gradepost.app.issue;

import gradepost.app.store.PackFiles;
import gradepost.app.store.Unplanned;
import gradepost.drive.Planner;
import gradepost.motion.NoEnd;
import gradepost.plan.Plan;
import gradepost.source.pack.DirectionPart;
import gradepost.source.pack.PackFile;
import gradepost.stock.Formation;
import gradepost.task.Assignment;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * One paper to be made of a pack.
 *
 * @param stem what its files are named after: pack, direction, formation
 * @param title on its cover
 */
public record Task(String stem, String title, Assignment assignment) {

  /**
   * Works out its run.
   *
   * @throws NoEnd if a search reaches its bound
   */
  public Plan plan() {
    return Planner.plan(assignment);
  }

  /**
   * The same for a caller that can make nothing without the run.
   *
   * @param file of the pack, for the message
   */
  public Plan plan(Path file) throws Unplanned {
    try {
      return plan();
    } catch (NoEnd e) {
      throw new Unplanned("%s: error: %s".formatted(file, Failures.of(this, e).what()), e);
    }
  }

  /** Every direction of a pack, each with every formation. */
  public static List<Task> of(Path file, PackFile pack) {
    List<Task> tasks = new ArrayList<>();
    String title = pack.title().orElse(pack.route().name());
    for (DirectionPart part : pack.directions()) {
      String direction = pack.route().nameOf(part.direction());
      for (Formation formation : pack.formations()) {
        tasks.add(
            new Task(
                "%s-%s-%s"
                    .formatted(PackFiles.stem(file), asName(direction), asName(formation.name())),
                "%s, %s, %s".formatted(title, direction, formation.name()),
                pack.assignment(part, formation)));
      }
    }
    return tasks;
  }

  /** Letters and digits of any script stay; all else could mean something to a file system. */
  static String asName(String words) {
    return words
        .toLowerCase(Locale.ROOT)
        .replaceAll("[^\\p{L}\\p{N}]+", "-")
        .replaceAll("^-|-$", "");
  }
}
