package gradepost.app;

import gradepost.app.export.HandOver;
import gradepost.app.issue.Cards;
import gradepost.app.issue.Failures;
import gradepost.app.issue.Issue;
import gradepost.app.issue.Layout;
import gradepost.app.issue.LayoutPool;
import gradepost.app.issue.SignOff;
import gradepost.app.issue.Task;
import gradepost.app.issue.TrainCheck;
import gradepost.app.store.Answer;
import gradepost.app.store.Delivery;
import gradepost.app.store.Disk;
import gradepost.app.store.IoErrorText;
import gradepost.app.store.PackFiles;
import gradepost.app.store.Paper;
import gradepost.app.store.Progress;
import gradepost.briefing.Briefing;
import gradepost.briefing.compose.Composer;
import gradepost.pack.PaperKind;
import gradepost.plan.Plan;
import gradepost.policy.SignOffRules;
import gradepost.render.chart.TemplateFault;
import gradepost.source.Sources;
import gradepost.source.pack.PackFile;
import gradepost.yaml.Problems;
import gradepost.yaml.Reading;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;

/** Makes the papers of packs: read, assign, plan, compose, lay out, put in place. */
public final class Brief {
  private static final String NO_RULES =
      ": error: sign-off papers are wanted, and the policy has no rules for them;"
          + " allowed: a policy with the group sign-off";

  private final Optional<Path> templates;
  private final boolean json;
  private final Set<PaperKind> with;
  private final OptionalLong seed;
  private final Progress progress;

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
    this.templates = templates;
    this.json = json;
    this.with = Set.copyOf(with);
    this.seed = seed;
    this.progress = progress;
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
    progress.expect(readings.stream().mapToInt(Brief::papers).sum());
    Answer answer = Answer.GOOD;
    for (int i = 0; i < packs.size(); i++) {
      Reading<PackFile> reading = readings.get(i);
      answer = answer.and(Answer.of(reading.problems()));
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

  /** One paper of a pack with what goes with it. */
  private record Made(Plan plan, List<Paper> papers, List<String> failures) {}

  /** The way of one pack. */
  private Answer brief(Path file, PackFile pack, LayoutPool presses, Delivery delivery)
      throws IOException {
    Set<PaperKind> wanted = EnumSet.copyOf(pack.papers());
    wanted.addAll(with);
    Optional<SignOffRules> rules =
        pack.policy().signOff().filter(r -> wanted.contains(PaperKind.SIGN_OFF));
    if (wanted.contains(PaperKind.SIGN_OFF) && rules.isEmpty()) {
      return Answer.refused(file + NO_RULES);
    }
    Problems early = pack.early();
    if (early.hasErrors()) {
      return Answer.of(early);
    }
    List<LayoutPool.Job<Made>> jobs = new ArrayList<>();
    for (Task task : Task.of(file, pack)) {
      jobs.add(layout -> made(file, task, pack, wanted, rules, layout));
    }
    List<Paper> papers = new ArrayList<>();
    List<String> failures = new ArrayList<>();
    TrainCheck trains = new TrainCheck();
    for (Made made : presses.all(jobs)) {
      trains.add(made.plan());
      papers.addAll(made.papers());
      failures.addAll(made.failures());
    }
    Answer found = Answer.of(trains.problems(pack));
    return failures.isEmpty()
        ? found.and(Answer.wrote(delivery.put(papers)))
        : found.and(Answer.refused(String.join("\n", failures)));
  }

  /** The way of one paper. */
  private Made made(
      Path file,
      Task task,
      PackFile pack,
      Set<PaperKind> wanted,
      Optional<SignOffRules> rules,
      Layout layout)
      throws IOException {
    Plan plan = task.plan(file);
    List<String> failures = Failures.inWords(file, task, plan);
    if (!failures.isEmpty()) {
      done(task);
      return new Made(plan, List.of(), failures);
    }
    Briefing briefing =
        new Composer(layout.messages())
            .compose(
                task.title(),
                List.of(plan),
                Issue.of(pack, task.assignment()),
                List.of(),
                pack.accepted(),
                pack.withdrawn());
    List<Paper> papers = new ArrayList<>();
    List<Paper> faces = layout.papers(task.stem(), briefing);
    if (wanted.contains(PaperKind.BRIEFING)) {
      papers.addAll(faces);
    }
    if (rules.isPresent()) {
      papers.addAll(
          new SignOff(layout)
              .papers(
                  task.stem(),
                  plan,
                  pack,
                  rules.get(),
                  seed.orElse(SignOff.seed(pack)),
                  briefing,
                  faces.get(0).bytes()));
    }
    if (wanted.contains(PaperKind.CARDS)) {
      papers.addAll(Cards.papers(task.stem(), briefing, pack.cards(), layout));
    }
    if (json) {
      papers.add(
          new Paper(task.stem() + ".json", HandOver.of(plan, Issue.fingerprint(pack.inputs()))));
    }
    done(task);
    return new Made(plan, papers, List.of());
  }

  private void done(Task task) {
    synchronized (progress) {
      progress.done(task.stem());
    }
  }

  private static int papers(Reading<PackFile> reading) {
    return reading
        .found()
        .map(pack -> pack.directions().size() * pack.formations().size())
        .orElse(0);
  }
}
