package gradepost.drive;

import gradepost.drive.brake.TrainModels;
import gradepost.drive.check.RuleBreaches;
import gradepost.drive.fallback.EarlierPoints;
import gradepost.drive.fallback.RechargeCaution;
import gradepost.drive.fallback.Recharges;
import gradepost.drive.fallback.Spreads;
import gradepost.drive.leg.ApproachSolution;
import gradepost.plan.Action;
import gradepost.plan.Application;
import gradepost.plan.Approach;
import gradepost.plan.BrakeTest;
import gradepost.plan.Finding;
import gradepost.plan.IfFaster;
import gradepost.plan.Spread;
import gradepost.plan.Telling;
import gradepost.plan.Trace;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.Target;
import gradepost.told.InstructionSet;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Makes the approaches of a run: what was planned for each target, and what is left when a brake
 * gives nothing. The steps of a terminal platform belong to the approach of the stop behind them.
 */
final class Approaches {
  private final Assignment assignment;
  private final TrainModels bench;
  private final Map<Target, Integer> numbers;
  private final List<Action> actions;
  private final List<BrakeTest> tests;
  private final List<RuleBreaches.Breach> breaches;
  private final List<Recharges.Full> recharges;
  private final Applications applications;
  private final PermittedRun permitted;
  private final Map<Target, EarlierPoints.Earlier> earlier;
  private final EarlierPoints points;
  private final Spreads spreads;

  /**
   * @param numbers the approach that each target belongs to
   * @param actions of the whole run
   * @param breaches of rules of driving in it
   * @param recharges of its releases
   * @param earlier where the brake is on before the computed point
   * @param applications of all runs of this plan, as they are known
   * @param permitted the same
   * @param spreads the same
   */
  Approaches(
      Assignment assignment,
      TrainModels bench,
      Ceiling ceiling,
      Map<Target, Integer> numbers,
      List<Action> actions,
      List<BrakeTest> tests,
      List<RuleBreaches.Breach> breaches,
      List<Recharges.Full> recharges,
      Map<Target, EarlierPoints.Earlier> earlier,
      Applications applications,
      PermittedRun permitted,
      Spreads spreads) {
    this.applications = applications;
    this.spreads = spreads;
    this.earlier = earlier;
    this.points = new EarlierPoints(assignment, bench, ceiling);
    this.assignment = assignment;
    this.bench = bench;
    this.numbers = numbers;
    this.actions = actions;
    this.tests = tests;
    this.breaches = breaches;
    this.recharges = recharges;
    this.permitted = permitted;
  }

  /**
   * What is known of one before it is told, and run with scatter.
   *
   * @param afterM where the target before is, distance run
   */
  private record Draft(
      ApproachSolution last,
      Target.OfApproach target,
      List<ApproachSolution> braked,
      double afterM,
      double fromM,
      List<Application> applications,
      Optional<IfFaster> ifFaster) {}

  /**
   * In order of travel.
   *
   * @param trace of the whole run
   */
  List<Approach> of(List<ApproachSolution> pieces, Trace trace) {
    List<Draft> drafts = pages(pieces).parallelStream().map(this::draft).toList();
    List<List<Finding>> next = nextFirst(drafts);
    List<Approach> plain = new ArrayList<>();
    for (int i = 0; i < drafts.size(); i++) {
      plain.add(approach(drafts.get(i), Optional.empty(), next.get(i)));
    }
    InstructionSet told = new Telling(assignment, plain, actions, trace).all();
    List<Optional<Spread>> drawn = spreads.of(told);
    List<Approach> approaches = new ArrayList<>();
    for (int i = 0; i < drafts.size(); i++) {
      approaches.add(approach(drafts.get(i), drawn.get(i), next.get(i)));
    }
    return approaches;
  }

  private static List<List<Finding>> nextFirst(List<Draft> drafts) {
    List<NextFirst.Page> pages =
        drafts.stream()
            .map(
                d ->
                    new NextFirst.Page(
                        d.target(),
                        Stream.concat(
                                d.applications().stream(),
                                d.ifFaster().flatMap(IfFaster::application).stream())
                            .toList()))
            .toList();
    List<List<Finding>> out = new ArrayList<>();
    for (int i = 0; i < pages.size(); i++) {
      out.add(NextFirst.of(pages.get(i), pages.subList(i + 1, pages.size())));
    }
    return out;
  }

