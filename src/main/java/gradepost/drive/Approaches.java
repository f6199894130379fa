package gradepost.drive;

import gradepost.drive.brake.TrainModels;
import gradepost.drive.fallback.Ladder;
import gradepost.drive.fallback.RechargeCaution;
import gradepost.drive.fallback.Spreads;
import gradepost.drive.leg.ApproachSolution;
import gradepost.drive.leg.Places;
import gradepost.plan.Action;
import gradepost.plan.Application;
import gradepost.plan.Approach;
import gradepost.plan.BrakeTest;
import gradepost.plan.CaseResult;
import gradepost.plan.Cues;
import gradepost.plan.Finding;
import gradepost.plan.IfFaster;
import gradepost.plan.Spread;
import gradepost.policy.AdhesionCase;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.Target;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;

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
  private final Ladder ladder;
  private final Places places;
  private final CueFinder cueFinder;
  private final PermittedRun permitted;

  /**
   * @param numbers the approach that each target belongs to
   * @param actions of the whole run
   */
  Approaches(
      Assignment assignment,
      TrainModels bench,
      Ceiling ceiling,
      Map<Target, Integer> numbers,
      List<Action> actions,
      List<BrakeTest> tests) {
    this.assignment = assignment;
    this.bench = bench;
    this.numbers = numbers;
    this.actions = actions;
    this.tests = tests;
    this.ladder = new Ladder(assignment, bench);
    this.places = new Places(assignment);
    this.cueFinder = new CueFinder(places, assignment.policy().run().landmarkReach().metres());
    this.permitted = new PermittedRun(assignment, bench, ceiling, places);
  }

  List<Approach> of(List<ApproachSolution> pieces) {
    IdentityHashMap<ApproachSolution, Optional<Spread>> spreads = spreads(pieces);
    List<Approach> approaches = new ArrayList<>();
    List<ApproachSolution> page = new ArrayList<>();
    for (ApproachSolution piece : pieces) {
      page.add(piece);
      Optional<Target.OfApproach> target = piece.target().ofApproach();
      if (target.isPresent()) {
        approaches.add(approach(page, target.get(), Objects.requireNonNull(spreads.get(piece))));
        page.clear();
      }
    }
    return approaches;
  }

  private Approach approach(
      List<ApproachSolution> page, Target.OfApproach target, Optional<Spread> spread) {
    ApproachSolution last = page.get(page.size() - 1);
    List<ApproachSolution> braked = page.stream().filter(p -> p.braking().isPresent()).toList();
    ApproachSolution first = braked.isEmpty() ? last : braked.get(0);
    int number = Objects.requireNonNull(numbers.get(last.target()));
    List<Application> applications =
        applications(braked, last.target(), number, p -> cues(p.brakingM().orElseThrow()));
    List<Finding> findings = new ArrayList<>(Findings.of(assignment, last, applications));
    spread.ifPresent(s -> findings.addAll(Findings.oftenLate(last.target(), s)));
    findings.addAll(Findings.brakeTests(tests, applications));
    RechargeCaution caution = new RechargeCaution(assignment, bench);
    braked.stream()
        .flatMap(piece -> caution.of(piece, actions).stream())
        .min(Comparator.comparingDouble(Finding.LessToGive::givesPa))
        .ifPresent(findings::add);
    return new Approach(
        number,
        target,
        page.get(0).fromM(),
        first.shutOffM(),
        first.brakingMps(),
        last.endM(),
        actions.stream().filter(a -> a.approach() == number).toList(),
        applications,
        braked.isEmpty() ? ifFaster(last, number) : Optional.empty(),
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
            braked.map(
                p ->
                    applications(
                            List.of(p),
                            target,
                            number,
                            x -> cueFinder.at(x.brakingM().orElseThrow(), 0))
                        .get(0)),
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

  /**
   * @param target of the whole approach
   */
  private List<Application> applications(
      List<ApproachSolution> braked,
      Target target,
      int number,
      Function<ApproachSolution, Cues> cues) {
    List<List<Ladder.Cases>> rails = new ArrayList<>();
    List<Ladder.Cases> better = List.of();
    for (AdhesionCase adhesion : assignment.policy().adhesion()) {
      better = ladder.on(adhesion, braked, target, number, better);
      rails.add(better);
    }
    List<Application> out = new ArrayList<>();
    for (int i = 0; i < braked.size(); i++) {
      int index = i;
      List<Ladder.Cases> cases = rails.stream().map(r -> r.get(index)).toList();
      out.add(application(braked.get(i), target, cues.apply(braked.get(i)), cases));
    }
    return out;
  }

  private Application application(
      ApproachSolution piece, Target target, Cues cues, List<Ladder.Cases> rails) {
    double point = piece.brakingM().orElseThrow();
    List<CaseResult> cases = rails.stream().map(Ladder.Cases::own).toList();
    List<CaseResult> toStand = rails.stream().flatMap(r -> r.toStand().stream()).toList();
    return new Application(
        piece.target(),
        piece.exactBrakingM().orElseThrow(),
        point,
        places.lastLandmark(point),
        cues,
        piece.brakingMps(),
        piece.braking().orElseThrow().mainPa(),
        piece.endM(),
        cases,
        toStand,
        target.stop().flatMap(Target.Stop::buffersM).flatMap(b -> ladder.atBuffersMps(piece, b)),
        ladder.curves(piece, cases.get(0)));
  }

  private Cues cues(double pointM) {
    double before = 0;
    double at = 0;
    for (Action action : actions) {
      if (action.atM() < pointM - 0.01) {
        before = action.timeS();
      } else if (at == 0) {
        at = action.timeS();
      }
    }
    return cueFinder.at(pointM, at - before);
  }

  /** On all cores; each piece draws by a seed of its own, so that the order does not matter. */
  private IdentityHashMap<ApproachSolution, Optional<Spread>> spreads(
      List<ApproachSolution> pieces) {
    Spreads spreads = new Spreads(assignment, bench);
    List<ApproachSolution> whole =
        pieces.stream().filter(p -> p.target().ofApproach().isPresent()).toList();
    List<Optional<Spread>> drawn = whole.parallelStream().map(spreads::of).toList();
    IdentityHashMap<ApproachSolution, Optional<Spread>> all = new IdentityHashMap<>();
    for (int i = 0; i < whole.size(); i++) {
      all.put(whole.get(i), drawn.get(i));
    }
    return all;
  }
}
