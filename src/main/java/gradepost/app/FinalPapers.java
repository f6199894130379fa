package gradepost.app;

import gradepost.app.issue.ArchivedInputs;
import gradepost.app.issue.DifferenceFinder;
import gradepost.app.issue.Differences;
import gradepost.app.issue.IssuePapers;
import gradepost.app.issue.LastIssue;
import gradepost.app.issue.Layout;
import gradepost.app.making.Concerns;
import gradepost.app.store.Answer;
import gradepost.app.store.Archive;
import gradepost.app.store.Delivery;
import gradepost.app.store.Disk;
import gradepost.app.store.IoErrorText;
import gradepost.app.store.Lock;
import gradepost.app.store.Paper;
import gradepost.app.store.Progress;
import gradepost.app.store.Store;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Entry.Kept;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.Register.By;
import gradepost.reissue.register.RegisterException;
import gradepost.source.pack.PackFile;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Somebody else than its preparer has checked an issue: its papers are made again from the archive,
 * with the checker's name in the place of the word DRAFT. Nothing else in them differs. The data,
 * their fingerprint and the draft's papers stay as they were registered.
 */
public final class FinalPapers {
  private final Store store;
  private final Path out;
  private final Optional<Path> templates;
  private final By by;

  /**
   * Makes ready for a checker.
   *
   * @param out folder in which the folders of papers are
   * @param templates folder of a depot's own templates
   * @param checker who has checked, by name
   */
  public FinalPapers(Store store, Path out, Optional<Path> templates, Clock clock, String checker) {
    this.store = store;
    this.out = out;
    this.templates = templates;
    this.by = store.by(checker, clock);
  }

  /** Notes these issues as checked, and puts their final papers in place. */
  public Answer of(List<String> issues, Duration patience, Progress progress) {
    if (!store.exists()) {
      return store.missing();
    }
    try (Lock lock = store.take(Lock.holder(by), patience);
        Register register = store.open()) {
      Layout.requireFit(templates);
      lock.require();
      progress.expect(issues.size());
      Answer answer = Answer.GOOD;
      for (String called : issues) {
        answer = answer.and(one(called, register));
        progress.done(called);
      }
      return answer;
    } catch (IOException e) {
      return Answer.refused(IoErrorText.inWords(e));
    } catch (RegisterException e) {
      return Answer.refused("error: " + e.getMessage());
    }
  }

  private Answer one(String called, Register register) throws IOException {
    try {
      Optional<Entry> found = register.find(called);
      return found.isEmpty() ? Store.unknown(register, called) : checked(found.get(), register);
    } catch (RegisterException e) {
      return Answer.refused("error: " + e.getMessage());
    }
  }

  private Answer checked(Entry entry, Register register) throws IOException, RegisterException {
    PackFile pack = pack(entry);
    register.checks().require(entry, pack.issue().preparedBy(), by.who());
    Optional<LastIssue> before = Optional.empty();
    if (entry.base().isPresent()) {
      Entry then = register.issue(entry.pack(), entry.base().get()).orElseThrow();
      before = Optional.of(new LastIssue(pack(then), then.sheets()));
    }
    Layout layout = new Layout(templates);
    Path file = Path.of("pack-" + entry.pack() + ".yaml");
    Differences differences =
        new DifferenceFinder(layout.messages())
            .of(file, pack.checked(Optional.of(by.who())), before);
    List<Paper> made =
        new IssuePapers(layout, entry.urgent(), Concerns.of(register, layout, entry.pack()))
            .of(differences, paper -> {})
            .all();
    Archive archive = store.kept();
    List<Kept> papers = new ArrayList<>();
    for (Paper paper : made) {
      papers.add(new Kept(paper.name(), archive.keep(paper.bytes())));
    }
    register.checks().checked(by, entry, papers);
    String folder = "%s-issue-%d".formatted(entry.pack(), entry.number());
    return Answer.wrote(new Delivery(out).putTogether(folder, made))
        .and(Answer.said("%s: checked by %s".formatted(entry.name(), by.who())));
  }

  private PackFile pack(Entry entry) throws IOException, RegisterException {
    return ArchivedInputs.pack(Disk.sources(), store.kept(), entry)
        .orElseThrow(() -> new RegisterException(AppText.INPUTS_LOST.with(entry.name())));
  }
}
