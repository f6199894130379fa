package gradepost.drive.fallback;

import gradepost.drive.brake.Slack;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.grid.Places;
import gradepost.drive.leg.ApproachSolution;
import gradepost.motion.Stepper;
import gradepost.plan.CaseResult;
import gradepost.plan.SpeedRow;
import gradepost.policy.AdhesionCase;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.Target;
import gradepost.task.Targets;
import gradepost.units.Rounding;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * Where to brake for a target from another speed than the planned one: from the permissible speed
 * at the planned point down to half of it, in the steps in which a speedometer is read, on the rail
 * of the plan and on the poorest other one. A braking point is a property of the place, not of one
 * plan.
 *
 * <p>The train of a row holds its speed up to the place; power is off there as the first
 * application is made, and no brake is on before it. That is what a driver does who drives by the
 * speedometer, and on the safe side: who coasts is slower, and what a brake that is on already
 * takes off is not counted in. The technique is the policy's, solved for the printed place as that
 * of the plan is. The points of the plan are rows of the same table, at the speeds of the plan.
 *
 * <p>Rows are worked out from the slowest on, and none may be later than the one before it, nor on
 * the poorer rail later than on the other: it is moved towards the train for it, and solved for
 * that place. A slower row that would be earlier than a point of the plan is left out, and the
 * point of the plan stands for it, as the paper says between two rows: the train of the plan has a
 * brake on there already, or the place of a landmark lies between two that can be printed. So is a
 * row at a place, or with a lower speed between there and the target, where no train may be so
 * fast; but where the poorer rail has a point for that speed, the better one has its place too. A
 * point of the plan on the poorer rail that is later than the row of the better one is no row, and
 * its speed has none.
 */
public final class SpeedRows {
  private final Assignment assignment;
  private final TrainModels bench;
  private final Ceiling ceiling;
  private final PlannedPoints points;
  private final LastPlaces last;
  private final List<AdhesionCase> planned;
  private final List<AdhesionCase> poorest;
  private final double unitMps;

  /** For a train and its track. */
  public SpeedRows(Assignment assignment, TrainModels bench, Ceiling ceiling) {
    Places places = new Places(assignment);
    this.assignment = assignment;
    this.bench = bench;
    this.ceiling = ceiling;
    List<Target> targets = Targets.of(assignment, ceiling);
    this.points = new PlannedPoints(assignment, bench, places, targets);
    this.last = new LastPlaces(assignment, bench, places);
    this.planned = List.of(assignment.policy().plannedAdhesion());
    this.poorest = PoorestRail.of(assignment);
    this.unitMps = assignment.path().units().speedUnitMps();
  }

  /**
   * From the highest speed down.
   *
   * @param braked what is braked on one approach, in order, each with a braking point
   * @param index which of them
   * @param cases its points in each state of the rail
   * @param approach the number of what is done
   */
  public List<SpeedRow> of(
      List<ApproachSolution> braked, int index, List<CaseResult> cases, int approach) {
    ApproachSolution piece = braked.get(index);
    Optional<RollOn> rollOn = RollOn.of(braked, index);
    Optional<Map.Entry<Long, SpeedRow.Point>> own = ofPlan(piece, cases, planned);
    Optional<Map.Entry<Long, SpeedRow.Point>> poor = ofPlan(piece, cases, poorest);
    NavigableMap<Long, Double> speeds = speeds(piece);
    Set<Long> asked = Set.copyOf(speeds.keySet());
    own.ifPresent(p -> add(speeds, p));
    poor.ifPresent(p -> add(speeds, p));
    speeds.headMap(number(piece.target().speedMps()), true).clear();
    SpeedColumn dry = column(planned, rollOn);
    SpeedColumn other = column(poorest, rollOn);
    dry.fill(piece, approach, speeds, own, Optional.empty());
    other.fill(piece, approach, speeds, poor, Optional.of(dry));
    dry.fillFrom(other, piece, approach, speeds);
    List<SpeedRow> rows = new ArrayList<>();
    for (Map.Entry<Long, Double> speed : speeds.descendingMap().entrySet()) {
      long number = speed.getKey();
      SpeedRow row = new SpeedRow(speed.getValue(), dry.at(number), other.standsAt(number));
      boolean ofPlan = row.planned().filter(SpeedRow.Point::asPlanned).isPresent();
      boolean any = row.planned().isPresent() || row.poorest().isPresent();
      boolean wanted = asked.contains(number) || row.holdsPlanned();
      if (any && wanted && (ofPlan || (!dry.leavesOut(number) && !other.leavesOut(number)))) {
        rows.add(row);
      }
    }
    return rows;
  }

  private SpeedColumn column(List<AdhesionCase> rails, Optional<RollOn> rollOn) {
    return new SpeedColumn(assignment, bench, ceiling, points, last, rails, rollOn);
  }

  /** As a speedometer is read. */
  private long number(double mps) {
    return assignment.path().units().speedNumber(mps, Rounding.DOWN);
  }

  /** A row of the plan is for the speed that the train really has, and for what is read then. */
  private static void add(Map<Long, Double> speeds, Map.Entry<Long, SpeedRow.Point> ofPlan) {
    speeds.merge(ofPlan.getKey(), ofPlan.getValue().speedMps(), Math::max);
  }

  private NavigableMap<Long, Double> speeds(ApproachSolution piece) {
    NavigableMap<Long, Double> out = new TreeMap<>();
    long permissible = number(ceiling.speedAt(piece.brakingM().orElseThrow()));
    long step = assignment.path().units().speedStep();
    out.put(permissible, permissible * unitMps);
    for (long n = (permissible - 1) / step * step; 2 * n >= permissible && n > 0; n -= step) {
      out.put(n, n * unitMps);
    }
    return out;
  }

  /** The earliest point of the plan on one of these rails; empty where one of them has none. */
  private Optional<Map.Entry<Long, SpeedRow.Point>> ofPlan(
      ApproachSolution piece, List<CaseResult> cases, List<AdhesionCase> rails) {
    List<CaseResult> own = cases.stream().filter(c -> rails.contains(c.adhesion())).toList();
    return own.stream().anyMatch(c -> c.actions().isEmpty())
        ? Optional.empty()
        : own.stream()
            .map(c -> ofPlan(piece, c))
            .min(Comparator.comparingDouble(SpeedRow.Point::atM))
            .map(p -> Map.entry(number(p.speedMps()), p));
  }

  private SpeedRow.Point ofPlan(ApproachSolution piece, CaseResult result) {
    double atM = result.plannedM().orElseThrow();
    Stepper stepper = bench.plannedStepper();
    piece.line().pickUpBraked(stepper, atM);
    return new SpeedRow.Point(
        result.adhesion().name(),
        atM,
        result.actions().get(0).speedMps(),
        stepper.pressurePa(),
        true,
        result.protectedM().filter(p -> p >= atM - Slack.PLACE_M).isPresent(),
        result.actions());
  }
}
