package gradepost.app.reissue;

import gradepost.app.issue.Task;
import gradepost.pack.TemporaryRestriction;
import gradepost.pack.TemporaryRestriction.Status;
import gradepost.source.pack.PackFile;
import gradepost.task.Assignment;
import java.time.LocalDateTime;
import java.util.List;

/** What concerns the trains of a pack, found without planning any. */
final class PackTrains {

  /** The restrictions that stand while the pack is valid and that a train of it meets. */
  static List<TemporaryRestriction> met(PackFile pack) {
    return pack.standing().stream().filter(r -> concerned(pack, List.of(r))).toList();
  }

  /** Whether any of these restrictions is for a train of this pack. */
  static boolean concerned(PackFile pack, List<TemporaryRestriction> notices) {
    for (Task task : Task.of(pack)) {
      Assignment a = task.assignment();
      if (notices.stream().anyMatch(n -> n.applies().to(a.direction(), a.lines()))) {
        return true;
      }
    }
    return false;
  }

  /** Those that stand at some time while the pack is valid, or stood in it and are withdrawn. */
  static List<TemporaryRestriction> timely(PackFile pack, List<TemporaryRestriction> notices) {
    LocalDateTime from = pack.issue().validFrom();
    LocalDateTime to = pack.issue().validTo();
    return notices.stream()
        .filter(n -> n.status() == Status.WITHDRAWN || n.standsBetween(from, to))
        .toList();
  }

  private PackTrains() {}
}
