package gradepost.app;

import gradepost.app.issue.ArchivedInputs;
import gradepost.app.issue.Concern;
import gradepost.app.issue.DifferenceFinder;
import gradepost.app.issue.Differences;
import gradepost.app.issue.Issue;
import gradepost.app.issue.IssuePapers;
import gradepost.app.issue.LastIssue;
import gradepost.app.issue.Layout;
import gradepost.app.issue.Maker;
import gradepost.app.store.Answer;
import gradepost.app.store.Archive;
import gradepost.app.store.Delivery;
import gradepost.app.store.Digest;
import gradepost.app.store.Disk;
import gradepost.app.store.IoErrorText;
import gradepost.app.store.OfficePaper;
import gradepost.app.store.Paper;
import gradepost.app.store.Progress;
import gradepost.app.store.SharedArchive;
import gradepost.app.store.Store;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import gradepost.source.Sources;
import gradepost.source.pack.PackFile;
import gradepost.text.Mistake;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Makes the papers of a registered issue again and compares them, byte for byte. */
public final class Reproduce {
  private final Store store;
  private final Optional<Path> templates;
  private final Progress progress;

  public Reproduce(Store store, Optional<Path> templates, Progress progress) {
    this.store = store;
    this.templates = templates;
    this.progress = progress;
  }

  /**
   * Makes an issue again from the archive and compares it with what was registered.
   *
   * @param called "valley/4", or the beginning of a fingerprint
   * @param out where the papers go; empty where they are only compared
   */
  public Answer of(String called, Optional<Path> out) {
    if (!store.exists()) {
      return store.missing();
    }
    try (Register register = store.open()) {
      Layout.requireFit(templates);
      Optional<Entry> entry = register.find(called);
      if (entry.isEmpty()) {
        return Store.unknown(register, called);
      }
      Optional<Answer> elsewhere = SharedArchive.elsewhere(store, register);
      if (elsewhere.isPresent()) {
        return elsewhere.get();
      }
      Optional<Entry> base = Optional.empty();
      if (entry.get().base().isPresent()) {
        base = register.issue(entry.get().pack(), entry.get().base().get());
      }
      return reproduce(entry.get(), base, register.checks().checker(entry.get()), out);
    } catch (IOException e) {
      return Answer.refused(IoErrorText.inWords(e));
    } catch (RegisterException e) {
      return Answer.refused("error: " + e.getMessage());
    }
  }

  private Answer reproduce(Entry entry, Optional<Entry> base, String checker, Optional<Path> out)
      throws IOException {
    Archive archive = store.kept();
    List<String> damaged =
        new ArrayList<>(ArchivedInputs.damaged(archive, entry, entry.inputs(), "input"));
    damaged.addAll(
        ArchivedInputs.damaged(archive, entry, OfficePaper.wanted(entry, archive), "paper"));
    if (base.isPresent()) {
      damaged.addAll(ArchivedInputs.damaged(archive, base.get(), base.get().inputs(), "input"));
    }
    Sources sources = Disk.sources();
    Optional<PackFile> pack =
        ArchivedInputs.pack(sources, archive, entry)
            .map(p -> checker.isEmpty() ? p : p.checked(Optional.of(checker)));
    Optional<LastIssue> before = Optional.empty();
    if (base.isPresent()) {
      Entry then = base.get();
      before =
          ArchivedInputs.pack(sources, archive, then).map(p -> new LastIssue(p, then.sheets()));
    }
    if (pack.isEmpty() || before.isPresent() != base.isPresent()) {
      damaged.add("error: " + AppText.NOT_MADE_AGAIN.with(entry.name()).inWords());
      return new Answer(List.of(), List.of(), damaged, false);
    }
    String fingerprint = Issue.fingerprint(pack.get().inputs());
    if (!fingerprint.equals(entry.fingerprint())) {
      damaged.add(
          "error: " + AppText.OTHER_INPUTS.with(fingerprint, entry.fingerprint()).inWords());
    }
    Layout layout = new Layout(templates);
    Path file = Path.of("pack-" + entry.pack() + ".yaml");
    Differences differences = new DifferenceFinder(layout.messages()).of(file, pack.get(), before);
    List<Paper> made =
        new IssuePapers(layout, entry.urgent(), Concern.NOBODY)
            .of(differences, progress::done)
            .papers();
    Answer answer = new Answer(List.of(), List.of(), damaged, damaged.isEmpty());
    Answer compared = compared(entry, made, Maker.of(layout));
    // Papers that are the same do not make up for an archive that is damaged.
    answer =
        damaged.isEmpty()
            ? compared
            : answer.and(new Answer(List.of(), List.of(), compared.problems(), false));
    return out.isPresent()
        ? answer.and(
            Answer.wrote(
                new Delivery(out.get())
                    .putTogether("%s-issue-%d".formatted(entry.pack(), entry.number()), made)))
        : answer;
  }

  private static Answer compared(Entry entry, List<Paper> made, String maker) {
    Map<String, String> kept = new LinkedHashMap<>();
    entry.papers().forEach(p -> kept.put(p.name(), p.digest()));
    if (kept.isEmpty()) {
      return Answer.said(AppText.TAKEN_IN.with(entry.name()).inWords());
    }
    List<String> differ = new ArrayList<>();
    for (Paper paper : made) {
      if (!Digest.of(paper.bytes()).equals(kept.getOrDefault(paper.name(), ""))) {
        differ.add("error: " + AppText.PAPER_DIFFERS.with(entry.name(), paper.name()).inWords());
      }
    }
    if (differ.isEmpty()) {
      return Answer.said(AppText.MADE_AGAIN.with(entry.name(), made.size()).inWords());
    }
    Mistake why =
        maker.equals(entry.maker())
            ? AppText.SAME_MAKER.with(maker)
            : AppText.OTHER_MAKER.with(entry.maker(), maker);
    differ.add(why.inWords());
    return new Answer(List.of(), List.of(), differ, false);
  }
}
