package gradepost.drive;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Makes the plan of one assignment. */
public final class Planner {

  /** What a run comes to, before the fallbacks are worked out. */
  private record Worked(
      Ceiling ceiling,
      Bench bench,
      List<Piece> pieces,
      Map<Target, Integer> numbers,
      Rerun rerun,
      Plan.Cost fastest,
      double leastJ) {}

  /**
   * Works out the run, its approaches and their fallbacks, and runs it again. The plan that comes
   * back may hold {@link Plan#failures()}; it is then not fit for issue.
   */
  public static Plan plan(Assignment assignment) {
    Worked worked = run(assignment);
    List<Approach> approaches = approaches(assignment, worked);
    Rerun rerun = worked.rerun();
    Trace trace = new Trace(rerun.points());
    return new Plan(
        assignment,
        worked.ceiling().steps(),
        approaches,
        rerun.actions(),
        trace,
        rerun.timeS(),
        rerun.energyJ(),
        worked.leastJ(),
        movements(rerun.actions()),
        worked.fastest(),
        rerun.failures(),
        new Signals(assignment, worked.bench(), worked.ceiling(), trace).all(),
        BrakeTests.of(assignment, worked.bench(), trace),
        new FigureTables(assignment, worked.bench()).figures());
  }

  private static Worked run(Assignment assignment) {
    Ceiling ceiling = Ceiling.of(assignment);
    Bench bench = new Bench(assignment);
    List<Target> targets = Targets.of(assignment, ceiling);
    double start = Stops.markM(assignment, assignment.calls().get(0));
    RunChooser.Chosen chosen = new RunChooser(assignment, bench, ceiling).choose(start, targets);
    Rerun first = rerun(assignment, bench, ceiling, start, chosen.pieces());
    List<Piece> pieces =
        Unbraked.with(chosen.pieces(), targets, first.actions(), new Trace(first.points()));
    Map<Target, Integer> numbers = numbers(pieces);
    Rerun rerun = rerun(assignment, bench, ceiling, start, pieces);
    for (Piece piece : pieces) {
      if (piece.target() instanceof Target.Stop stop && !stood(rerun.actions(), numbers, stop)) {
        rerun.failures().add(new Finding.NeverComes(piece.endM(), new Trigger.Standstill()));
      }
    }
    chosen.stallsM().ifPresent(at -> rerun.failures().add(new Finding.Stalls(at)));
    return new Worked(ceiling, bench, pieces, numbers, rerun, chosen.fastest(), chosen.leastJ());
  }

  private static Rerun rerun(
      Assignment assignment, Bench bench, Ceiling ceiling, double startM, List<Piece> pieces) {
    Rerun rerun = new Rerun(assignment, bench, ceiling);
    List<Instruction> instructions = new ArrayList<>();
    pieces.forEach(p -> instructions.addAll(p.instructions()));
    rerun.run(startM, instructions, numbers(pieces));
    return rerun;
  }

  private static boolean stood(
      List<Action> actions, Map<Target, Integer> numbers, Target.Stop stop) {
    return actions.stream()
        .anyMatch(a -> a.command() instanceof Command.Stand && a.approach() == numbers.get(stop));
  }

  /** Terminal ceilings belong to the approach of the stop behind them. */
  private static Map<Target, Integer> numbers(List<Piece> pieces) {
    Map<Target, Integer> numbers = new HashMap<>();
    int next = 1;
    for (Piece piece : pieces) {
      numbers.put(piece.target(), next);
      if (!terminalStep(piece.target())) {
        next++;
      }
    }
    return numbers;
  }

  private static boolean terminalStep(Target target) {
    return target instanceof Target.Reduction r && r.kind() == Target.Reduction.Kind.TERMINAL;
  }

  private static List<Approach> approaches(Assignment assignment, Worked worked) {
    Ladder ladder = new Ladder(assignment, worked.bench());
    Map<Piece, Optional<Spread>> spreads = spreads(assignment, worked);
    Places places = new Places(assignment);
    List<Approach> approaches = new ArrayList<>();
    Optional<Double> pageFrom = Optional.empty();
    for (Piece piece : worked.pieces()) {
      if (terminalStep(piece.target())) {
        pageFrom = pageFrom.or(() -> Optional.of(piece.fromM()));
        continue;
      }
      int number = worked.numbers().get(piece.target());
      List<CaseResult> cases = new ArrayList<>();
      if (piece.braking().isPresent()) {
        for (AdhesionCase adhesion : assignment.policy().adhesion()) {
          cases.add(ladder.forCase(piece, adhesion));
        }
      }
      approaches.add(
          new Approach(
              number,
              piece.target(),
              pageFrom.orElse(piece.fromM()),
              piece.shutOffM(),
              piece.exactBrakingM(),
              piece.brakingM(),
              piece.brakingM().flatMap(places::lastLandmark),
              cues(piece, new CueFinder(places), worked.rerun().actions()),
              piece.brakingMps(),
              piece.braking().map(Braking::mainPa).orElse(0.0),
              piece.endM(),
              worked.rerun().actions().stream().filter(a -> a.approach() == number).toList(),
              cases,
              cases.isEmpty() ? List.of() : ladder.curves(piece, cases.get(0)),
              spreads.get(piece),
              findings(assignment, worked, piece, cases, ladder)));
      pageFrom = Optional.empty();
    }
    return approaches;
  }

  private static List<Finding> findings(
      Assignment assignment, Worked worked, Piece piece, List<CaseResult> cases, Ladder ladder) {
    List<Finding> findings = new ArrayList<>(Findings.of(assignment, piece, cases, ladder));
    new RechargeCaution(assignment, worked.bench())
        .of(piece, worked.rerun().actions())
        .ifPresent(findings::add);
    return findings;
  }

  /** On all cores; each approach draws by a seed of its own, so that the order does not matter. */
  private static Map<Piece, Optional<Spread>> spreads(Assignment assignment, Worked worked) {
    Spreads spreads = new Spreads(assignment, worked.bench());
    List<Piece> pieces = worked.pieces();
    List<Optional<Spread>> drawn =
        pieces.parallelStream()
            .map(piece -> spreads.of(piece, worked.numbers().get(piece.target())))
            .toList();
    Map<Piece, Optional<Spread>> all = new IdentityHashMap<>();
    for (int i = 0; i < pieces.size(); i++) {
      all.put(pieces.get(i), drawn.get(i));
    }
    return all;
  }

  private static Cues cues(Piece piece, CueFinder finder, List<Action> actions) {
    if (piece.brakingM().isEmpty()) {
      return Cues.NONE;
    }
    double point = piece.brakingM().get();
    double before = 0;
    double at = 0;
    for (Action action : actions) {
      if (action.atM() < point - 0.01) {
        before = action.timeS();
      } else if (at == 0) {
        at = action.timeS();
      }
    }
    return finder.at(point, at - before);
  }

  static int movements(List<Action> actions) {
    return (int) actions.stream().filter(a -> !(a.command() instanceof Command.Stand)).count();
  }

  private Planner() {}
}
