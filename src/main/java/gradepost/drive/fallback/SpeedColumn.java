package gradepost.drive.fallback;

import gradepost.drive.brake.Braking;
import gradepost.drive.brake.ReductionMonitor;
import gradepost.drive.brake.Slack;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.leg.ApproachSolution;
import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import gradepost.plan.SpeedRow;
import gradepost.policy.AdhesionCase;
import gradepost.stock.BrakeSystem;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.Target;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Braking points by the speed at which a train comes to them, on one state of the rail or on those
 * of which one is the poorest. A faster train never brakes later.
 */
final class SpeedColumn {
  private final Assignment assignment;
  private final TrainModels bench;
  private final Ceiling ceiling;
  private final PlannedPoints points;
  private final LastPlaces last;
  private final List<AdhesionCase> rails;
  private final Optional<RollOn> rollOn;
  private final Optional<BrakeSystem> fallback;
  private final Optional<Stepper> charge;

  /** All that were worked out. */
  private final NavigableMap<Long, SpeedRow.Point> found = new TreeMap<>();

  /** Those to which a train may come so fast. */
  private final NavigableMap<Long, SpeedRow.Point> permitted = new TreeMap<>();

  /** Speeds for which the next faster one stands. */
  private final Set<Long> leftOut = new HashSet<>();

  SpeedColumn(
      Assignment assignment,
      TrainModels bench,
      Ceiling ceiling,
      PlannedPoints points,
      LastPlaces last,
      List<AdhesionCase> rails,
      Optional<RollOn> rollOn) {
    this.assignment = assignment;
    this.bench = bench;
    this.ceiling = ceiling;
    this.points = points;
    this.last = last;
    this.rails = rails;
    this.rollOn = rollOn;
    this.fallback =
        assignment.stock().brakes().stream()
            .filter(b -> b.role() == BrakeSystem.Role.FALLBACK)
            .findFirst();
    this.charge =
        assignment.stock().service().recharge().isPresent()
            ? Optional.of(bench.plannedStepper())
            : Optional.empty();
  }

  /** The point for a speed in whole units; empty where there is none. */
  Optional<SpeedRow.Point> at(long number) {
    return Optional.ofNullable(permitted.get(number));
  }

  /** Whether a point that was worked out is not told, since that of the plan stands for it. */
  boolean leavesOut(long number) {
    return leftOut.contains(number);
  }

  /** The point for a speed, or that of the plan where it stands for it. */
  Optional<SpeedRow.Point> standsAt(long number) {
    return leavesOut(number)
        ? permitted.tailMap(number).values().stream().filter(SpeedRow.Point::asPlanned).findFirst()
        : at(number);
  }

  /**
   * Works out all points, from the slowest train on.
   *
   * @param speeds in whole units, and in metres a second
   * @param planned the point of the plan, and its speed in whole units; one that is not above the
   *     target's is no row, and the rows are no later than it either
   * @param better the same on a better rail: none is later than there
   */
  void fill(
      ApproachSolution piece,
      int approach,
      SortedMap<Long, Double> speeds,
      Optional<Map.Entry<Long, SpeedRow.Point>> planned,
      Optional<SpeedColumn> better) {
    double aimM = piece.target().aimM(assignment.policy().margins());
    double latestM =
        planned
            .filter(p -> !speeds.containsKey(p.getKey()))
            .map(p -> Math.min(aimM, p.getValue().atM()))
            .orElse(aimM);
    for (Map.Entry<Long, Double> speed : speeds.entrySet()) {
      long number = speed.getKey();
      Optional<SpeedRow.Point> there =
          better.flatMap(b -> Optional.ofNullable(b.found.get(number)));
      double limitM = Math.min(latestM, there.map(SpeedRow.Point::atM).orElse(latestM));
      Optional<SpeedRow.Point> own =
          planned
              .filter(p -> p.getKey() == number)
              .map(Map.Entry::getValue)
              .filter(p -> there.map(t -> p.atM() <= t.atM()).orElse(true));
      if (own.isPresent()) {
        latestM = own.get().atM();
        leaveOutBefore(latestM);
        found.put(number, own.get());
        permitted.put(number, own.get());
      } else {
        latestM = add(piece, approach, number, speed.getValue(), limitM);
      }
    }
  }

