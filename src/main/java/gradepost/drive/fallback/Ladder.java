package gradepost.drive.fallback;

import gradepost.drive.brake.Braking;
import gradepost.drive.brake.FullBraking;
import gradepost.drive.brake.Root;
import gradepost.drive.brake.Solver;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.grid.Places;
import gradepost.drive.leg.ApproachSolution;
import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import gradepost.plan.CaseResult;
import gradepost.plan.LatestCurve;
import gradepost.plan.Trace;
import gradepost.plan.fallback.FailureAnswer;
import gradepost.plan.fallback.Latest;
import gradepost.plan.fallback.Met;
import gradepost.plan.fallback.Rung;
import gradepost.policy.AdhesionCase;
import gradepost.stock.BrakeSystem;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.Target;
import gradepost.task.Targets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The last places: for each brake, where full service (or the emergency application) asked for on
 * the planned run still meets the target, and what is left when the service brake gives nothing.
 * All on the safe side of the plan: worst load, overspeed, counted share of the brakes.
 */
public final class Ladder {
  private final Assignment assignment;
  private final TrainModels bench;
  private final Places places;
  private final PlannedPoints points;
  private final LastPlaces last;
  private final StopConditions until = new StopConditions();

  public Ladder(Assignment assignment, TrainModels bench) {
    this.assignment = assignment;
    this.bench = bench;
    this.places = new Places(assignment);
    List<Target> targets = Targets.of(assignment, Ceiling.of(assignment));
    this.points = new PlannedPoints(assignment, bench, places, targets);
    this.last = new LastPlaces(assignment, bench, places);
  }

  /**
   * All applications of one approach in one state of the rail, each on the run that the one before
   * leaves there: to the target of each, and to a stand where that is behind it.
   *
   * @param braked what is braked, in order
   * @param target of the whole approach
   * @param better the same in the state before, which holds the train back no less; empty for the
   *     first
   */
  public List<Cases> on(
      AdhesionCase adhesion,
      List<ApproachSolution> braked,
      Target target,
      int approach,
      List<Cases> better) {
    boolean first = adhesion.equals(assignment.policy().plannedAdhesion());
    List<Cases> out = new ArrayList<>();
    Optional<RailLine> line = Optional.empty();
    boolean ownRun = true;
    for (int i = 0; i < braked.size(); i++) {
      ApproachSolution dry = braked.get(i);
      ApproachSolution piece = line.isPresent() ? dry.on(line.get()) : dry;
      Stepper planned = line.isPresent() ? bench.plannedStepper(adhesion) : bench.plannedStepper();
      PlannedPoint point =
          first
              ? points.planned(piece, approach)
              : points.in(adhesion, piece, planned, RollOn.of(braked, i), approach);
      LastPlaces.Coming run = new LastPlaces.Coming(piece, planned, line.map(l -> dry));
      Optional<Cases> onBetter = better.isEmpty() ? Optional.empty() : Optional.of(better.get(i));
      CaseResult own = forCase(run, adhesion, point, ownRun, onBetter.map(Cases::own));
      boolean behind = target.isStop() && piece.target() != target;
      out.add(
          new Cases(
              own,
              behind
                  ? Optional.of(toStand(run, target, own, onBetter.flatMap(Cases::toStand)))
                  : Optional.empty()));
      if (!first && i + 1 < braked.size()) {
        ownRun &= point.atM().isPresent();
        line =
            point.atM().isPresent()
                ? Optional.of(
                    new RailRun(bench, adhesion).braked(piece, planned, point, braked.get(i + 1)))
                : Optional.empty();
      }
    }
    return out;
  }

  /** Of one application: to its own target, and to a stand behind it. */
  public record Cases(CaseResult own, Optional<CaseResult> toStand) {}

  private CaseResult forCase(
      LastPlaces.Coming run,
      AdhesionCase adhesion,
      PlannedPoint point,
      boolean ownRun,
      Optional<CaseResult> better) {
    ApproachSolution piece = run.piece();
    Stepper planned = run.planned();
    Stepper worst = bench.worstStepper(adhesion);
    List<Rung> rungs = new ArrayList<>();
    List<FailureAnswer> answers = new ArrayList<>();
    Optional<Double> protectedM = point.atM();
    for (BrakeSystem system : assignment.stock().brakes()) {
      Latest latest = last.of(run, piece.target(), worst, system, point.atM(), better);
      rungs.add(new Rung(system, latest));
      if (system.role() != BrakeSystem.Role.SERVICE && point.atM().isPresent()) {
        answers.add(answer(piece, piece.target(), planned, worst, system, point.atM().get()));
      }
      // Where it still works after the noticing time, the point need not be moved.
      boolean works = !answers.isEmpty() && answers.get(answers.size() - 1).met().inTime();
      if (system.role() == BrakeSystem.Role.FALLBACK && protectedM.isPresent() && !works) {
        protectedM = protectedPoint(piece, planned, latest, protectedM.get());
      }
    }
    Optional<Double> cost =
        protectedM.isPresent() && protectedM.get() < point.atM().orElse(0.0) - 0.01
            ? cost(piece, adhesion, planned, protectedM.get(), point)
            : Optional.of(0.0);
    return new CaseResult(
        adhesion,
        point.atM(),
        point.mainPa(),
        point.actions(),
        ownRun,
        rungs,
        answers,
        protectedM,
        cost.map(s -> Math.max(s, 0)));
  }

