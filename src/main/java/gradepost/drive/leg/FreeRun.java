package gradepost.drive.leg;

import gradepost.drive.brake.HeldSpeed;
import gradepost.drive.brake.PlannerSettings;
import gradepost.drive.brake.Pressures;
import gradepost.drive.brake.Slack;
import gradepost.drive.brake.TrainModels;
import gradepost.drive.grid.DriverRules;
import gradepost.drive.grid.HeldStretch;
import gradepost.drive.grid.RunningTest;
import gradepost.motion.NoEnd;
import gradepost.motion.Snapshot;
import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import gradepost.motion.StopReason;
import gradepost.plan.Command;
import gradepost.plan.Trigger;
import gradepost.route.Path;
import gradepost.task.Assignment;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The run from somewhere under the driver's rules as if nothing ahead had to be braked for: power
 * in sequence, the speed band, coasting, the brake to check the speed on a falling grade. It ends
 * where the train would be too fast for a fall of the ceiling, at the end given, or at a stall.
 */
final class FreeRun {
  /**
   * One handle movement: the state just after it.
   *
   * @param held whether it is one of those with which a speed is held, and not told by itself
   */
  record Step(Trigger trigger, Command command, Snapshot after, boolean held) {}

  private enum Mode {
    POWER,
    COAST,
    CHECK,
    TEST,
    HOLD
  }

  private final DriverRules rules;
  private final Assignment assignment;
  private final TrainModels bench;
  private final PlannerSettings.Leg settings;
  private final PlannerSettings.Run own;
  private final Stepper stepper;
  private final Stepper probe;
  private final Path path;
  private final double endM;
  private final double capMps;
  private final double capUntilM;
  private final double noPowerToM;
  private final double leastOffS;
  private final GuideFollower guide;
  private final PowerQuestions power;
  private final List<Step> steps = new ArrayList<>();
  private final StopConditions until = new StopConditions();

  private Mode mode = Mode.COAST;
  private int top;
  private double notchSinceS;
  private double offS = Double.NEGATIVE_INFINITY;
  private double testedUntilS;
  private double testHeldS;
  private boolean stalled;
  private boolean over;
  private double lastCeiling;

  private Optional<HeldSpeed> held = Optional.empty();
  private SpeedsSeen seen = new SpeedsSeen();
  private final ToldPlaces told;

  /**
   * @param capMps ceiling that already binds up to {@code capUntilM}, since it was braked for
   * @param noPowerFromM from here on power is not taken again, until {@code noPowerToM}
   */
  FreeRun(
      DriverRules rules,
      Assignment assignment,
      TrainModels bench,
      Stepper stepper,
      double endM,
      double capMps,
      double capUntilM,
      double noPowerFromM,
      double noPowerToM) {
    this.rules = rules;
    this.assignment = assignment;
    this.bench = bench;
    this.settings = bench.settings().leg();
    this.own = bench.settings().run();
    this.stepper = stepper;
    this.probe = bench.plannedStepper();
    this.path = assignment.path();
    this.endM = endM;
    this.capMps = capMps;
    this.capUntilM = capUntilM;
    this.noPowerToM = noPowerToM;
    this.leastOffS = assignment.policy().practice().power().offAtLeast().seconds();
    int highest = assignment.stock().traction().notches().size() - 1;
    this.guide = new GuideFollower(rules, stepper, highest, bench.settings());
    this.power =
        new PowerQuestions(
            rules, assignment, bench.settings(), stepper, probe, guide, noPowerFromM, noPowerToM);
    this.told = new ToldPlaces(path, stepper, probe, endM);
  }

  List<Step> steps() {
    return steps;
  }

  boolean stalled() {
    return stalled;
  }

  /** Whether the train coasts, and has nothing half done. */
  boolean rests() {
    return !over
        && mode == Mode.COAST
        && stepper.brakeOff()
        && stepper.timeS() > offS + leastOffS
        && guide.rests();
  }

  /** Speeds since the last handle movement. */
  SpeedsSeen seen() {
    return new SpeedsSeen(seen);
  }

  /** Whether it has come to its end. */
  boolean over() {
    return over;
  }

  /**
   * Begins where the stepper stands.
   *
   * @param before speeds since the last handle movement
   */
  void start(SpeedsSeen before) {
    seen = new SpeedsSeen(before);
    boolean starting = stepper.speedMps() == 0;
    if (starting) {
      powerUp(new Trigger.Start(), false);
    } else {
      mode = stepper.notch() >= 0 ? Mode.POWER : Mode.COAST;
      if (stepper.demandPa() > 0) {
        mode = Mode.CHECK;
      }
      notchSinceS = stepper.timeS();
      top = rules.running(Math.max(stepper.notch(), 0));
    }
    lastCeiling = ceilingAt(stepper.atM());
  }

