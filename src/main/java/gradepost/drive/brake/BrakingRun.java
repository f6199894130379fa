package gradepost.drive.brake;

import gradepost.drive.brake.Braking.Outcome;
import gradepost.motion.Stepper;
import gradepost.motion.StopReason;
import gradepost.plan.Command;
import gradepost.plan.Trigger;
import java.util.function.BiConsumer;

/** One run of a technique from where the stepper stands; leaves it where the aim is met. */
public final class BrakingRun {
  private final Braking braking;
  private final Stepper stepper;
  private final BiConsumer<Trigger, Command> told;
  private final BrakedTrain train;
  private final double began;
  private final double lowest;

  /** What the next command is given by. */
  private Trigger next;

  private double presentPa;

  /**
   * @param told takes every command as it is given
   */
  public BrakingRun(
      Braking braking, Stepper stepper, Trigger start, BiConsumer<Trigger, Command> told) {
    this(braking, stepper, BrakedTrain.of(stepper), start, told);
  }

  /**
   * @param train that of the stepper
   */
  BrakingRun(
      Braking braking,
      Stepper stepper,
      BrakedTrain train,
      Trigger start,
      BiConsumer<Trigger, Command> told) {
    this.braking = braking;
    this.stepper = stepper;
    this.train = train;
    this.told = told;
    this.next = start;
    began = stepper.speedMps();
    double[] at = braking.easeAtMps();
    lowest = at.length > 0 ? at[at.length - 1] : 0;
    presentPa = stepper.demandPa();
  }

  /** Brakes until the aim is met, or until it is plain that it never is. */
  public Outcome run() {
    if (began <= braking.aimMps() || (braking.releases() && began <= lowest)) {
      if (braking.aimMps() == 0) {
        stand();
      }
      return Outcome.now(stepper, true);
    }
    applications();
    double[] at = braking.easeAtMps();
    double[] to = braking.easePa();
    for (int i = 0; i < at.length; i++) {
      boolean tooSoon = braking.tooSoon(i, began);
      boolean past = stepper.speedMps() < at[i] - Slack.ROUNDING && i + 1 < at.length;
      if (to[i] >= presentPa || tooSoon || past) {
        continue;
      }
      StopReason ended = train.advance(Double.POSITIVE_INFINITY, at[i]);
      if (ended != StopReason.SPEED_DOWN) {
        return Outcome.now(stepper, ended == StopReason.STANDSTILL);
      }
      next = new Trigger.SpeedDownTo(at[i]);
      give(to[i] == 0 ? new Command.Release() : brake(to[i], Command.Stage.EASE), to[i]);
    }
    if (braking.staysOn()) {
      boolean met = stepper.speedMps() <= braking.aimMps() + Slack.ROUNDING;
      met =
          met || train.advance(Double.POSITIVE_INFINITY, braking.aimMps()) == StopReason.SPEED_DOWN;
      return Outcome.now(stepper, met);
    }
    if (braking.releases()) {
      train.advance(stepper.timeS() + braking.emptyS(stepper.pressurePa()), 0);
      return Outcome.now(stepper, true);
    }
    StopReason ended = train.advance(Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY);
    if (ended == StopReason.STANDSTILL) {
      stand();
    }
    return Outcome.now(stepper, ended == StopReason.STANDSTILL);
  }

  /** The first application and the main one. */
  private void applications() {
    double felt = !Braking.hardlyBegun(lowest, began) || braking.releases() ? lowest : 0;
    felt = Math.max(felt, braking.aimMps());
    double[] to = braking.easePa();
    double first =
        braking.creeping(began)
            ? Math.min(braking.firstPa(), to[to.length - 1])
            : braking.firstPa();
    boolean checked = presentPa > 0 && presentPa >= first;
    if (presentPa < first) {
      give(brake(first, Command.Stage.FIRST), first);
      train.advance(stepper.timeS() + braking.firstHeldS(), felt);
      next = new Trigger.After(braking.firstHeldS());
    }
    boolean heavier = heavier();
    if (checked && (!heavier || braking.onHeldS() > 0)) {
      // The application that checked the speed stays on: from here it is for the target.
      give(brake(presentPa, Command.Stage.FIRST), presentPa);
      if (heavier) {
        train.advance(stepper.timeS() + braking.onHeldS(), felt);
        next = new Trigger.After(braking.onHeldS());
        heavier = heavier();
      }
    }
    if (heavier) {
      give(brake(braking.mainPa(), Command.Stage.MAIN), braking.mainPa());
    }
  }

  /**
   * Not for a moment before a brake comes off that only releases fully: it would still be on when
   * the train stands.
   */
  private boolean heavier() {
    boolean soonOff =
        !braking.rig().gradualRelease()
            && braking.releases()
            && presentPa > 0
            && Braking.hardlyBegun(lowest, stepper.speedMps());
    return !soonOff
        && braking.mainPa() > presentPa
        && stepper.speedMps() > braking.mainAboveMps() + Slack.SPEED_MPS;
  }

  private void give(Command command, double pressurePa) {
    train.brake(braking.rig(), pressurePa);
    presentPa = pressurePa;
    told.accept(next, command);
  }

  private void stand() {
    told.accept(new Trigger.Standstill(), new Command.Stand());
  }

  private static Command brake(double pressurePa, Command.Stage stage) {
    return new Command.Brake(pressurePa, stage);
  }
}