  /**
   * The same points, and what each brake does from there for the stop behind the piece's target:
   * the planned run is left at the braking point and coasts, as if nothing had answered.
   */
  private CaseResult toStand(
      LastPlaces.Coming run, Target stop, CaseResult own, Optional<CaseResult> better) {
    ApproachSolution piece = run.piece();
    Stepper planned = run.planned();
    Stepper worst = bench.worstStepper(own.adhesion());
    List<Rung> rungs = new ArrayList<>();
    List<FailureAnswer> answers = new ArrayList<>();
    for (BrakeSystem system : assignment.stock().brakes()) {
      rungs.add(new Rung(system, last.of(run, stop, worst, system, own.plannedM(), better)));
      if (system.role() != BrakeSystem.Role.SERVICE && own.plannedM().isPresent()) {
        answers.add(answer(piece, stop, planned, worst, system, own.plannedM().get()));
      }
    }
    return own.with(rungs, answers);
  }

  private FailureAnswer answer(
      ApproachSolution piece,
      Target target,
      Stepper planned,
      Stepper worst,
      BrakeSystem system,
      double plannedM) {
    piece.line().pickUp(planned, plannedM);
    planned.shutOff();
    planned.advance(until.clear().time(planned.timeS() + assignment.policy().noticing().seconds()));
    double askedM = planned.atM();
    double askedMps = planned.speedMps();
    FullBraking braking = last.full(target, planned, worst, system);
    Met met = braking.met();
    double atTarget =
        met.inTime() ? target.speedMps() : braking.speedAtMps(Math.max(target.atM(), askedM));
    return new FailureAnswer(system, askedM, askedMps, met, atTarget);
  }

  /** The planned point moved back until this brake still works after the noticing time. */
  private Optional<Double> protectedPoint(
      ApproachSolution piece, Stepper planned, Latest latest, double plannedM) {
    return latest.point().flatMap(last -> protectedPoint(piece, planned, last, plannedM));
  }

  private Optional<Double> protectedPoint(
      ApproachSolution piece, Stepper planned, Latest.Point last, double plannedM) {
    double noticing = assignment.policy().noticing().seconds();
    piece.line().pickUp(planned, last.exactM());
    double asked = planned.timeS() - noticing;
    double low = piece.line().startM();
    double high = last.exactM();
    piece.line().pickUp(planned, low);
    if (planned.timeS() > asked) {
      return Optional.empty();
    }
    double exact =
        Root.lastNotNegative(
            x -> {
              piece.line().pickUp(planned, x);
              return asked - planned.timeS();
            },
            low,
            high,
            asked - planned.timeS(),
            -noticing,
            0.1);
    return exact >= plannedM
        ? Optional.of(plannedM)
        : Optional.of(Math.max(low, places.onGrid(exact, piece.target())));
  }

  /**
   * Running time that braking from an earlier place costs, with the pressure solved again; empty
   * where the technique does not come to its aim.
   */
  private Optional<Double> cost(
      ApproachSolution piece,
      AdhesionCase adhesion,
      Stepper planned,
      double earlierM,
      PlannedPoint point) {
    Stepper stepper = bench.plannedStepper(adhesion);
    Target target = piece.target();
    leave(piece, planned, stepper, earlierM);
    Braking solved =
        new Solver(assignment, bench.settings().brake())
            .forPlace(
                point.nominal(),
                stepper,
                stepper.save(),
                target.aimM(assignment.policy().margins()),
                target.standsThere());
    leave(piece, planned, stepper, earlierM);
    Optional<Double> earlier = timeToAim(target, stepper, solved);
    leave(piece, planned, stepper, point.atM().orElse(earlierM));
    Optional<Double> own = timeToAim(target, stepper, point.braking().orElse(solved));
    return earlier.flatMap(later -> own.map(sooner -> later - sooner));
  }

  /** The run is left at a place, on another rail. */
  private static void leave(ApproachSolution piece, Stepper planned, Stepper stepper, double atM) {
    piece.line().pickUp(planned, atM);
    stepper.restore(planned.save());
    stepper.shutOff();
  }

  private Optional<Double> timeToAim(Target target, Stepper stepper, Braking braking) {
    Braking.Outcome outcome = braking.run(stepper);
    double rest = target.aimM(assignment.policy().margins()) - outcome.endM();
    boolean stands = outcome.endMps() < 0.5;
    double tolerance = assignment.policy().margins().stopTolerance().metres();
    return !outcome.held() || (stands && rest > tolerance)
        ? Optional.empty()
        : Optional.of(outcome.endS() + (stands ? 0 : rest / outcome.endMps()));
  }

  /**
   * Speed at the buffer stops if nothing more is done from the braking point on; empty if the train
   * stands before.
   */
  public Optional<Double> atBuffersMps(ApproachSolution piece, double buffersM) {
    Stepper planned = bench.plannedStepper();
    piece.line().pickUp(planned, piece.brakingM().orElse(piece.endM()));
    planned.shutOff();
    planned.advance(until.clear().place(buffersM));
    double over = assignment.policy().safeSide().overspeed().metresPerSecond();
    return planned.speedMps() > 0 ? Optional.of(planned.speedMps() + over) : Optional.empty();
  }

  /** The run at the latest point of each brake, to draw. */
  public List<LatestCurve> curves(ApproachSolution piece, CaseResult result) {
    Stepper planned = bench.plannedStepper();
    Stepper worst = bench.worstStepper(result.adhesion());
    List<LatestCurve> curves = new ArrayList<>();
    for (Rung rung : result.ladder()) {
      Optional<Latest.Point> point = rung.latest().point();
      if (point.isPresent()) {
        List<Trace.Point> points = new ArrayList<>();
        piece.line().pickUp(planned, point.get().exactM());
        FullBraking braking = last.full(piece.target(), planned, worst, rung.brake());
        worst.record((t, s, v, p, n) -> points.add(new Trace.Point(t, s, v, p, n)));
        braking.shortM();
        worst.record(null);
        curves.add(new LatestCurve(rung.brake(), new Trace(points)));
      }
    }
    return curves;
  }
}
