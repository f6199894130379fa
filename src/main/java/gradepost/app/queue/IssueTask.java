package gradepost.app.queue;

import gradepost.reissue.register.Entry.Kept;
import gradepost.reissue.register.Jobs.Job;
import gradepost.reissue.register.Register.By;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;

/**
 * An issue that a worker is to make, as the scheduler keeps it. All files are named by their
 * digests in the archive.
 *
 * @param file of the pack, where it was asked for; for messages
 * @param when it was asked for, in ISO notation
 * @param reason why there is this issue, in words; empty text where a notice says it
 * @param notice digest of the notice; empty text where there is none
 * @param found the clerk's own files as they were
 * @param inputs of the issue, the pack's own file the first
 * @param templates of the depot's own; none where it has none
 */
record IssueTask(
    String pack,
    int number,
    String file,
    String who,
    String when,
    String depot,
    String reason,
    String notice,
    boolean urgent,
    List<Kept> found,
    List<Kept> inputs,
    List<Kept> templates) {

  IssueTask {
    found = List.copyOf(found);
    inputs = List.copyOf(inputs);
    templates = List.copyOf(templates);
  }

  Job job() {
    return new Job(pack, number);
  }

  By by() {
    return new By(who, LocalDateTime.parse(when), depot);
  }

  Optional<String> why() {
    return Optional.of(reason).filter(text -> !text.isEmpty());
  }
}