  /**
   * The pieces of one approach.
   *
   * @param afterM where the target before is, distance run
   */
  private record Page(List<ApproachSolution> pieces, Target.OfApproach target, double afterM) {}

  private static List<Page> pages(List<ApproachSolution> pieces) {
    List<Page> pages = new ArrayList<>();
    List<ApproachSolution> page = new ArrayList<>();
    double afterM = Double.NEGATIVE_INFINITY;
    for (ApproachSolution piece : pieces) {
      page.add(piece);
      Optional<Target.OfApproach> target = piece.target().ofApproach();
      if (target.isPresent()) {
        pages.add(new Page(List.copyOf(page), target.get(), afterM));
        afterM = Math.max(afterM, target.get().atM());
        page.clear();
      }
    }
    return pages;
  }

  private Draft draft(Page of) {
    List<ApproachSolution> page = of.pieces();
    ApproachSolution last = page.get(page.size() - 1);
    List<ApproachSolution> braked = page.stream().filter(p -> p.braking().isPresent()).toList();
    int number = Objects.requireNonNull(numbers.get(last.target()));
    return new Draft(
        last,
        of.target(),
        braked,
        of.afterM(),
        page.get(0).fromM(),
        applications.of(braked, last.target(), number, earlier),
        braked.isEmpty() ? ifFaster(last, number) : Optional.empty());
  }

  private Approach approach(Draft draft, Optional<Spread> spread, List<Finding> nextFirst) {
    ApproachSolution last = draft.last();
    ApproachSolution first = draft.braked().isEmpty() ? last : draft.braked().get(0);
    int number = Objects.requireNonNull(numbers.get(last.target()));
    List<Application> own = draft.applications();
    List<Finding> findings = new ArrayList<>(Findings.of(assignment, last, own));
    spread.ifPresent(
        s ->
            findings.addAll(
                Findings.oftenLate(assignment.policy().practice().warning(), last.target(), s)));
    spread
        .filter(points::tooOftenLate)
        .ifPresent(s -> findings.add(new Finding.LateThough(s.corrected().lateAtMost())));
    findings.addAll(nextFirst);
    double within = assignment.policy().practice().line().testWithin().metresPerSecond();
    findings.addAll(Findings.brakeTests(tests, draft.afterM(), draft.target().atM(), within));
    findings.addAll(Findings.testsOnOtherRails(tests, draft.afterM(), draft.target().atM(), own));
    RechargeCaution caution = new RechargeCaution(assignment, bench);
    draft.braked().stream()
        .flatMap(piece -> caution.of(piece, actions).stream())
        .min(Comparator.comparingDouble(Finding.LessToGive::givesPa))
        .ifPresent(findings::add);
    recharges.stream()
        .filter(r -> r.approach() == number)
        .map(Recharges.Full::what)
        .forEach(findings::add);
    breaches.stream()
        .filter(b -> b.approach() == number)
        .map(RuleBreaches.Breach::what)
        .forEach(findings::add);
    return new Approach(
        number,
        draft.target(),
        draft.fromM(),
        first.shutOffM(),
        first.brakingMps(),
        last.endM(),
        actions.stream().filter(a -> a.approach() == number).toList(),
        own,
        draft.ifFaster(),
        spread,
        findings);
  }

  private Optional<IfFaster> ifFaster(ApproachSolution unbraked, int number) {
    Target target = unbraked.target();
    if (target.standsThere() || brakedForTheNext(target, number)) {
      return Optional.empty();
    }
    PermittedRun.Braked run = permitted.to(unbraked);
    Optional<ApproachSolution> braked = run.piece();
    return Optional.of(
        new IfFaster(
            permitted.mostMps(unbraked),
            run.nowhere(),
            braked.map(p -> applications.of(List.of(p), target, number, earlier).get(0)),
            braked.map(p -> permitted.actions(p, number)).orElse(List.of())));
  }

  /**
   * Whether the brake for a further target is on before this one: to brake for this one alone would
   * then be too late for that.
   */
  private boolean brakedForTheNext(Target target, int number) {
    return actions.stream()
        .anyMatch(
            a -> a.approach() > number && a.atM() <= target.atM() && a.command().brakesForTarget());
  }
}
