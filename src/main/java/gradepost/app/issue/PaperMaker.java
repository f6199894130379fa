package gradepost.app.issue;

import gradepost.app.export.HandOver;
import gradepost.app.store.Paper;
import gradepost.briefing.Briefing;
import gradepost.briefing.compose.Composer;
import gradepost.pack.PaperKind;
import gradepost.plan.Plan;
import gradepost.policy.SignOffRules;
import gradepost.source.pack.PackFile;
import gradepost.yaml.Reading;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.stream.IntStream;

/** Makes the papers of one direction and formation of a pack: plan, compose, lay out. */
public final class PaperMaker {
  /** Why a pack that wants sign-off papers cannot have them, after the name of its file. */
  public static final String NO_RULES =
      ": error: sign-off papers are wanted, and the policy has no rules for them;"
          + " allowed: a policy with the group sign-off";

  private final Path file;
  private final PackFile pack;
  private final Set<PaperKind> wanted;
  private final OptionalLong seed;
  private final boolean json;

  /**
   * The papers of one pack.
   *
   * @param file of the pack, for messages
   * @param wanted which papers are made; sign-off papers only if the policy has rules for them, and
   *     only of the ordinary run
   * @param seed of the first knowledge paper; the issue's own where empty
   * @param json whether the hand-over is written too
   */
  public PaperMaker(
      Path file, PackFile pack, Set<PaperKind> wanted, OptionalLong seed, boolean json) {
    this.file = file;
    this.pack = pack;
    this.wanted = Set.copyOf(wanted);
    this.seed = seed;
    this.json = json;
  }

  /**
   * What was made.
   *
   * @param papers none where there are failures
   * @param failures why the plan is not fit for issue
   */
  public record Made(Plan plan, List<Paper> papers, List<String> failures) {
    /** Copies the lists. */
    public Made {
      papers = List.copyOf(papers);
      failures = List.copyOf(failures);
    }
  }

  /** How many papers there are to be made; none of what cannot be read. */
  public static int papers(List<Path> files, List<Reading<PackFile>> readings) {
    return IntStream.range(0, files.size())
        .map(i -> readings.get(i).found().map(p -> Task.of(files.get(i), p).size()).orElse(0))
        .sum();
  }

  /** Makes them. */
  public Made of(Task task, Layout layout) throws IOException {
    Plan plan = task.plan(file);
    List<String> failures = Failures.inWords(file, task, plan);
    return failures.isEmpty()
        ? new Made(plan, papers(task, plan, layout), List.of())
        : new Made(plan, List.of(), failures);
  }

  private List<Paper> papers(Task task, Plan plan, Layout layout) throws IOException {
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
    Layout.Pack pages = layout.pack(task.stem(), briefing);
    if (wanted.contains(PaperKind.BRIEFING)) {
      papers.addAll(pages.all());
    }
    Optional<SignOffRules> rules =
        pack.policy()
            .signOff()
            .filter(r -> wanted.contains(PaperKind.SIGN_OFF))
            .filter(r -> task.assignment().degraded().isEmpty());
    if (rules.isPresent()) {
      long first = seed.orElse(SignOff.seed(pack));
      papers.addAll(
          new SignOff(layout).papers(task.stem(), plan, pack, rules.get(), first, briefing, pages));
    }
    if (wanted.contains(PaperKind.CARDS)) {
      papers.addAll(Cards.papers(task.stem(), briefing, pack.cards(), layout));
    }
    if (wanted.contains(PaperKind.WALL)) {
      papers.add(layout.wall(task.stem() + "-wall", briefing));
    }
    if (json) {
      papers.add(
          new Paper(task.stem() + ".json", HandOver.of(plan, Issue.fingerprint(pack.inputs()))));
    }
    return papers;
  }
}
