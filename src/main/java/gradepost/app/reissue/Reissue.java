package gradepost.app.reissue;

import gradepost.app.issue.Layout;
import gradepost.app.making.Outcome;
import gradepost.app.store.Answer;
import gradepost.app.store.Disk;
import gradepost.app.store.IoErrorText;
import gradepost.app.store.Lock;
import gradepost.app.store.PackFiles;
import gradepost.app.store.Progress;
import gradepost.app.store.Store;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.Register.By;
import gradepost.reissue.register.RegisterException;
import gradepost.source.Sources;
import gradepost.source.pack.NoticeFile;
import gradepost.yaml.Problems;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Takes a notice into packs. All are looked at before any is changed; then each that is touched is
 * worked out, kept and registered, an act for each; and only when all are registered are files put
 * in place.
 *
 * <p>So a run that ends anywhere leaves issues that are whole, and files that no half-done
 * neighbour has altered: the next run puts in place what is registered, and works out the rest.
 */
public final class Reissue {
  private final Sources sources;
  private final Clock clock;
  private final String who;
  private final Progress progress;
  private final Optional<Workers> workers;

  /**
   * Makes ready for a clerk.
   *
   * @param who does it, for the log of the register
   */
  public Reissue(Clock clock, String who, Progress progress) {
    this(clock, who, progress, Disk.sources(), Optional.empty());
  }

  /**
   * With a way of its own to read packs.
   *
   * @param workers who make the issues; empty where the run makes them itself
   */
  public Reissue(
      Clock clock, String who, Progress progress, Sources sources, Optional<Workers> workers) {
    this.sources = sources;
    this.clock = clock;
    this.who = who;
    this.progress = progress;
    this.workers = workers;
  }

  /** Does it, or says why not. */
  public Answer of(Order order) {
    try {
      Layout.requireFit(order.tell().templates());
      Optional<NoticeFile> notice =
          order.read().notice().map(file -> sources.noticeFile(Disk.name(file)));
      Problems ofNotice = notice.map(NoticeFile::ofFile).orElse(Problems.NONE);
      if (ofNotice.hasErrors()) {
        return Answer.of(ofNotice).and(Answer.refused(ReissueTold.UNREADABLE));
      }
      List<Path> packs = PackFiles.packs(order.read().packs());
      Optional<String> obstacle = PackFiles.obstacle(order.read().packs(), packs);
      if (obstacle.isPresent()) {
        return Answer.refused(obstacle.get());
      }
      Store store = order.put().store();
      if (!store.exists() && (store.hasArchive() || !order.put().dryRun())) {
        return store.missing();
      }
      By by = store.by(who, clock);
      ReissueRound round = new ReissueRound(order, sources, notice, by, progress, workers);
      return order.put().dryRun()
          ? DryRun.of(order, packs, round)
          : locked(order, packs, round, by);
    } catch (IOException e) {
      return Answer.refused(IoErrorText.inWords(e));
    } catch (RegisterException e) {
      return Answer.refused("error: " + e.getMessage());
    }
  }

  private Answer locked(Order order, List<Path> packs, ReissueRound round, By by)
      throws IOException, RegisterException {
    Store store = order.put().store();
    try (Lock lock = store.take(Lock.holder(by), order.pace().patience());
        Register register = store.open()) {
      store.kept().tidy(lock);
      Answer fits = round.fits(packs, Optional.of(register));
      return fits.good() ? fits.and(reissue(order, packs, round, by, register)) : fits;
    }
  }

  /** Restore, finish what an earlier run left, issue, put in place. */
  private Answer reissue(
      Order order, List<Path> packs, ReissueRound round, By by, Register register)
      throws IOException, RegisterException {
    Answer answer = FromArchive.asOrdered(order, packs, register);
    if (!answer.good()) {
      return answer.and(Answer.refused("error: nothing was restored and nothing was issued"));
    }
    answer = answer.and(Workers.earlier(workers, order, register));
    if (!answer.good()) {
      return answer;
    }
    IssueInstaller placing = new IssueInstaller(order.put().store(), order.put().out());
    for (Map.Entry<Entry, Answer> one : placing.waiting(packs, by, register).entrySet()) {
      answer = answer.and(ReissueTold.late(one.getKey(), one.getValue()));
    }
    if (!answer.good()) {
      return answer.and(Answer.refused(ReissueTold.EARLIER_FIRST));
    }
    List<Outcome> outcomes = round.of(packs, Optional.of(register));
    answer = answer.and(ReissueTold.of(outcomes, false).without(answer.problems()));
    if (ReissueRound.left(outcomes) || ReissueRound.asked(outcomes)) {
      return answer;
    }
    for (Answer one : placing.waiting(packs, by, register).values()) {
      answer = answer.and(one);
    }
    return answer;
  }
}
