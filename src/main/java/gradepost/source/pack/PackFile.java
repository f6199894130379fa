package gradepost.source.pack;

import gradepost.pack.CardSize;
import gradepost.pack.FormationRisk;
import gradepost.pack.IssueDetails;
import gradepost.pack.PaperKind;
import gradepost.pack.Pictures;
import gradepost.pack.TemporaryRestriction;
import gradepost.policy.Policy;
import gradepost.route.Accepted;
import gradepost.route.Route;
import gradepost.route.audit.AuditFinding;
import gradepost.route.place.Direction;
import gradepost.source.file.Input;
import gradepost.source.route.SpeedTables;
import gradepost.stock.Formation;
import gradepost.stock.LoadCase;
import gradepost.stock.Stock;
import gradepost.task.Assignment;
import gradepost.task.DegradedRun;
import gradepost.task.Edition;
import gradepost.yaml.Problem;
import gradepost.yaml.Problems;
import gradepost.yaml.Severity;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * A pack and all that it names, read and resolved.
 *
 * @param id what the pack is called: in the register, and at the head of the names of its papers
 * @param notices every notice read, withdrawn ones too, in the order of the files
 * @param noneStated what the files of restrictions state where they have no notice
 * @param accepted findings about its trains for which somebody answers; the route has its own
 * @param cards size of the cab cards
 * @param papers what is printed of it
 * @param editions what is made beside the ordinary papers
 * @param pictures of landmarks, signals and stations of the route
 * @param inputs the pack file first, then each file once in the order in which it is named
 * @param origins where in the files its records stand
 */
public record PackFile(
    String id,
    Optional<String> title,
    Route route,
    Stock stock,
    Policy policy,
    List<TemporaryRestriction> notices,
    List<String> noneStated,
    List<DirectionPart> directions,
    List<Formation> formations,
    LoadCase load,
    IssueDetails issue,
    List<String> highRisk,
    List<FormationRisk> formationRisks,
    List<Accepted> accepted,
    CardSize cards,
    List<PaperKind> papers,
    List<Edition> editions,
    Pictures pictures,
    List<Input> inputs,
    Origins origins) {
  public PackFile {
    notices = List.copyOf(notices);
    noneStated = List.copyOf(noneStated);
    directions = List.copyOf(directions);
    formations = List.copyOf(formations);
    highRisk = List.copyOf(highRisk);
    formationRisks = List.copyOf(formationRisks);
    accepted = List.copyOf(accepted);
    papers = List.copyOf(papers);
    editions = List.copyOf(editions);
    inputs = List.copyOf(inputs);
  }

  /** The same pack, its issue checked by somebody of whom its files say nothing, or by nobody. */
  public PackFile checked(Optional<String> by) {
    return new PackFile(
        id,
        title,
        route,
        stock,
        policy,
        notices,
        noneStated,
        directions,
        formations,
        load,
        issue.checked(by),
        highRisk,
        formationRisks,
        accepted,
        cards,
        papers,
        editions,
        pictures,
        inputs,
        origins);
  }

  /** The notices that stand at some time within the validity of the issue. */
  public List<TemporaryRestriction> standing() {
    return notices.stream()
        .filter(n -> n.standsBetween(issue.validFrom(), issue.validTo()))
        .toList();
  }

  /** The notices that stand no more because they were withdrawn. */
  public List<TemporaryRestriction> withdrawn() {
    return notices.stream()
        .filter(n -> n.status() == TemporaryRestriction.Status.WITHDRAWN)
        .toList();
  }

  /**
   * Restrictions that change, or are withdrawn, only after the issue is valid: until then its
   * papers would say what is not yet in force.
   */
  public Problems early() {
    List<Problem> out = new ArrayList<>();
    for (TemporaryRestriction notice : notices) {
      boolean concerned =
          notice.imposed().isBefore(issue.validTo())
              && directions.stream()
                  .anyMatch(d -> notice.applies().to(d.direction(), Set.copyOf(d.lines())));
      notice
          .changedFrom()
          .filter(changed -> concerned && changed.isAfter(issue.validFrom()))
          .ifPresent(
              changed ->
                  out.add(
                      new Problem(
                          origins.spot(notice, SpeedTables.CHANGED_FROM.name()),
                          Severity.ERROR,
                          PackMistakes.CHANGES_AFTER_THE_START.with(
                              notice.reference(), changed, issue.validFrom()))));
    }
    return new Problems(out);
  }

  /**
   * What its trains were found to be at odds with, less what is accepted, at places in the files.
   */
  public Problems problems(List<AuditFinding> findings) {
    return origins.problems(this, findings);
  }

  /** What is said before all else on the papers of one direction and formation. */
  public List<String> highRisk(Direction direction, String formation) {
    List<DirectionPart> parts =
        directions.stream().filter(p -> p.direction() == direction).toList();
    List<String> out = new ArrayList<>();
    parts.forEach(p -> out.addAll(p.highRisk()));
    Stream.concat(parts.stream().flatMap(p -> p.formationRisks().stream()), formationRisks.stream())
        .filter(r -> r.formation().equals(formation))
        .forEach(r -> out.add(r.item()));
    out.addAll(highRisk);
    return out;
  }

  /** The same pack as that of another issue, with other notices; its inputs stay as they are. */
  public PackFile with(IssueDetails other, List<TemporaryRestriction> restrictions) {
    return new PackFile(
        id,
        title,
        route,
        stock,
        policy,
        restrictions,
        noneStated,
        directions,
        formations,
        load,
        other,
        highRisk,
        formationRisks,
        accepted,
        cards,
        papers,
        editions,
        pictures,
        inputs,
        origins);
  }

  /** What one plan is made for; {@code formation} as the stock file lists it. */
  public Assignment assignment(DirectionPart part, Formation formation) {
    return assignment(part, formation, policy.ordinary());
  }

  /**
   * What the plan of an edition is made for.
   *
   * @throws IllegalArgumentException for one that the policy does not permit
   */
  public Assignment assignment(DirectionPart part, Formation formation, Edition edition) {
    DegradedRun run =
        DegradedRun.of(edition, policy)
            .orElseThrow(() -> new IllegalArgumentException("not permitted: " + edition.name()));
    return assignment(part, formation, policy).with(run);
  }

  private Assignment assignment(DirectionPart part, Formation formation, Policy rules) {
    return new Assignment(
        route,
        part.direction(),
        new LinkedHashSet<>(part.lines()),
        part.junctionRoutes(),
        part.calls(),
        stock,
        part.direction() == Direction.FORWARD ? formation : formation.reversed(),
        load,
        rules,
        standing());
  }
}
