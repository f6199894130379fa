package gradepost.app.reissue;

import gradepost.app.making.Outcome.State;
import gradepost.app.store.Answer;
import gradepost.app.store.PackFiles;
import gradepost.source.pack.NoticeFile;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.Optional;

/**
 * Looks at a pack by the index alone: one that a run cannot touch is not read. Where there is any
 * doubt, it is.
 */
final class FirstLook {
  private final Order order;
  private final Optional<NoticeFile> notice;
  private final PackIndex index;
  private final LastIssues last;
  private final LocalDateTime when;

  /**
   * @param notice empty where the files in place have been edited by hand
   * @param when the hour of the run
   */
  FirstLook(
      Order order,
      Optional<NoticeFile> notice,
      PackIndex index,
      LastIssues last,
      LocalDateTime when) {
    this.order = order;
    this.notice = notice;
    this.index = index;
    this.last = last;
    this.when = when;
  }

  /** What is seen; empty where the pack has to be read. */
  Optional<Seen> at(Path file) throws IOException {
    boolean restored = order.put().dryRun() && order.read().edits().fromArchive();
    Optional<PackIndex.Facts> known = restored ? Optional.empty() : index.facts(file);
    if (known.isEmpty()) {
      return Optional.empty();
    }
    PackIndex.Facts facts = known.get();
    String id = PackFiles.id(file);
    if (notice.isPresent()) {
      return notice.get().mayConcern(facts.route())
          ? Optional.empty()
          : Optional.of(Seen.done(file, State.ELSEWHERE, Answer.said(LookTold.elsewhere(id))));
    }
    boolean asIssued =
        order.tell().asOf().isEmpty()
            && facts.standAllAt(when)
            && last.areThoseOfItsIssue(file, facts.files());
    return asIssued
        ? Optional.of(Seen.done(file, State.UNTOUCHED, Answer.said(LookTold.untouched(id))))
        : Optional.empty();
  }
}
