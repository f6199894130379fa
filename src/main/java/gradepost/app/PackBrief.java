package gradepost.app;

import gradepost.app.issue.LayoutPool;
import gradepost.app.issue.PaperMaker;
import gradepost.app.issue.Task;
import gradepost.app.issue.TrainCheck;
import gradepost.app.store.Answer;
import gradepost.app.store.Delivery;
import gradepost.app.store.Paper;
import gradepost.app.store.Progress;
import gradepost.pack.PaperKind;
import gradepost.source.pack.PackDates;
import gradepost.source.pack.PackFile;
import gradepost.yaml.Problems;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** The way of one pack, from what was read to the papers in their place. */
final class PackBrief {
  private final Path file;
  private final PackFile pack;
  private final Brief.Wish wish;
  private final Progress progress;

  PackBrief(Path file, PackFile pack, Brief.Wish wish, Progress progress) {
    this.file = file;
    this.pack = pack;
    this.wish = wish;
    this.progress = progress;
  }

  /** Plans, lays out, puts in place. */
  Answer of(LayoutPool presses, Delivery delivery) throws IOException {
    Set<PaperKind> wanted = EnumSet.copyOf(pack.papers());
    wanted.addAll(wish.with());
    if (wanted.stream().anyMatch(PaperKind::asks) && pack.policy().signOff().isEmpty()) {
      return Answer.refused(file + PaperMaker.NO_RULES);
    }
    Problems early = pack.early();
    if (early.hasErrors()) {
      return Answer.of(early);
    }
    Optional<PackDates> dates = wish.now().map(moment -> new PackDates(pack, moment));
    Answer told =
        dates
            .map(d -> wish.expiredToo() ? d.problemsOfWanted() : d.problems())
            .map(problems -> Answer.of(problems, wish.failOn()))
            .orElse(Answer.GOOD);
    if (dates.filter(PackDates::over).isPresent() && !wish.expiredToo()) {
      return told.and(Answer.refused(AppText.BRIEF_EXPIRED.with(file.toString()).inWords()));
    }
    PaperMaker maker = new PaperMaker(file, pack, wanted, wish.seed(), wish.json());
    List<LayoutPool.Job<PaperMaker.Made>> jobs = new ArrayList<>();
    for (Task task : Task.of(pack)) {
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
    Answer found = told.and(Answer.of(trains.warnings(pack), wish.failOn()));
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
