package gradepost.app.issue;

import gradepost.app.store.Unplanned;
import gradepost.drive.PlannedBefore;
import gradepost.drive.Planner;
import gradepost.motion.NoEnd;
import gradepost.plan.Plan;
import gradepost.source.file.FileNames;
import gradepost.source.pack.DirectionPart;
import gradepost.source.pack.PackFile;
import gradepost.stock.Formation;
import gradepost.task.Assignment;
import gradepost.task.PaperPeriod;
import gradepost.task.PaperPeriods;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/**
 * One paper to be made of a pack.
 *
 * @param stem what its files are named after: pack, direction, formation, edition if it is of one
 * @param title on its cover
 */
public record Task(String stem, String title, Assignment assignment) {

  /**
   * Works out its run.
   *
   * @throws NoEnd if a search reaches its bound
   */
  public Plan plan() {
    return Planner.plan(assignment, PlannedBefore.inThisProcess());
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

  /** Every direction of a pack, each with every formation, with its editions and periods. */
  public static List<Task> of(PackFile pack) {
    List<Task> tasks = new ArrayList<>();
    for (DirectionPart part : pack.directions()) {
      for (Formation formation : pack.formations()) {
        tasks.addAll(of(pack, pack.assignment(part, formation)));
        pack.editions().stream()
            .filter(e -> e.isFor(formation.name()))
            .forEach(e -> tasks.addAll(of(pack, pack.assignment(part, formation, e))));
      }
    }
    return tasks;
  }

  /** The paper of the whole validity, then one for each part that needs its own. */
  private static List<Task> of(PackFile pack, Assignment assignment) {
    List<PaperPeriod> periods =
        PaperPeriods.of(assignment, pack.issue().validFrom(), pack.issue().validTo());
    List<Task> tasks = new ArrayList<>();
    tasks.add(one(pack, assignment.beside(periods)));
    periods.forEach(period -> tasks.add(one(pack, assignment.in(period))));
    return tasks;
  }

  private static Task one(PackFile pack, Assignment assignment) {
    String title = pack.title().orElse(pack.route().name());
    String direction = pack.route().nameOf(assignment.direction());
    List<String> stem =
        new ArrayList<>(
            List.of(
                pack.id(),
                FileNames.asName(direction),
                FileNames.asName(assignment.formation().name())));
    assignment.editionNames().forEach(name -> stem.add(FileNames.asName(name)));
    return new Task(
        String.join("-", stem),
        "%s, %s, %s".formatted(title, direction, assignment.trainName()),
        assignment);
  }
}
