package gradepost.drive.check;

import gradepost.drive.brake.HeldSpeed;
import gradepost.drive.brake.Slack;
import gradepost.drive.brake.TrainModels;
import gradepost.motion.EvenChange;
import gradepost.motion.Snapshot;
import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import gradepost.motion.StopReason;
import gradepost.motion.TrainBrake;
import gradepost.motion.Work;
import gradepost.plan.Action;
import gradepost.plan.Command;
import gradepost.plan.Instruction;
import gradepost.plan.PlanFailure;
import gradepost.plan.Trace;
import gradepost.plan.Trigger;
import gradepost.task.Assignment;
import gradepost.task.Ceiling;
import gradepost.task.CeilingStep;
import gradepost.task.Target;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * Carries instructions out, knowing nothing of how they were found, and watches: the permissible
 * speed under every part of the train, the handle movements, the stops.
 */
public final class InstructionRun {
  private final Assignment assignment;
  private final TrainModels bench;
  private final Ceiling ceiling;
  private final Stepper stepper;
  private final StopConditions until = new StopConditions();
  private final List<Trace.Point> points = new ArrayList<>();
  private final List<Action> actions = new ArrayList<>();
  private final List<Action> made = new ArrayList<>();
  private final List<PlanFailure> failures = new ArrayList<>();
  private final List<Double> refillS = new ArrayList<>();
  private final Work work = new Work();
  private TrainBrake inUse;
  private final Map<Integer, Snapshot> states = new HashMap<>();
  private Set<Integer> kept = Set.of();
  private double lastS;
  private double markM = Double.NEGATIVE_INFINITY;
  private double overAtM = Double.NEGATIVE_INFINITY;
  private double stopMarginM;

  public InstructionRun(Assignment assignment, TrainModels bench, Ceiling ceiling) {
    this.assignment = assignment;
    this.bench = bench;
    this.ceiling = ceiling;
    this.stepper = bench.plannedStepper();
    this.inUse = bench.service();
  }

  /** Judges stops so much stricter than the policy wants, m. */
  public InstructionRun within(double marginM) {
    stopMarginM = marginM;
    return this;
  }

  /** The run, point by point. */
  public List<Trace.Point> points() {
    return points;
  }

  /** What was done, where and when it came. */
  public List<Action> actions() {
    return actions;
  }

  /**
   * All movements of the handles, those with which a speed is held after the action that tells to
   * hold it.
   */
  public List<Action> made() {
    return made;
  }

  /** Movements of a handle: all actions but to stand; to hold a speed is one. */
  public int movements() {
    return (int) RuleBreaches.moves(actions);
  }

  /** What keeps the plan from issue; empty where nothing does. */
  public List<PlanFailure> failures() {
    return failures;
  }

  /**
   * For each release, how long the reservoirs then take to fill again if the brake stays off,
   * seconds; 0 where they are always full.
   */
  public List<Double> refillS() {
    return refillS;
  }

  /** Time since the run began, seconds. */
  public double timeS() {
    return stepper.timeS();
  }

  /** Work that traction has done, joules. */
  public double energyJ() {
    return work.tractionJ();
  }

  /**
   * Keeps the state of the train when what these instructions wait for has come.
   *
   * @param indices of them, from 0
   */
  public void keep(Set<Integer> indices) {
    kept = Set.copyOf(indices);
  }

  /** A state that was kept; empty where the run did not come to it. */
  public Optional<Snapshot> state(int index) {
    return Optional.ofNullable(states.get(index));
  }

  /**
   * From a stand.
   *
   * @param numbers the approach that each target belongs to
   * @return whether every trigger came
   */
  public boolean run(double startM, List<Instruction> instructions, Map<Target, Integer> numbers) {
    startAt(startM);
    return follow(instructions, numbers);
  }

  /** Puts the train to a stand where the run begins. */
  public void startAt(double startM) {
    stepper.place(0, startM, 0);
    stepper.count(work);
    stepper.record(this::point);
  }

  /**
   * Where a run is between two instructions, to go on from there.
   *
   * @param lastS when the last instruction was carried out, seconds
   * @param energyJ work that traction has done
   * @param actions how many have been done
   * @param made movements of the handles so far, with those that hold a speed
   * @param points how many the run has
   * @param failures how many there are
   */
  public record Joint(
      Snapshot train,
      double lastS,
      TrainBrake inUse,
      double energyJ,
      int actions,
      int made,
      int points,
      int failures) {}

  /** Lets the train go on to a place with the handles as they are. */
  public void roll(double toM) {
    if (stepper.atM() < toM && stepper.speedMps() > 0) {
      stepper.advance(until.clear().place(toM));
    }
  }

  /** Where the run is now. */
  public Joint joint() {
    return new Joint(
        stepper.save(),
        lastS,
        inUse,
        work.tractionJ(),
        actions.size(),
        made.size(),
        points.size(),
        failures.size());
  }