  /** Runs on, to its end or to a place before it; leaves the stepper there. */
  void run(double toM) {
    double lastS = Double.NEGATIVE_INFINITY;
    int idle = 0;
    double stopM = Math.min(toM, endM);
    for (int looks = 0; stepper.atM() < stopM - Slack.PLACE_M; looks++) {
      if (steps.size() >= settings.movements() || looks >= settings.looks()) {
        throw new NoEnd(
            "after %d handle movements the run is at %.3f m of %.3f"
                .formatted(steps.size(), stepper.atM(), endM));
      }
      double ceiling = ceilingAt(stepper.atM());
      if (stepper.speedMps() > ceiling + Slack.SPEED_MPS
          && ceiling < lastCeiling - Slack.SPEED_MPS) {
        over = true;
        return;
      }
      idle = stepper.timeS() > lastS ? 0 : idle + 1;
      if (idle > settings.idleLooks()) {
        stalled = true;
        return;
      }
      lastS = stepper.timeS();
      lastCeiling = ceiling;
      double edge = Math.min(edge(stepper.atM()), stopM);
      StopReason ended =
          switch (mode) {
            case POWER -> power(ceiling, edge);
            case COAST -> coast(ceiling, edge);
            case CHECK -> check(ceiling, edge);
            case TEST -> test(edge);
            case HOLD -> hold(held.orElseThrow(), edge);
          };
      if (ended == StopReason.STANDSTILL || ended == StopReason.NEVER) {
        stalled = true;
        return;
      }
    }
    over = stopM == endM;
  }

  private double ceilingAt(double atM) {
    double ceiling = rules.ceilingAt(atM);
    return atM < capUntilM - Slack.PLACE_M ? Math.min(ceiling, capMps) : ceiling;
  }

  private double edge(double atM) {
    double edge = rules.nextEdge(atM);
    double on = guide.nextM();
    double printed = on < path.lengthM() ? path.printedAtOrAfter(on) : on;
    for (double other : new double[] {capUntilM, noPowerToM, printed}) {
      edge = other > atM + Slack.PLACE_M ? Math.min(edge, other) : edge;
    }
    for (HeldStretch stretch : rules.manner().holds()) {
      edge = stretch.fromM() > atM + Slack.PLACE_M ? Math.min(edge, stretch.fromM()) : edge;
    }
    return edge;
  }

  private StopReason power(double ceiling, double edge) {
    boolean needed = stepper.speedMps() < rules.neededMps(stepper.atM());
    double most = rules.band().offMps(ceiling);
    double off = needed ? most : guide.offMps(ceiling);
    boolean guidedOff = !needed && guide.offAtPlace() && told.printed();
    double coastsFrom = rules.coastsFromMps(stepper.atM());
    boolean tested =
        told.printed() && stepper.speedMps() + told.gainedByNextMps() / 2 >= coastsFrom;
    boolean forbidden = rules.powerForbidden(stepper.atM());
    if (stepper.speedMps() >= off && stepper.speedMps() < most && !forbidden && !told.printed()) {
      // The guide has another speed from between two places on; power comes off at the next.
      StopReason ended = told.toNextPrinted(edge, most);
      if (ended == StopReason.SPEED_UP) {
        shutOffAt(most);
      }
      return ended;
    }
    if (guidedOff || tested || forbidden || stepper.speedMps() >= off) {
      done(here(), new Command.ShutOff());
      if (guidedOff) {
        guide.passed();
      }
      mode = Mode.COAST;
      return StopReason.PLACE;
    }
    if (stepper.speedMps() >= coastsFrom - own.closeToTestMps() - Slack.SPEED_MPS) {
      return told.toNextPrinted(edge);
    }
    double perNotch = assignment.stock().traction().timePerNotch().seconds();
    boolean more = stepper.notch() < top;
    if (more && stepper.timeS() > notchSinceS + perNotch + Slack.TIME_S) {
      // A higher notch became useful where the ceiling changed.
      if (!told.printed()) {
        return told.toNextPrinted(edge);
      }
      notch(stepper.notch() + 1, here());
      return StopReason.PLACE;
    }
    double look = more ? notchSinceS + perNotch : stepper.timeS() + settings.lookS();
    double upTo = Math.min(off, coastsFrom - own.closeToTestMps());
    StopReason ended = stepper.advance(until.clear().place(edge).speedUp(upTo).time(look));
    if (ended == StopReason.SPEED_UP) {
      if (upTo == off) {
        shutOffAt(off);
      }
    } else if (ended == StopReason.TIME && more) {
      notch(stepper.notch() + 1, new Trigger.After(perNotch));
    } else if (ended == StopReason.TIME && power.weak(off)) {
      double place = path.printedAtOrAfter(stepper.atM());
      StopReason reached = stepper.advance(until.clear().place(Math.min(place, edge)).speedUp(off));
      if (reached == StopReason.PLACE && place < edge) {
        top = rules.running(stepper.notch() + 1);
        notch(stepper.notch() + 1, new Trigger.AtPlace(place));
      }
      return reached;
    } else if (ended == StopReason.PLACE && stepper.atM() < endM - Slack.PLACE_M) {
      top = Math.max(top, guide.notchFor(ceilingAt(stepper.atM()), true));
    }
    return ended;
  }

