package gradepost.app.shelf;

import gradepost.app.Desk;
import gradepost.app.Enter;
import gradepost.app.Entries;
import gradepost.app.FinalPapers;
import gradepost.app.store.Answer;
import gradepost.app.store.Progress;
import gradepost.app.store.Store;
import gradepost.reissue.register.Signature;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Optional;

/** What is done with one issue of a pack: entered, checked, signed off on, recalled. */
public final class IssueDesk {
  /** So long another run is waited for. */
  private static final Duration PATIENCE = Duration.ofSeconds(60);

  private final Store store;
  private final Path out;
  private final Clock clock;

  /**
   * @param out where papers go
   */
  public IssueDesk(Store store, Path out, Clock clock) {
    this.store = store;
    this.out = out;
    this.clock = clock;
  }

  /**
   * Registers a pack as its files are: later issues follow it.
   *
   * @param confirmed whether the clerk knows that it has expired
   */
  public Answer enter(ShelfPack pack, String by, boolean confirmed) {
    return new Enter(store, out, Optional.empty(), clock, by, confirmed)
        .of(List.of(pack.file()), PATIENCE, Progress.SILENT);
  }

  /**
   * Somebody has checked an issue: its papers are made without the word DRAFT.
   *
   * @param issue by its name, such as {@code valley/4}
   */
  public Answer checked(String issue, String by) {
    return new FinalPapers(store, out, Optional.empty(), clock, by)
        .of(List.of(issue), PATIENCE, Progress.SILENT);
  }

  /** An issue is recalled that no other replaces. */
  public Answer recall(String issue, String reason, String by) {
    return new Entries(store, clock, by).recall(issue, reason);
  }

  /**
   * A driver is signed off.
   *
   * @param confirmed whether the assessor knows that the issue is not in use
   */
  public Answer signOff(String issue, Signature signature, String by, boolean confirmed) {
    return new Desk(store, clock, by).signOff(issue, Optional.empty(), signature, confirmed);
  }
}
