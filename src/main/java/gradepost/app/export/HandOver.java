package gradepost.app.export;

import gradepost.motion.LowAdhesionRail;
import gradepost.motion.PiecewiseLinear;
import gradepost.motion.Track;
import gradepost.motion.Train;
import gradepost.motion.TrainBrake;
import gradepost.plan.BrakeTest;
import gradepost.plan.Plan;
import gradepost.plan.Sightings;
import gradepost.plan.SignalBraking;
import gradepost.policy.SafeSide;
import gradepost.route.Path;
import gradepost.route.RailGap;
import gradepost.route.Signal;
import gradepost.route.Stretch;
import gradepost.stock.BrakeSystem;
import gradepost.stock.Formation;
import gradepost.stock.LoadCase;
import gradepost.stock.Stock;
import gradepost.stock.WorkingBrakes;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.DegradedRun;
import gradepost.told.print.PrintGrid;
import gradepost.units.Exact;
import gradepost.units.UnitStyle;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Everything that one stage handed to the next, resolved, as one JSON file: enough to work out a
 * braking point again with a solver of one's own. SI units, named in each field.
 */
public final class HandOver {
  static final String KIND = "hand-over";
  static final int VERSION = 3;

  /**
   * All that a plan is made from and comes out with, as JSON.
   *
   * @param fingerprint of the inputs that the plan was made from
   */
  public static byte[] of(Plan plan, String fingerprint) {
    Assignment assignment = plan.assignment();
    return RecordJson.bytes(
        new HandOverFile(
            KIND,
            VERSION,
            fingerprint,
            units(assignment.path().units()),
            assigned(assignment),
            track(assignment.path()),
            new Sightings(assignment, new PrintGrid(assignment.path())).all(),
            plan.ceiling(),
            train(assignment),
            LowAdhesionRail.stretches(assignment.path(), assignment.lines()),
            assignment.policy(),
            new HandOverFile.Driven(
                plan.runningTimeS(),
                plan.fastest(),
                plan.energyJ(),
                plan.handleMovements(),
                plan.actions(),
                plan.trace()),
            plan.approaches(),
            plan.signals().stream().map(HandOver::atDanger).toList(),
            plan.brakeTests().stream().map(HandOver::test).toList(),
            gaps(assignment)));
  }

  private static HandOverFile.Units units(UnitStyle units) {
    return new HandOverFile.Units(
        units,
        units.placeStepM(),
        units.lengthUnitM(),
        units.speedUnitMps(),
        units.pressureStepPa());
  }

  private static HandOverFile.Assigned assigned(Assignment assignment) {
    return new HandOverFile.Assigned(
        assignment.route().name(),
        assignment.route().nameOf(assignment.direction()),
        assignment.lines(),
        assignment.junctionRoutes(),
        assignment.formation().name(),
        assignment.load(),
        assignment.calls(),
        assignment.restrictions(),
        assignment.degraded().map(run -> edition(assignment, run)));
  }

  private static HandOverFile.EditionOfRun edition(Assignment assignment, DegradedRun run) {
    return new HandOverFile.EditionOfRun(
        run.edition().name(),
        run.edition().kind().word(),
        assignment.formation().numbersWith(WorkingBrakes.ALL_BUT_SERVICE),
        assignment.formation().numbersWith(WorkingBrakes.NONE),
        run.clause(),
        run.permit().to(),
        run.permit().atMost().metresPerSecond());
  }

  private static HandOverFile.Ground track(Path path) {
    Track track = Track.of(path);
    List<HandOverFile.Section> sections = new ArrayList<>();
    double at = 0;
    for (var section : path.sections()) {
      boolean forward = path.mileageRisesAt(at + section.lengthM() / 2) == section.rises();
      double from = (forward ? section.from() : section.to()).metres();
      double to = (forward ? section.to() : section.from()).metres();
      sections.add(new HandOverFile.Section(section.name(), at, at + section.lengthM(), from, to));
      at += section.lengthM();
    }
    List<HandOverFile.Height> heights = new ArrayList<>();
    for (int i = 0; i < track.elevation().knots(); i++) {
      heights.add(new HandOverFile.Height(track.elevation().x(i), track.elevation().y(i)));
    }
    return new HandOverFile.Ground(path.lengthM(), sections, heights, track.curves(), Exact.G);
  }

