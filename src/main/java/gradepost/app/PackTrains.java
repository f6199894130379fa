package gradepost.app;

import gradepost.drive.Assignment;
import gradepost.reissue.Comparison;
import gradepost.route.TemporaryRestriction;
import gradepost.source.PackFile;
import java.nio.file.Path;
import java.util.List;

/** What concerns the trains of a pack, found without planning any. */
final class PackTrains {

  /** The restrictions that stand while the pack is valid and that a train of it meets. */
  static List<TemporaryRestriction> met(Path file, PackFile pack) {
    return pack.standing().stream().filter(r -> concerned(file, pack, List.of(r))).toList();
  }

  /** Whether the trains of two states of a pack can be told apart. */
  static boolean mayDiffer(Path file, PackFile before, PackFile after) {
    List<Task> old = Task.of(file, before);
    List<Task> now = Task.of(file, after);
    if (old.size() != now.size()) {
      return true;
    }
    for (int i = 0; i < now.size(); i++) {
      if (!old.get(i).stem().equals(now.get(i).stem())
          || Comparison.mayDiffer(old.get(i).assignment(), now.get(i).assignment())) {
        return true;
      }
    }
    return false;
  }

  /** Whether any of these restrictions is for a train of this pack. */
  static boolean concerned(Path file, PackFile pack, List<TemporaryRestriction> notices) {
    for (Task task : Task.of(file, pack)) {
      Assignment a = task.assignment();
      if (notices.stream().anyMatch(n -> n.applies().to(a.direction(), a.lines()))) {
        return true;
      }
    }
    return false;
  }

  private PackTrains() {}
}
