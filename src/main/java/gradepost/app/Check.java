package gradepost.app;

import gradepost.app.export.Sarif;
import gradepost.app.issue.Failures;
import gradepost.app.issue.Task;
import gradepost.app.issue.TrainCheck;
import gradepost.app.store.Answer;
import gradepost.app.store.Disk;
import gradepost.app.store.FailOn;
import gradepost.app.store.IoErrorText;
import gradepost.app.store.PackFiles;
import gradepost.motion.NoEnd;
import gradepost.plan.Plan;
import gradepost.source.Sources;
import gradepost.source.file.FileKind;
import gradepost.source.pack.PackDates;
import gradepost.source.pack.PackFile;
import gradepost.text.Mistake;
import gradepost.yaml.Problem;
import gradepost.yaml.Problems;
import gradepost.yaml.Reading;
import gradepost.yaml.Severity;
import gradepost.yaml.SourcePosition;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads files of data, drives the trains of packs, and says what is wrong with them. */
public final class Check {
  private final Optional<LocalDateTime> now;
  private final FailOn failOn;

  /** Without a clock: nothing is said of what ended, or begins. */
  public Check() {
    this(Optional.empty(), FailOn.WARNINGS);
  }

  /** With a clock: what has ended, begins or expired is said too. */
  public Check(Clock clock) {
    this(Optional.of(LocalDateTime.now(clock)), FailOn.WARNINGS);
  }

  private Check(Optional<LocalDateTime> now, FailOn failOn) {
    this.now = now;
    this.failOn = failOn;
  }

  /** The same that is not good from these problems on. */
  public Check failingOn(FailOn limit) {
    return new Check(now, limit);
  }

  /** Checks these files, or every YAML file below these folders; says it in words. */
  public Answer of(List<Path> named) {
    try {
      List<Path> files = PackFiles.all(named);
      if (files.isEmpty()) {
        return nothingThere(named);
      }
      Answer answer = Answer.of(problems(files), failOn);
      return answer.good()
          ? answer.and(
              Answer.said(
                  files.size()
                      + " files checked, "
                      + (answer.problems().isEmpty() ? "nothing found" : "notes only")))
          : answer;
    } catch (IOException e) {
      return Answer.refused(IoErrorText.inWords(e));
    }
  }

  /** The same as SARIF, which editors and build servers show in place. */
  public Answer sarif(List<Path> named) {
    try {
      List<Path> files = PackFiles.all(named);
      if (files.isEmpty()) {
        return nothingThere(named);
      }
      Problems problems = problems(files);
      Answer log = Answer.said(Sarif.of(problems));
      return Answer.of(problems, failOn).good() ? log : log.butFound();
    } catch (IOException e) {
      return Answer.refused(IoErrorText.inWords(e));
    }
  }

  private static Answer nothingThere(List<Path> named) {
    return Answer.refused(named.get(0) + ": error: no YAML file below this folder");
  }

  private Problems problems(List<Path> files) {
    Sources sources = Disk.sources();
    Problems problems = Problems.NONE;
    for (Path file : files) {
      String name = Disk.name(file);
      boolean isPack = sources.kind(name).found().filter(kind -> kind == FileKind.PACK).isPresent();
      problems = problems.and(isPack ? pack(file, sources.pack(name)) : sources.check(name));
    }
    List<Problem> same = new ArrayList<>();
    for (PackFiles.SameId two :
        PackFiles.sameId(files.stream().filter(PackFiles::isPack).toList())) {
      Mistake mistake = AppText.SAME_ID.with(Disk.name(two.other()), two.id(), two.free());
      same.add(
          new Problem(new SourcePosition(Disk.name(two.pack()), 1, 1), Severity.ERROR, mistake));
    }
    return problems.and(new Problems(same));
  }

  /** A pack is checked with its trains: planned, and held against the lineside. */
  private Problems pack(Path file, Reading<PackFile> reading) {
    return reading.found().map(pack -> pack(file, pack, reading)).orElseGet(reading::problems);
  }

  private Problems pack(Path file, PackFile pack, Reading<PackFile> reading) {
    TrainCheck trains = new TrainCheck();
    List<Problem> unfit = new ArrayList<>();
    for (Task task : Task.of(pack)) {
      try {
        Plan plan = task.plan();
        trains.add(plan);
        Failures.of(task, plan).forEach(failure -> unfit.add(unfit(file, failure)));
      } catch (NoEnd e) {
        unfit.add(unfit(file, Failures.of(task, e)));
      }
    }
    Problems dates = now.map(n -> new PackDates(pack, n).problems()).orElse(Problems.NONE);
    return reading
        .problems()
        .and(pack.early())
        .and(dates)
        .and(trains.problems(pack))
        .and(new Problems(unfit));
  }

  private static Problem unfit(Path file, Mistake failure) {
    return new Problem(
        new SourcePosition(Disk.name(file), 1, 1), Severity.ERROR, failure, Sarif.UNFIT);
  }
}