  /** Begins where another run of the same train was. */
  public void startFrom(Joint joint) {
    stepper.restore(joint.train());
    inUse = joint.inUse();
    lastS = joint.lastS();
    stepper.count(work);
    stepper.record(this::point);
  }

  /**
   * Carries out more instructions from where the run is.
   *
   * @return whether every trigger came
   */
  public boolean follow(List<Instruction> instructions, Map<Target, Integer> numbers) {
    for (int i = 0; i < instructions.size(); i++) {
      Instruction instruction = instructions.get(i);
      if (!await(instruction.trigger())) {
        failures.add(new PlanFailure.NeverComes(stepper.atM(), instruction.trigger()));
        return false;
      }
      if (kept.contains(i)) {
        states.put(i, stepper.save());
      }
      Action action = action(instruction, numbers);
      actions.add(action);
      Optional<Command.Hold> held = held(instructions, i - 1);
      Optional<Command.Hold> holds = instruction.command().hold();
      boolean powerWhereHeld = held.isPresent() && instruction.command().isPower();
      if (!powerWhereHeld) {
        made.add(action);
      }
      if (holds.isPresent()) {
        if (!hold(holds.get(), action, held(instructions, i).isPresent())) {
          failures.add(
              new PlanFailure.NeverComes(stepper.atM(), new Trigger.AtPlace(holds.get().untilM())));
          return false;
        }
      } else if (powerWhereHeld) {
        if (!powerOn(instruction.command().power().orElseThrow(), action)) {
          failures.add(new PlanFailure.NeverComes(stepper.atM(), instruction.trigger()));
          return false;
        }
      } else {
        judge(instruction.command());
        carryOut(instruction);
      }
      lastS = stepper.timeS();
      if (instruction.command().isStand()) {
        instruction.target().stop().ifPresent(this::stops);
      }
    }
    return true;
  }

  private Action action(Instruction instruction, Map<Target, Integer> numbers) {
    return new Action(
        Objects.requireNonNull(numbers.get(instruction.target())),
        instruction.trigger(),
        instruction.command(),
        stepper.atM(),
        stepper.speedMps(),
        stepper.timeS());
  }

  /** A speed that is held up to where the next instruction tells to take power. */
  private static Optional<Command.Hold> held(List<Instruction> instructions, int index) {
    if (index < 0 || index + 1 >= instructions.size()) {
      return Optional.empty();
    }
    Instruction next = instructions.get(index + 1);
    return instructions
        .get(index)
        .command()
        .hold()
        .filter(h -> next.command().isPower())
        .filter(
            h ->
                next.trigger()
                    .place()
                    .filter(p -> Math.abs(p.atM() - h.untilM()) < Slack.PLACE_M)
                    .isPresent());
  }

  /**
   * Holds a speed to where that ends.
   *
   * @param powerNext whether power is told there, so that it need not come off
   */
  private boolean hold(Command.Hold hold, Action action, boolean powerNext) {
    HeldSpeed held =
        new HeldSpeed(hold, bench, stepper, (trigger, command) -> made(action, trigger, command));
    inUse = bench.slowing();
    if (held.run(hold.untilM()) != StopReason.PLACE) {
      return false;
    }
    if (!powerNext) {
      held.end();
    }
    return true;
  }

  /** Power up to a notch from whatever notch the handle is in where a speed was held. */
  private boolean powerOn(Command.Power told, Action action) {
    if (backwards(told) || stepper.demandPa() > 0) {
      failures.add(new PlanFailure.ForbiddenMovement(stepper.atM(), told));
    }
    Trigger by = action.trigger();
    while (stepper.notch() != told.notch()) {
      stepper.power(Math.min(stepper.notch() + 1, told.notch()));
      made(action, by, new Command.Power(stepper.notch()));
      by = new Trigger.After(bench.perNotchS());
      if (stepper.notch() < told.notch()
          && stepper.advance(until.clear().time(stepper.timeS() + bench.perNotchS()))
              != StopReason.TIME) {
        return false;
      }
    }
    return true;
  }

  private void made(Action of, Trigger trigger, Command command) {
    command.brake().ifPresent(this::judgeCharge);
    if (command.isRelease()) {
      refillS.add(stepper.refillS(inUse));
    }
    made.add(
        new Action(
            of.approach(), trigger, command, stepper.atM(), stepper.speedMps(), stepper.timeS()));
  }

  /** Whether what the driver waits for comes. */
  private boolean await(Trigger trigger) {
    until.clear();
    return trigger.match(
        place -> stepper.advance(until.place(place.atM())) == StopReason.PLACE,
        this::awaitRise,
        down -> stepper.advance(until.speedDown(down.speedMps())) == StopReason.SPEED_DOWN,
        after -> stepper.advance(until.time(lastS + after.seconds())) == StopReason.TIME,
        start -> start(),
        stand -> stepper.advance(until) == StopReason.STANDSTILL);
  }

