package gradepost.app;

import gradepost.app.issue.LayoutPool;
import gradepost.app.issue.PaperMaker;
import gradepost.app.issue.Task;
import gradepost.app.issue.TrainCheck;
import gradepost.app.store.Answer;
import gradepost.app.store.Delivery;
import gradepost.app.store.Disk;
import gradepost.app.store.FailOn;
import gradepost.app.store.IoErrorText;
import gradepost.app.store.PackFiles;
import gradepost.app.store.Paper;
import gradepost.app.store.Progress;
import gradepost.pack.PaperKind;
import gradepost.render.chart.TemplateFault;
import gradepost.source.Sources;
import gradepost.source.pack.PackDates;
import gradepost.source.pack.PackFile;
import gradepost.yaml.Problems;
import gradepost.yaml.Reading;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;

/** Makes the papers of packs: read, assign, plan, compose, lay out, put in place. */
public final class Brief {
  private final Optional<Path> templates;
  private final boolean json;
  private final Set<PaperKind> with;
  private final OptionalLong seed;
  private final Progress progress;
  private final Optional<LocalDateTime> now;
  private final boolean expiredToo;
  private final FailOn failOn;

  /**
   * @param templates folder of a depot's own templates
   * @param json whether the hand-overs are written too
   */
  public Brief(Optional<Path> templates, boolean json, Progress progress) {
    this(templates, json, Set.of(), OptionalLong.empty(), progress);
  }

  /**
   * @param with papers that are made beside those that the pack asks for
   * @param seed of the first knowledge paper; the issue's own where empty
   */
  public Brief(
      Optional<Path> templates,
      boolean json,
      Set<PaperKind> with,
      OptionalLong seed,
      Progress progress) {
    this(templates, json, with, seed, progress, Optional.empty(), false, FailOn.ERRORS);
  }

  private Brief(
      Optional<Path> templates,
      boolean json,
      Set<PaperKind> with,
      OptionalLong seed,
      Progress progress,
      Optional<LocalDateTime> now,
      boolean expiredToo,
      FailOn failOn) {
    this.templates = templates;
    this.json = json;
    this.with = Set.copyOf(with);
    this.seed = seed;
    this.progress = progress;
    this.now = now;
    this.expiredToo = expiredToo;
    this.failOn = failOn;
  }

  /**
   * The same with a clock: it says what ended or begins, and makes nothing of an expired pack.
   *
   * @param expired whether the clerk wants the papers of an expired pack all the same
   */
  public Brief at(Clock clock, boolean expired) {
    Optional<LocalDateTime> moment = Optional.of(LocalDateTime.now(clock));
    return new Brief(templates, json, with, seed, progress, moment, expired, failOn);
  }

  /** The same that is not good from these problems on; the papers are made all the same. */
  public Brief failingOn(FailOn limit) {
    return new Brief(templates, json, with, seed, progress, now, expiredToo, limit);
  }

  /** Makes the papers of these packs, or of every pack below these folders. */
  public Answer of(List<Path> named, Path out) {
    try {
      List<Path> packs = PackFiles.packs(named);
      Optional<String> obstacle = PackFiles.obstacle(named, packs);
      if (obstacle.isPresent()) {
        return Answer.refused(obstacle.get());
      }
      try (LayoutPool presses = new LayoutPool(templates)) {
        return briefAll(packs, presses, new Delivery(out));
      }
    } catch (IOException e) {
      return Answer.refused(IoErrorText.inWords(e));
    }
  }

  private Answer briefAll(List<Path> packs, LayoutPool presses, Delivery delivery)
      throws IOException {
    Sources sources = Disk.sources();
    List<Reading<PackFile>> readings =
        packs.stream().map(pack -> sources.pack(Disk.name(pack))).toList();
    presses.ready();
    progress.expect(PaperMaker.papers(packs, readings));
    Answer answer = Answer.GOOD;
    for (int i = 0; i < packs.size(); i++) {
      Reading<PackFile> reading = readings.get(i);
      answer = answer.and(Answer.of(reading.problems(), failOn));
      if (reading.found().isPresent()) {
        answer = answer.and(alone(packs.get(i), reading.found().get(), presses, delivery));
      }
    }
    return answer;
  }

  /** A pack that cannot be laid out does not stop the others. */
  private Answer alone(Path file, PackFile pack, LayoutPool presses, Delivery delivery)
      throws IOException {
    try {
      return brief(file, pack, presses, delivery);
    } catch (TemplateFault e) {
      return Answer.refused(file + ": error: " + e.getMessage());
    }
  }

  /** The way of one pack. */
  private Answer brief(Path file, PackFile pack, LayoutPool presses, Delivery delivery)
      throws IOException {
    Set<PaperKind> wanted = EnumSet.copyOf(pack.papers());
    wanted.addAll(with);
    if (wanted.stream().anyMatch(PaperKind::asks) && pack.policy().signOff().isEmpty()) {
      return Answer.refused(file + PaperMaker.NO_RULES);
    }
    Problems early = pack.early();
    if (early.hasErrors()) {
      return Answer.of(early);
    }
    Optional<PackDates> dates = now.map(moment -> new PackDates(pack, moment));
    Answer told = dates.map(d -> Answer.of(d.problems())).orElse(Answer.GOOD);
    if (dates.filter(PackDates::over).isPresent() && !expiredToo) {
      return told.and(Answer.refused(AppText.BRIEF_EXPIRED.with(file.toString()).inWords()));
    }
    PaperMaker maker = new PaperMaker(file, pack, wanted, seed, json);
    List<LayoutPool.Job<PaperMaker.Made>> jobs = new ArrayList<>();
    for (Task task : Task.of(file, pack)) {
      jobs.add(
          layout -> {
            PaperMaker.Made made = maker.of(task, layout);
            done(task);
            return made;
          });
    }
    List<PaperMaker.Made> all = presses.all(jobs);
    TrainCheck trains = new TrainCheck();
    all.forEach(made -> trains.add(made.plan()));
    Answer found = told.and(Answer.of(trains.warnings(pack), failOn));
    List<String> failures = all.stream().flatMap(made -> made.failures().stream()).toList();
    if (!failures.isEmpty()) {
      return found.and(Answer.refused(String.join("\n", failures)));
    }
    List<Paper> papers = new ArrayList<>();
    all.forEach(made -> papers.addAll(made.papers()));
    papers.addAll(maker.beside(all, presses));
    return found.and(Answer.wrote(delivery.put(papers)));
  }

  private void done(Task task) {
    synchronized (progress) {
      progress.done(task.stem());
    }
  }
}
