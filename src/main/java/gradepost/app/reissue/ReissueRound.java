package gradepost.app.reissue;

import gradepost.app.making.Outcome;
import gradepost.app.making.Outcome.State;
import gradepost.app.store.Answer;
import gradepost.app.store.Archive;
import gradepost.app.store.PackFiles;
import gradepost.app.store.Progress;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.Register.By;
import gradepost.reissue.register.RegisterException;
import gradepost.source.Sources;
import gradepost.source.pack.NoticeFile;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * The packs of a reissue, all together: look at all, register what the touched ones were, and work
 * these out, an act for each. What the look has read is what is worked on: a file that changes
 * meanwhile mixes nothing.
 */
final class ReissueRound {
  private final Order order;
  private final Sources sources;
  private final Optional<NoticeFile> notice;
  private final By by;
  private final Progress progress;
  private final Optional<Workers> workers;

  /**
   * @param notice empty where the files in place have been edited by hand
   * @param workers empty where the run makes the issues itself
   */
  ReissueRound(
      Order order,
      Sources sources,
      Optional<NoticeFile> notice,
      By by,
      Progress progress,
      Optional<Workers> workers) {
    this.order = order;
    this.sources = sources;
    this.notice = notice;
    this.by = by;
    this.progress = progress;
    this.workers = workers;
  }

  /** Whether the notice can be for these packs at all. */
  Answer fits(List<Path> packs, Optional<Register> register) throws IOException, RegisterException {
    return NoticeFits.of(notice, order, packs, sources, PackIndex.of(register));
  }

  /**
   * What becomes of each pack, in their order.
   *
   * @param register empty where there is none yet
   */
  List<Outcome> of(List<Path> packs, Optional<Register> register)
      throws IOException, RegisterException {
    progress.expect(packs.size());
    List<Seen> seen = new AllLooks(order, sources, notice, by).at(packs, register, this::done);
    List<Outcome> outcomes = seen.stream().map(Seen::outcome).toList();
    if (any(outcomes, State.UNREADABLE)
        || any(outcomes, State.WRONG_NOTICE)
        || any(outcomes, State.STALE)
        || left(outcomes)) {
      return outcomes;
    }
    List<Seen.Touched> touched =
        seen.stream().flatMap(s -> s.match(done -> Stream.empty(), Stream::of)).toList();
    List<Outcome> doubtful =
        notice.isEmpty()
            ? List.of()
            : new DoubtfulNotices(order.read().edits().confirmed()).of(touched);
    if (doubtful.isEmpty() && register.isPresent() && !order.put().dryRun()) {
      takeIn(touched, register.get());
    }
    Map<Path, Outcome> all = new LinkedHashMap<>();
    outcomes.forEach(o -> all.put(o.file(), o));
    (doubtful.isEmpty() ? due(touched, register) : doubtful).forEach(o -> all.put(o.file(), o));
    return new ArrayList<>(all.values());
  }

  /** Whether the run ended before every pack had its turn. */
  static boolean left(List<Outcome> outcomes) {
    return any(outcomes, State.LEFT);
  }

  /** Whether workers are at it, and nobody waits for them. */
  static boolean asked(List<Outcome> outcomes) {
    return any(outcomes, State.ASKED);
  }

  private static boolean any(List<Outcome> outcomes, State state) {
    return outcomes.stream().anyMatch(o -> o.state() == state);
  }

  private void takeIn(List<Seen.Touched> touched, Register register)
      throws IOException, RegisterException {
    for (Seen.Touched each : touched) {
      if (each.outcome().base().isPresent()) {
        register.takeIn(by, each.outcome().base().get());
      }
    }
    Archive archive = order.put().store().kept();
    PacksSharingFiles.takeIn(sources, touched, by, register, archive);
  }

  private List<Outcome> due(List<Seen.Touched> touched, Optional<Register> register)
      throws IOException, RegisterException {
    return new DueIssues(order, by, register, workers).made(touched, this::done);
  }

  private void done(Path pack) {
    synchronized (progress) {
      progress.done(PackFiles.id(pack));
    }
  }
}
