package gradepost.app.issue;

import gradepost.reissue.Comparison;
import gradepost.source.pack.PackFile;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A paper of a pack beside the same paper of another state of the pack, found without planning.
 *
 * @param before empty where that state has no such paper
 * @param mayDiffer whether their trains can be told apart at all
 */
public record PaperPair(Task now, Optional<Task> before, boolean mayDiffer) {

  /** The papers of the pack as it is now, in their order. */
  static List<PaperPair> of(Optional<PackFile> before, PackFile now) {
    Map<String, Task> old = new HashMap<>();
    before.ifPresent(pack -> Task.of(pack).forEach(t -> old.put(t.stem(), t)));
    List<PaperPair> pairs = new ArrayList<>();
    for (Task task : Task.of(now)) {
      pairs.add(pair(task, Optional.ofNullable(old.get(task.stem()))));
    }
    return pairs;
  }

  private static PaperPair pair(Task now, Optional<Task> before) {
    boolean differs =
        before.map(then -> Comparison.mayDiffer(then.assignment(), now.assignment())).orElse(true);
    return new PaperPair(now, before, differs);
  }

  /** Whether any paper of two states of a pack can differ, or one of them has another. */
  public static boolean anyMayDiffer(PackFile before, PackFile now) {
    return !stems(before).equals(stems(now))
        || of(Optional.of(before), now).stream().anyMatch(PaperPair::mayDiffer);
  }

  private static List<String> stems(PackFile pack) {
    return Task.of(pack).stream().map(Task::stem).toList();
  }
}
