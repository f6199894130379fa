package gradepost.app;

import gradepost.app.issue.ArchivedInputs;
import gradepost.app.issue.ArchivedInputs.Because;
import gradepost.app.issue.ArchivedInputs.Issued;
import gradepost.app.issue.Concern;
import gradepost.app.issue.DifferenceFinder;
import gradepost.app.issue.Differences;
import gradepost.app.issue.IssuePapers;
import gradepost.app.issue.IssuePapers.Laid;
import gradepost.app.issue.Layout;
import gradepost.app.issue.Maker;
import gradepost.app.issue.OtherLine;
import gradepost.app.reissue.IssueInstaller;
import gradepost.app.store.Answer;
import gradepost.app.store.Disk;
import gradepost.app.store.FailOn;
import gradepost.app.store.IoErrorText;
import gradepost.app.store.Lock;
import gradepost.app.store.PackFiles;
import gradepost.app.store.Progress;
import gradepost.app.store.SharedArchive;
import gradepost.app.store.Store;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.Register.By;
import gradepost.reissue.register.RegisterException;
import gradepost.source.pack.PackFile;
import gradepost.yaml.Reading;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Optional;

/**
 * Registers packs as they are, with their papers, as issues to be compared with later: read, plan,
 * lay out, keep, register, put in place.
 */
public final class Enter {
  private final Store store;
  private final Path out;
  private final Optional<Path> templates;
  private final By by;
  private final boolean confirmed;

  /**
   * Makes ready for a clerk.
   *
   * @param out folder of the papers
   * @param templates folder of a depot's own templates
   * @param who does it, for the log of the register
   * @param confirmed whether the clerk knows that a pack has expired; else such a one is refused
   */
  public Enter(
      Store store, Path out, Optional<Path> templates, Clock clock, String who, boolean confirmed) {
    this.store = store;
    this.out = out;
    this.templates = templates;
    this.by = store.by(who, clock);
    this.confirmed = confirmed;
  }

  /**
   * Registers these packs.
   *
   * @param named files, or folders with packs below them
   * @param patience how long to wait for another run
   */
  public Answer of(List<Path> named, Duration patience, Progress progress) {
    try {
      Layout.requireFit(templates);
      List<Path> packs = PackFiles.packs(named);
      Optional<String> obstacle = PackFiles.obstacle(named, packs);
      if (obstacle.isPresent()) {
        return Answer.refused(obstacle.get());
      }
      if (!store.exists() && !store.isFree()) {
        return store.missing();
      }
      try (Lock lock = store.take(Lock.holder(by), patience);
          Register register = store.begin()) {
        store.kept().tidy(lock);
        Optional<Answer> elsewhere = SharedArchive.elsewhere(store, register);
        if (elsewhere.isPresent()) {
          return elsewhere.get();
        }
        Layout layout = new Layout(templates);
        progress.expect(packs.size());
        Answer answer = Answer.GOOD;
        for (Path pack : packs) {
          answer = answer.and(enter(pack, layout, register));
          progress.done(PackFiles.id(pack));
        }
        return answer;
      }
    } catch (IOException e) {
      return Answer.refused(IoErrorText.inWords(e));
    } catch (RegisterException e) {
      return Answer.refused("error: " + e.getMessage());
    }
  }

  private Answer enter(Path file, Layout layout, Register register)
      throws IOException, RegisterException {
    Reading<PackFile> reading = Disk.sources().pack(Disk.name(file));
    if (reading.found().isEmpty()) {
      return Answer.of(reading.problems());
    }
    PackFile found = reading.found().get();
    Optional<Entry> latest = register.latest(found.id());
    if (latest.isPresent()) {
      Optional<String> other =
          ArchivedInputs.pack(Disk.sources(), store.kept(), latest.get())
              .flatMap(last -> OtherLine.obstacle(file, found, latest.get(), last));
      if (other.isPresent()) {
        return Answer.refused(other.get());
      }
    }
    if (latest.isPresent() && latest.get().number() >= found.issue().number()) {
      return Answer.refused(
          "%s: error: %s is registered already\n  Maybe use reissue, which counts on from it"
              .formatted(file, latest.get().name()));
    }
    if (!confirmed && !found.issue().validTo().isAfter(by.when())) {
      return Answer.refused(
          AppText.ENTER_EXPIRED.with(file.toString(), found.issue().validTo()).inWords());
    }
    Differences differences =
        new DifferenceFinder(layout.messages()).of(file, found, Optional.empty());
    if (!differences.failures().isEmpty()) {
      return Answer.refused(String.join("\n", differences.failures()));
    }
    Laid laid = new IssuePapers(layout, false, Concern.NOBODY).of(differences, paper -> {});
    Issued issued =
        new Issued(Maker.of(layout), Because.FIRST, laid.papers(), differences.sheets());
    Entry entry = ArchivedInputs.issued(store.kept(), found, issued);
    register.issue(by, entry, found.issue().checker());
    Answer placed = new IssueInstaller(store, out).place(file, entry);
    if (placed.good()) {
      register.delivered(by, entry);
    }
    return Answer.of(reading.problems(), FailOn.ERRORS)
        .and(placed)
        .and(Answer.said(entry.name() + " registered"));
  }
}