  /**
   * Standing time is left out: the brake is off and the train ready. A leg is from mark to mark, so
   * that how the train came to the mark, a little short of it, is nothing to the next leg.
   */
  private boolean start() {
    if (stepper.speedMps() > 0) {
      return false;
    }
    stepper.place(stepper.timeS(), Math.max(stepper.atM(), markM), 0);
    return true;
  }

  /** Still that fast from before, and slowing down: he waits for it to rise again. */
  private boolean awaitRise(Trigger.SpeedUpTo up) {
    int looks = 0;
    while (stepper.speedMps() >= up.speedMps() - Slack.SPEED_MPS
        && stepper.accelerationMps2() < 0
        && looks++ < bench.settings().check().looks()) {
      until.clear().speedDown(up.speedMps() - 0.01).time(stepper.timeS() + 5);
      stepper.advance(until);
    }
    return stepper.advance(until.clear().speedUp(up.speedMps())) == StopReason.SPEED_UP;
  }

  private void carryOut(Instruction instruction) {
    instruction
        .command()
        .act(
            power -> stepper.power(power.notch()),
            off -> stepper.shutOff(),
            brake -> {
              boolean forTarget = !brake.checks() && !brake.tests();
              inUse = forTarget ? bench.service(instruction.target()) : bench.slowing();
              stepper.brake(inUse, brake.pressurePa());
            },
            release -> {
              stepper.brake(inUse, 0);
              refillS.add(stepper.refillS(inUse));
            },
            stand -> {},
            hold -> {});
  }

  private void judge(Command command) {
    boolean forbidden =
        command.match(
            this::forbidden,
            off -> false,
            this::forbidden,
            release -> false,
            stand -> false,
            hold -> stepper.notch() >= 0 || stepper.demandPa() > 0);
    if (forbidden) {
      failures.add(new PlanFailure.ForbiddenMovement(stepper.atM(), command));
    }
    command.brake().ifPresent(this::judgeCharge);
  }

  /** Whether the reservoirs have what is asked for, as near as the gauge can show. */
  private void judgeCharge(Command.Brake brake) {
    double gives = stepper.availablePa(bench.service());
    if (brake.pressurePa() > gives + assignment.route().units().pressureStepPa()) {
      failures.add(new PlanFailure.NotRecharged(stepper.atM(), brake.pressurePa(), gives));
    }
  }

  private boolean forbidden(Command.Power power) {
    boolean skips = power.notch() > stepper.notch() + 1;
    return backwards(power) || skips || stepper.demandPa() > 0;
  }

  private boolean backwards(Command.Power power) {
    return power.notch() < stepper.notch() && !assignment.stock().traction().notchingDown();
  }

  private boolean forbidden(Command.Brake brake) {
    boolean eases = brake.pressurePa() < stepper.demandPa() && !bench.service().gradualRelease();
    return eases || stepper.notch() >= 0;
  }

  private void stops(Target.Stop stop) {
    judgeStop(stop);
    markM = stop.atM();
  }

  private void judgeStop(Target.Stop stop) {
    double tolerance = assignment.policy().margins().stopTolerance().metres();
    double shortM = stop.atM() - stepper.atM();
    if (shortM < stopMarginM - 0.01 || shortM > tolerance - stopMarginM) {
      failures.add(new PlanFailure.StopOutsideTolerance(shortM, tolerance));
    }
  }

  private void point(double timeS, double atM, double speedMps, double pressurePa, int notch) {
    Trace.Point point = new Trace.Point(timeS, atM, speedMps, pressurePa, notch);
    if (!points.isEmpty()) {
      Trace.Point last = points.get(points.size() - 1);
      watchStepsBetween(last, point);
    }
    watch(atM, speedMps);
    points.add(point);
  }

  private void watch(double atM, double speedMps) {
    over(atM, speedMps, ceiling.speedAt(atM));
  }

  /** A fall of the ceiling between two points is met at a speed between theirs. */
  private void watchStepsBetween(Trace.Point from, Trace.Point to) {
    for (CeilingStep step : ceiling.steps()) {
      if (step.fromM() > from.atM() && step.fromM() <= to.atM()) {
        double there =
            EvenChange.speedMps(from.atM(), from.speedMps(), to.atM(), to.speedMps(), step.fromM());
        over(step.fromM(), there, step.speedMps());
      }
    }
  }

  private void over(double atM, double speedMps, double ceilingMps) {
    if (speedMps > ceilingMps + bench.settings().check().speedSlackMps() && atM > overAtM + 200) {
      overAtM = atM;
      failures.add(new PlanFailure.OverCeiling(atM, speedMps, ceilingMps));
    }
  }
}