  private void shutOffAt(double mps) {
    done(new Trigger.SpeedUpTo(mps), new Command.ShutOff());
    mode = Mode.COAST;
  }

  private StopReason coast(double ceiling, double edge) {
    Optional<HeldStretch> stretch = stretchHere();
    if (stretch.isPresent()) {
      if (!told.printed()) {
        return told.toNextPrinted(edge);
      }
      begin(stretch.get().hold());
      return StopReason.PLACE;
    }
    if (guide.offAtPlace()) {
      // It was to come off by here, and is not on: taken now it would come off at once.
      guide.passed();
    }
    Optional<RunningTest> test = testHere();
    if (test.isPresent()) {
      begin(test.get());
      return StopReason.PLACE;
    }
    if (power.mayBeTakenForTest(ceiling, offS)) {
      if (!told.printed()) {
        return told.toNextPrinted(edge);
      }
      powerUp(here(), false);
      return StopReason.PLACE;
    }
    double on = rules.band().onMps(ceiling);
    boolean may = power.mayBeTaken(ceiling, offS);
    boolean slow = stepper.speedMps() <= on + Slack.ROUNDING;
    may = may && !(slow && power.gathersByItself(ceiling));
    if (may && slow) {
      boolean fell = seen.fallsTo(on, stepper.speedMps());
      if (!fell && !told.printed()) {
        return told.toNextPrinted(edge);
      }
      powerUp(fell ? new Trigger.SpeedDownTo(on) : here(), true);
      return StopReason.SPEED_DOWN;
    }
    double checked = checkedCeiling(ceiling);
    double from = rules.band().checkFromMps(checked);
    boolean riseSoon = power.riseComesInTime(checked);
    boolean mustCheck = stepper.speedMps() >= (riseSoon ? checked : from - Slack.ROUNDING);
    double gains = stepper.speedMps() < checked - settings.closeMps() ? Slack.STEADY_MPS2 : 0;
    if (mustCheck && stepper.accelerationMps2() > gains) {
      boolean rose = seen.risesTo(from, stepper.speedMps());
      boolean hurries = told.tooLate(edge, checked - settings.closeMps());
      if (!rose && !told.printed() && !(hurries && told.fromTheEnd())) {
        return hurries ? told.toNextFromTheEnd(edge) : told.toNextPrinted(edge);
      }
      double pressure = rules.checkPressurePa(stepper.atM(), stepper.speedMps());
      stepper.brake(bench.slowing(), pressure);
      done(
          rose ? new Trigger.SpeedUpTo(from) : here(),
          new Command.Brake(pressure, Command.Stage.CHECK));
      mode = Mode.CHECK;
      return StopReason.SPEED_UP;
    }
    double up = stepper.speedMps() < from - Slack.ROUNDING ? from : checked;
    if (stepper.speedMps() >= up) {
      up = ceiling + 1;
    }
    double look =
        stepper.timeS() + (stepper.brakeOff() ? settings.lookS() : settings.emptyingLookS());
    boolean justOff = stepper.timeS() < offS + leastOffS - Slack.TIME_S;
    double again = justOff ? offS + leastOffS : Double.POSITIVE_INFINITY;
    until.clear().place(edge).speedUp(up).time(Math.min(look, again));
    if (!slow) {
      // Also where it may not be taken yet: then this speed has been met.
      until.speedDown(on);
    }
    seen.see(stepper.speedMps());
    StopReason ended = stepper.advance(until);
    return ended == StopReason.NEVER ? StopReason.STANDSTILL : ended;
  }

  /** The running brake test that is to be made at this place, if the train is fit for it. */
  private Optional<RunningTest> testHere() {
    double at = stepper.atM();
    double mps = stepper.speedMps();
    return rules.tests().stream()
        .filter(t -> Math.abs(t.atM() - at) < Slack.PLACE_M)
        .filter(t -> mps >= t.leastMps() && mps <= t.mostMps() && stepper.brakeOff())
        .findFirst();
  }

