package gradepost.app;

import gradepost.drive.Finding;
import gradepost.drive.Plan;
import gradepost.motion.NoEnd;
import gradepost.units.Rounding;
import java.nio.file.Path;
import java.util.List;

/** Why a plan is not fit for issue, in words for whoever keeps the data. */
final class Failures {

  static List<String> inWords(Path file, Task task, Plan plan) {
    return inWords(task, plan).stream().map(f -> "%s: error: %s".formatted(file, f)).toList();
  }

  static List<String> inWords(Task task, Plan plan) {
    return plan.failures().stream().map(f -> task.title() + ": " + words(plan, f)).toList();
  }

  /** Why there is no plan at all. */
  static String inWords(Task task, NoEnd e) {
    return "%s: the run cannot be worked out with these data: %s"
        .formatted(task.title(), e.getMessage());
  }

  private static String words(Plan plan, Finding failure) {
    var path = plan.assignment().path();
    var units = path.units();
    if (failure instanceof Finding.OverCeiling over) {
      return "run from its own printed instructions the train is at %s at %s, where %s is permissible"
          .formatted(
              units.speed(over.speedMps(), Rounding.UP),
              path.text(over.atM()),
              units.speed(over.ceilingMps(), Rounding.DOWN));
    } else if (failure instanceof Finding.StopOutsideTolerance stop) {
      return "run from its own printed instructions the train stops %s %s its mark, %s are allowed"
          .formatted(
              units.length(Math.abs(stop.shortM()), Rounding.UP),
              stop.shortM() >= 0 ? "short of" : "past",
              units.length(stop.toleranceM(), Rounding.DOWN));
    } else if (failure instanceof Finding.ForbiddenMovement movement) {
      return "the handle movement at %s is one that the stock forbids"
          .formatted(path.text(movement.atM()));
    } else if (failure instanceof Finding.NeverComes never) {
      return "what the action after %s waits for never comes".formatted(path.text(never.atM()));
    } else if (failure instanceof Finding.Stalls stalls) {
      return "the train stalls at " + path.text(stalls.atM());
    }
    return "the plan fails its own check: " + failure;
  }

  private Failures() {}
}