  /**
   * Takes the places of a poorer rail for the speeds for which there is none on this one: what is
   * early enough there is early enough here, too. No slower train brakes before a faster one so.
   */
  void fillFrom(
      SpeedColumn poorer, ApproachSolution piece, int approach, SortedMap<Long, Double> speeds) {
    for (Map.Entry<Long, Double> speed : speeds.entrySet()) {
      long number = speed.getKey();
      Optional<SpeedRow.Point> there = poorer.at(number);
      if (at(number).isEmpty() && there.isPresent() && !leavesOut(number)) {
        double atM = there.get().atM();
        boolean fasterLater =
            permitted.tailMap(number, false).values().stream()
                .anyMatch(p -> p.atM() > atM + Slack.PLACE_M);
        if (!fasterLater) {
          add(piece, approach, number, speed.getValue(), atM);
        }
      }
    }
  }

  /** Slower trains for which the point of the plan has to stand. */
  private void leaveOutBefore(double plannedM) {
    for (Map.Entry<Long, SpeedRow.Point> slower : List.copyOf(found.entrySet())) {
      if (slower.getValue().atM() < plannedM - Slack.PLACE_M) {
        leftOut.add(slower.getKey());
        found.remove(slower.getKey());
        permitted.remove(slower.getKey());
      }
    }
  }

  /** The place that no faster train may be later than. */
  private double add(
      ApproachSolution piece, int approach, long number, double mps, double latestM) {
    double limitM = latestM;
    HeldSpeed held = new HeldSpeed(piece.line(), charge, mps);
    for (AdhesionCase rail : rails) {
      PlannedPoint point =
          points.in(rail, to(piece, mps, limitM, held), stepper(), rollOn, approach);
      if (point.atM().isEmpty()) {
        found.remove(number);
        permitted.remove(number);
        return limitM;
      }
      limitM = point.atM().get();
      boolean leaves = leavesFallback(rail, piece.target(), held, limitM);
      SpeedRow.Point at =
          new SpeedRow.Point(rail.name(), limitM, mps, 0, false, leaves, point.actions());
      found.put(number, at);
      permitted.remove(number);
      if (mayBe(rail, piece.target(), held, at, point.braking().orElseThrow())) {
        permitted.put(number, at);
      }
    }
    return limitM;
  }

  private static ApproachSolution to(
      ApproachSolution piece, double mps, double latestM, HeldSpeed held) {
    return new ApproachSolution(
        piece.target(),
        piece.fromM(),
        Optional.empty(),
        Optional.empty(),
        Optional.of(latestM),
        mps,
        Optional.empty(),
        held,
        List.of(),
        piece.target().atM(),
        true);
  }

  private Stepper stepper() {
    return bench.plannedStepper();
  }

  /**
   * Whether a train may come to the place so fast, and keeps the lower speeds between there and the
   * target: where it does not, another page has it brake before.
   */
  private boolean mayBe(
      AdhesionCase rail, Target target, HeldSpeed held, SpeedRow.Point point, Braking braking) {
    if (point.speedMps() > ceiling.speedAt(point.atM()) + Slack.SPEED_MPS) {
      return false;
    }
    List<Target> between =
        ceiling.steps().stream()
            .filter(s -> s.fromM() > point.atM() && s.fromM() < target.atM() - Slack.PLACE_M)
            .filter(s -> s.speedMps() < point.speedMps())
            .<Target>map(
                s -> new Target.TerminalStep(s.cause(), s.fromM(), s.speedMps(), point.speedMps()))
            .toList();
    if (between.isEmpty()) {
      return true;
    }
    Stepper stepper = bench.plannedStepper(rail);
    held.pickUp(stepper, point.atM());
    ReductionMonitor monitor = new ReductionMonitor(between);
    stepper.record(monitor);
    braking.run(stepper);
    stepper.record(null);
    return monitor.marginM() >= -Slack.SPEED_MPS;
  }

  /** Whether the first fallback, in full after the noticing time, still meets the target. */
  private boolean leavesFallback(AdhesionCase rail, Target target, HeldSpeed held, double atM) {
    if (fallback.isEmpty()) {
      return true;
    }
    Stepper planned = stepper();
    held.pickUp(planned, atM);
    double noticing = assignment.policy().noticing().seconds();
    planned.advance(new StopConditions().time(planned.timeS() + noticing));
    return last.full(target, planned, bench.worstStepper(rail), fallback.get()).shortM() >= 0;
  }
}