  private void begin(RunningTest test) {
    stepper.brake(bench.slowing(), test.pressurePa());
    testedUntilS = stepper.timeS() + test.heldS();
    testHeldS = test.heldS();
    done(here(), new Command.Brake(test.pressurePa(), Command.Stage.TEST));
    mode = Mode.TEST;
  }

  private StopReason test(double edge) {
    StopReason ended = stepper.advance(until.clear().place(edge).time(testedUntilS));
    if (ended == StopReason.TIME) {
      stepper.brake(bench.slowing(), 0);
      done(new Trigger.After(testHeldS), new Command.Release());
      mode = Mode.COAST;
    }
    return ended;
  }

  /** Where a speed is to be held from here on, and the train is in no haste and not above it. */
  private Optional<HeldStretch> stretchHere() {
    boolean ready = stepper.brakeOff() && stepper.timeS() >= offS + leastOffS - Slack.TIME_S;
    return rules.manner().holds().stream()
        .filter(h -> stepper.atM() >= h.fromM() - Slack.PLACE_M)
        .filter(h -> stepper.atM() < h.hold().untilM() - Slack.PLACE_M)
        .filter(h -> ready && stepper.speedMps() <= h.hold().upperMps() + Slack.SPEED_MPS)
        .findFirst();
  }

  private void begin(Command.Hold hold) {
    mode = Mode.HOLD;
    held = Optional.of(new HeldSpeed(hold, bench, stepper, this::held));
    done(here(), hold);
  }

  private void held(Trigger trigger, Command command) {
    if (command.isShutOff()) {
      offS = stepper.timeS();
    } else if (command.isPower()) {
      notchSinceS = stepper.timeS();
    }
    steps.add(new Step(trigger, command, stepper.save(), true));
    seen.from(stepper.speedMps());
  }

  private StopReason hold(HeldSpeed holding, double edge) {
    StopReason ended = holding.run(edge);
    if (ended != StopReason.PLACE || !holding.over()) {
      return ended;
    }
    held = Optional.empty();
    double ceiling = ceilingAt(stepper.atM());
    if (stepper.notch() >= 0 && power.goesOn(holding.hold(), ceiling, notchSinceS)) {
      top = Math.max(stepper.notch(), guide.notchFor(ceiling, true));
      mode = Mode.POWER;
      notch(Math.min(top, stepper.notch() + 1), here());
    } else {
      holding.end();
      guide.held();
      mode = Mode.COAST;
    }
    return StopReason.PLACE;
  }

  /** A lower ceiling close ahead, if the train is not above it. */
  private double checkedCeiling(double ceiling) {
    double ahead = rules.ceilingToCheckAt(stepper.atM());
    return stepper.speedMps() <= ahead ? Math.min(ceiling, ahead) : ceiling;
  }

  private Trigger here() {
    return new Trigger.AtPlace(stepper.atM());
  }

  private StopReason check(double ceiling, double edge) {
    double to = rules.band().checkToMps(checkedCeiling(ceiling));
    if (stepper.speedMps() < to - Slack.SPEED_MPS) {
      stepper.brake(bench.slowing(), 0);
      done(here(), new Command.Release());
      mode = Mode.COAST;
      return StopReason.PLACE;
    }
    StopReason ended =
        stepper.advance(
            until.clear().place(edge).speedDown(to).time(stepper.timeS() + own.checkedS()));
    if (ended == StopReason.SPEED_DOWN) {
      stepper.brake(bench.slowing(), 0);
      done(new Trigger.SpeedDownTo(to), new Command.Release());
      mode = Mode.COAST;
    } else if (ended == StopReason.TIME && stepper.accelerationMps2() > -Slack.STEADY_MPS2) {
      double more =
          Pressures.asked(
              assignment.stock().service(),
              stepper.demandPa() + own.heavierSteps() * assignment.route().units().pressureStepPa(),
              assignment.route().units().pressureStepPa());
      stepper.brake(bench.slowing(), more);
      done(new Trigger.After(own.checkedS()), new Command.Brake(more, Command.Stage.CHECK));
    }
    return ended;
  }

  private void powerUp(Trigger trigger, boolean holding) {
    double at = stepper.atM();
    top = guide.notchFor(ceilingAt(at), holding);
    mode = Mode.POWER;
    notch(0, trigger);
  }

  private void notch(int notch, Trigger trigger) {
    stepper.power(notch);
    notchSinceS = stepper.timeS();
    done(trigger, new Command.Power(notch));
  }

  private void done(Trigger trigger, Command command) {
    if (command.isShutOff()) {
      stepper.shutOff();
      offS = stepper.timeS();
      guide.shutOff();
    }
    steps.add(new Step(trigger, command, stepper.save(), false));
    seen.from(stepper.speedMps());
  }
}
