package gradepost.app.issue;

import gradepost.app.export.HandOver;
import gradepost.app.store.Paper;
import gradepost.app.store.Unplanned;
import gradepost.briefing.Briefing;
import gradepost.briefing.Messages;
import gradepost.briefing.Reference;
import gradepost.briefing.compose.Composer;
import gradepost.briefing.reference.ReferenceWriter;
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
import java.util.stream.Stream;

/** Makes the papers of a pack: plan, compose, lay out; then what needs all of them. */
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
   * @param pages of the paper, where anything more is made from them
   * @param failures why the plan is not fit for issue
   */
  public record Made(
      Task task,
      Plan plan,
      Optional<Briefing> briefing,
      List<Paper> papers,
      List<Paper> pages,
      List<String> failures) {
    /** Copies the lists. */
    public Made {
      papers = List.copyOf(papers);
      pages = List.copyOf(pages);
      failures = List.copyOf(failures);
    }

    private Stream<ReferenceWriter.Paper> looked() {
      return briefing.stream().map(b -> new ReferenceWriter.Paper(task.stem(), plan, b));
    }
  }

  /** How many papers there are to be made; none of what cannot be read. */
  public static int papers(List<Reading<PackFile>> readings) {
    return readings.stream().mapToInt(r -> r.found().map(p -> Task.of(p).size()).orElse(0)).sum();
  }

  /** Plans and composes a paper, and lays nothing out. */
  public Made composed(Task task, Messages messages) throws Unplanned {
    Plan plan = task.plan(file);
    List<String> failures = Failures.inWords(file, task, plan);
    Optional<Briefing> briefing =
        failures.isEmpty() ? Optional.of(briefing(task, plan, messages)) : Optional.empty();
    return new Made(task, plan, briefing, List.of(), List.of(), failures);
  }

  /** Makes those that need nothing of the other papers. */
  public Made of(Task task, Layout layout) throws IOException {
    Made composed = composed(task, layout.messages());
    return composed.briefing().isEmpty()
        ? composed
        : laidOut(task, composed.plan(), composed.briefing().get(), layout);
  }

  private Briefing briefing(Task task, Plan plan, Messages messages) {
    return new Composer(messages)
        .compose(
            task.title(),
            List.of(plan),
            Issue.of(pack, task.assignment()),
            List.of(),
            pack.accepted(),
            pack.withdrawn(),
            pack.pictures())
        .filed(new Reference.Files(task.stem(), reference()));
  }

  private Made laidOut(Task task, Plan plan, Briefing briefing, Layout layout) throws IOException {
    List<Paper> papers = new ArrayList<>();
    List<Paper> pages = looked() ? layout.papers(task.stem(), briefing) : List.of();
    if (wanted.contains(PaperKind.BRIEFING)) {
      papers.addAll(pages);
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
    return new Made(task, plan, Optional.of(briefing), papers, pages, List.of());
  }

  /** Whether any paper wants the reference. */
  private boolean looked() {
    return wanted.contains(PaperKind.BRIEFING) || wanted.stream().anyMatch(PaperKind::asks);
  }

  private String reference() {
    return Reference.Files.ofPack(pack.id());
  }

  /**
   * Makes what needs all papers: the reference, and what names its pages.
   *
   * @param all papers of the pack, in their order
   */
  public List<Paper> beside(List<Made> all, LayoutPool presses) throws IOException {
    if (!looked() || all.isEmpty()) {
      return List.of();
    }
    List<ReferenceWriter.Paper> looked = all.stream().flatMap(Made::looked).toList();
    List<SignOff.Looked> laid =
        presses.all(
            List.of(
                layout -> {
                  Reference reference =
                      ReferenceWriter.reference(
                          layout.messages(), reference(), DifferenceFinder.heading(pack), looked);
                  return new SignOff.Looked(reference, layout.papers(reference.file(), reference));
                }));
    List<Paper> out = new ArrayList<>();
    if (wanted.contains(PaperKind.BRIEFING)) {
      laid.forEach(l -> out.addAll(l.pages()));
    }
    out.addAll(signOff(all, laid.get(0), presses));
    return out;
  }

  private List<Paper> signOff(List<Made> all, SignOff.Looked looked, LayoutPool presses)
      throws IOException {
    Optional<SignOffRules> rules =
        pack.policy().signOff().filter(r -> wanted.stream().anyMatch(PaperKind::asks));
    List<LayoutPool.Job<List<Paper>>> jobs = new ArrayList<>();
    for (Made made : all) {
      if (rules.isPresent() && made.task().assignment().ordinary()) {
        jobs.add(layout -> signOff(made, rules.get(), looked, others(made, all), layout));
      }
    }
    return presses.all(jobs).stream().flatMap(List::stream).toList();
  }

  /** Plans of the same direction with other formations: whose points are mistaken. */
  private static List<Plan> others(Made made, List<Made> all) {
    return all.stream()
        .filter(m -> !m.task().equals(made.task()) && m.task().assignment().ordinary())
        .map(Made::plan)
        .filter(p -> p.assignment().direction() == made.plan().assignment().direction())
        .toList();
  }

  private List<Paper> signOff(
      Made made, SignOffRules rules, SignOff.Looked looked, List<Plan> others, Layout layout)
      throws IOException {
    return new SignOff(layout)
        .papers(
            made.task().stem(),
            made.plan(),
            pack,
            rules,
            seed.orElse(SignOff.seed(pack)),
            made.briefing().orElseThrow(),
            made.pages(),
            looked,
            others,
            wanted);
  }
}