  private static HandOverFile.Trains train(Assignment assignment) {
    Stock stock = assignment.stock();
    SafeSide safe = assignment.policy().safeSide();
    return new HandOverFile.Trains(
        loaded(assignment, assignment.load(), 1, 0),
        loaded(assignment, safe.load(), safe.brakeFactor(), safe.isolatedShare()),
        false,
        stock.curves(),
        stock.checkRailDragNPerKn(),
        stock.traction().timePerNotch().seconds(),
        stock.traction().notchingDown(),
        stock.brakes(),
        stock.care().beforeLeaving(),
        stock.care().signs());
  }

  private static HandOverFile.Loaded loaded(
      Assignment assignment, LoadCase load, double brakeFactor, double isolatedShare) {
    Stock stock = assignment.stock();
    Formation formation = assignment.formation();
    Train train = Train.of(stock, formation, load);
    Map<String, List<HandOverFile.Effort>> efforts = new LinkedHashMap<>();
    for (int i = 0; i < train.effort().size(); i++) {
      efforts.put(stock.traction().notches().get(i).name(), efforts(train.effort().get(i)));
    }
    Map<String, TrainBrake> brakes = new LinkedHashMap<>();
    for (BrakeSystem system : stock.brakes()) {
      brakes.put(
          system.shortName(),
          TrainBrake.of(stock, formation, load, train, system, brakeFactor, isolatedShare));
    }
    return new HandOverFile.Loaded(
        load,
        train.massKg(),
        train.lengthM(),
        formation.valvesM(),
        train.inertiaKg(),
        train.motoredKg(),
        train.motoredVehicleKg(),
        train.resistance(),
        efforts,
        brakes);
  }

  private static HandOverFile.AtDanger atDanger(SignalBraking signal) {
    return new HandOverFile.AtDanger(
        signal.signal().id(),
        signal.signal().kind(),
        signal.signalM(),
        signal.standM(),
        signal.caution().map(Signal::id),
        signal.warnedM(),
        signal.plannedMps(),
        signal.ceilingMps(),
        signal.brakingM(),
        signal.technique(),
        signal.needs().stream()
            .map(
                need ->
                    new HandOverFile.Need(
                        need.brake().shortName(),
                        Optional.of(need.needM()).filter(Double::isFinite)))
            .toList());
  }

  private static HandOverFile.RunningTest test(BrakeTest test) {
    return new HandOverFile.RunningTest(
        test.atM(),
        test.place().speed().metresPerSecond(),
        test.plannedMps(),
        test.pressurePa(),
        test.heldS(),
        test.speedAfterMps(),
        test.decelerationMps2(),
        test.endM(),
        test.noRoom().map(HandOver::noRoom));
  }

  private static HandOverFile.NoRoom noRoom(BrakeTest.NoRoom why) {
    return new HandOverFile.NoRoom(
        why.reason(),
        why.is(),
        why.instead().map(BrakeTest.Instead::atM),
        why.instead().map(BrakeTest.Instead::mps));
  }

  private static List<HandOverFile.Gap> gaps(Assignment assignment) {
    List<HandOverFile.Gap> out = new ArrayList<>();
    for (RailGap gap : assignment.route().railGaps()) {
      if (Ceiling.stands(assignment, gap.applies())) {
        Stretch dead = assignment.path().span(gap.extent());
        out.add(new HandOverFile.Gap(gap.name(), dead.fromM(), dead.toM()));
      }
    }
    return out;
  }

  private static List<HandOverFile.Effort> efforts(PiecewiseLinear effort) {
    List<HandOverFile.Effort> out = new ArrayList<>();
    for (int i = 0; i < effort.knots(); i++) {
      if (effort.x(i) >= 0) {
        out.add(new HandOverFile.Effort(effort.x(i), effort.y(i)));
      }
    }
    return out;
  }

  private HandOver() {}
}
