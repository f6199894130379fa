package gradepost.drive;

import gradepost.drive.brake.TrainModels;
import gradepost.drive.fallback.EarlierPoints;
import gradepost.drive.fallback.Ladder;
import gradepost.drive.fallback.SpeedRows;
import gradepost.drive.grid.Places;
import gradepost.drive.leg.ApproachSolution;
import gradepost.plan.Application;
import gradepost.plan.CaseResult;
import gradepost.plan.Cues;
import gradepost.policy.AdhesionCase;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.Target;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Works out what belongs to each application of an approach: its cues, the other rails, what is
 * left when a brake gives nothing, and other speeds. What was worked out is kept: where points are
 * moved on one leg, the other legs are as they were.
 */
final class Applications {
  private final Assignment assignment;
  private final TrainModels bench;
  private final Ceiling ceiling;
  private final Places places;
  private final CueFinder cueFinder;
  private final Map<Brakings, List<Application>> known = new ConcurrentHashMap<>();

  Applications(Assignment assignment, TrainModels bench, Ceiling ceiling) {
    this.assignment = assignment;
    this.bench = bench;
    this.ceiling = ceiling;
    this.places = new Places(assignment);
    this.cueFinder = new CueFinder(places);
  }

  /**
   * All on which the applications of one approach depend.
   *
   * @param moved what moved the point of each, if anything did
   */
  private record Brakings(
      List<ApproachSolution> braked,
      Target target,
      int number,
      List<Optional<Application.SetBy>> moved) {}

  /**
   * Those of one approach, in order of travel; of several approaches at once, if need be.
   *
   * @param target of the whole approach
   * @param earlier where the brake is on before the computed point
   */
  List<Application> of(
      List<ApproachSolution> braked,
      Target target,
      int number,
      Map<Target, EarlierPoints.Earlier> earlier) {
    List<Optional<Application.SetBy>> moved =
        braked.stream()
            .map(p -> Optional.ofNullable(earlier.get(p.target())).map(e -> e.why()))
            .toList();
    Brakings wanted = new Brakings(List.copyOf(braked), target, number, moved);
    List<Application> before = known.get(wanted);
    if (before != null) {
      return before;
    }
    List<Application> now = List.copyOf(of(wanted));
    known.put(wanted, now);
    return now;
  }

  private List<Application> of(Brakings wanted) {
    List<ApproachSolution> braked = wanted.braked();
    Target target = wanted.target();
    int number = wanted.number();
    Ladder ladder = new Ladder(assignment, bench);
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
      out.add(application(wanted, i, ladder, cases));
    }
    return out;
  }

  private Application application(
      Brakings wanted, int index, Ladder ladder, List<Ladder.Cases> rails) {
    ApproachSolution piece = wanted.braked().get(index);
    Target target = wanted.target();
    double point = piece.brakingM().orElseThrow();
    Cues cues = cueFinder.at(point);
    List<CaseResult> cases = rails.stream().map(Ladder.Cases::own).toList();
    List<CaseResult> toStand = rails.stream().flatMap(r -> r.toStand().stream()).toList();
    return new Application(
        piece.target(),
        piece.exactBrakingM().orElseThrow(),
        point,
        setBy(piece, wanted.moved().get(index), cues),
        places.lastLandmark(point),
        cues,
        piece.brakingMps(),
        piece.braking().orElseThrow().mainPa(),
        piece.endM(),
        cases,
        toStand,
        target.stop().flatMap(Target.Stop::buffersM).flatMap(b -> ladder.atBuffersMps(piece, b)),
        ladder.curves(piece, cases.get(0)),
        new SpeedRows(assignment, bench, ceiling)
            .of(wanted.braked(), index, cases, wanted.number()));
  }

  /** A cue stands for what was wanted by the place behind it, whatever wanted that. */
  private Application.SetBy setBy(
      ApproachSolution piece, Optional<Application.SetBy> moved, Cues cues) {
    double onM = piece.exactBrakingM().orElseThrow() - piece.brakingM().orElseThrow();
    boolean cue = cues.anchor().isPresent() && onM >= assignment.path().units().lengthUnitM();
    return cue ? Application.SetBy.CUE : moved.orElse(Application.SetBy.COMPUTED);
  }
}
