package gradepost.app;

import gradepost.app.IssuePapers.Laid;
import gradepost.app.Kits.Because;
import gradepost.app.Kits.Issued;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.Register.By;
import gradepost.reissue.register.RegisterException;
import gradepost.source.PackFile;
import gradepost.source.Reading;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
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

  /**
   * Makes ready for a clerk.
   *
   * @param out folder of the papers
   * @param templates folder of a depot's own templates
   * @param who does it, for the log of the register
   */
  public Enter(Store store, Path out, Optional<Path> templates, Clock clock, String who) {
    this.store = store;
    this.out = out;
    this.templates = templates;
    this.by = new By(who, LocalDateTime.now(clock).truncatedTo(ChronoUnit.MINUTES));
  }

  /**
   * Registers these packs.
   *
   * @param named files, or folders with packs below them
   * @param patience how long to wait for another run
   */
  public Answer of(List<Path> named, Duration patience, Progress progress) {
    try {
      List<Path> packs = PackFiles.packs(named);
      Optional<String> obstacle = PackFiles.obstacle(named, packs);
      if (obstacle.isPresent()) {
        return Answer.refused(obstacle.get());
      }
      try (Lock lock = Lock.take(store.lock(), Lock.holder(by), patience);
          Register register = store.open()) {
        new Archive(store.archive()).tidy(lock);
        Layout layout = new Layout(templates);
        progress.expect(packs.size());
        Answer answer = Answer.GOOD;
        for (Path pack : packs) {
          answer = answer.and(enter(pack, layout, register));
          progress.done(PackFiles.stem(pack));
        }
        return answer;
      }
    } catch (IOException e) {
      return Answer.refused(Trouble.inWords(e));
    } catch (RegisterException e) {
      return Answer.refused("error: " + e.getMessage());
    }
  }

  private Answer enter(Path file, Layout layout, Register register)
      throws IOException, RegisterException {
    Reading<PackFile> reading = Disk.sources().pack(Disk.name(file));
    if (!(reading instanceof Reading.Good<PackFile> good)) {
      return Answer.of(reading.problems());
    }
    String name = PackFiles.stem(file);
    Optional<Entry> latest = register.latest(name);
    if (latest.isPresent() && latest.get().number() >= good.value().issue().number()) {
      return Answer.refused(
          "%s: error: %s is registered already\n  Maybe use reissue, which counts on from it"
              .formatted(file, latest.get().name()));
    }
    Differences differences =
        new DifferenceFinder(layout.messages()).of(file, good.value(), Optional.empty());
    if (!differences.failures().isEmpty()) {
      return Answer.refused(String.join("\n", differences.failures()));
    }
    Laid laid = new IssuePapers(layout, false, Concern.NOBODY).of(differences, paper -> {});
    Issued issued =
        new Issued(Maker.of(layout), Because.FIRST, laid.papers(), differences.sheets());
    Entry entry = Kits.issued(new Archive(store.archive()), name, good.value(), issued);
    register.issue(by, entry);
    Answer placed = new Placing(store, out).place(file, entry);
    if (placed.good()) {
      register.delivered(by, entry);
    }
    return Answer.of(reading.problems()).and(placed).and(Answer.said(entry.name() + " registered"));
  }
}
