package gradepost.drive.brake;

import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import gradepost.motion.StopReason;
import gradepost.plan.Command;
import gradepost.plan.Trigger;
import java.util.function.BiConsumer;

/**
 * Holds a speed between two figures as a driver does it: power up to the notch at the lower one and
 * off at the upper one, or the brake on at the upper one and off at the lower one, up to the place
 * where that ends. It goes on from whatever the handles are at.
 */
public final class HeldSpeed {
  private final Command.Hold hold;
  private final TrainModels models;
  private final double perNotchS;
  private final Stepper stepper;
  private final BiConsumer<Trigger, Command> made;
  private final StopConditions until = new StopConditions();
  private double notchSinceS;

  /**
   * @param stepper the train, where the hold begins
   * @param made told of each movement of a handle, just after it
   */
  public HeldSpeed(
      Command.Hold hold, TrainModels models, Stepper stepper, BiConsumer<Trigger, Command> made) {
    this.hold = hold;
    this.models = models;
    this.perNotchS = models.perNotchS();
    this.stepper = stepper;
    this.made = made;
    this.notchSinceS = stepper.timeS();
  }

  /** What is held. */
  public Command.Hold hold() {
    return hold;
  }

  /** Whether the train has come to where it ends. */
  public boolean over() {
    return stepper.atM() >= hold.untilM() - Slack.PLACE_M;
  }

  /**
   * Runs on to a place, or to where the hold ends.
   *
   * @return {@link StopReason#PLACE} there; else why the train came no further
   */
  public StopReason run(double toM) {
    double endM = Math.min(toM, hold.untilM());
    while (stepper.atM() < endM - Slack.PLACE_M) {
      StopReason ended =
          hold.by().match(notch -> power(notch.notch(), endM), brake -> check(brake, endM));
      if (ended == StopReason.STANDSTILL || ended == StopReason.NEVER) {
        return ended;
      }
    }
    return StopReason.PLACE;
  }

  /** All handles off, where the hold ends. */
  public void end() {
    Trigger here = new Trigger.AtPlace(hold.untilM());
    if (stepper.notch() >= 0) {
      shutOff(here);
    }
    if (stepper.demandPa() > 0) {
      release(here);
    }
  }

  private StopReason power(int highest, double endM) {
    if (stepper.notch() < 0) {
      if (stepper.speedMps() <= hold.lowerMps() + Slack.SPEED_MPS) {
        notch(new Trigger.SpeedDownTo(hold.lowerMps()), 0);
        return StopReason.SPEED_DOWN;
      }
      return stepper.advance(until.clear().place(endM).speedDown(hold.lowerMps()));
    }
    if (stepper.speedMps() >= hold.upperMps() - Slack.SPEED_MPS) {
      shutOff(new Trigger.SpeedUpTo(hold.upperMps()));
      return StopReason.SPEED_UP;
    }
    until.clear().place(endM).speedUp(hold.upperMps());
    if (stepper.notch() < highest) {
      until.time(notchSinceS + perNotchS);
    }
    StopReason ended = stepper.advance(until);
    if (ended == StopReason.TIME) {
      notch(new Trigger.After(perNotchS), stepper.notch() + 1);
    }
    return ended;
  }

  private StopReason check(Command.WithBrake with, double endM) {
    if (stepper.demandPa() > 0) {
      if (stepper.speedMps() <= hold.lowerMps() + Slack.SPEED_MPS) {
        release(new Trigger.SpeedDownTo(hold.lowerMps()));
        return StopReason.SPEED_DOWN;
      }
      return stepper.advance(until.clear().place(endM).speedDown(hold.lowerMps()));
    }
    if (stepper.speedMps() >= hold.upperMps() - Slack.SPEED_MPS) {
      stepper.brake(models.slowing(), with.pressurePa());
      made.accept(
          new Trigger.SpeedUpTo(hold.upperMps()),
          new Command.Brake(with.pressurePa(), Command.Stage.CHECK));
      return StopReason.SPEED_UP;
    }
    return stepper.advance(until.clear().place(endM).speedUp(hold.upperMps()));
  }

  private void notch(Trigger trigger, int notch) {
    stepper.power(notch);
    notchSinceS = stepper.timeS();
    made.accept(trigger, new Command.Power(notch));
  }

  private void shutOff(Trigger trigger) {
    stepper.shutOff();
    made.accept(trigger, new Command.ShutOff());
  }

  private void release(Trigger trigger) {
    stepper.brake(models.slowing(), 0);
    made.accept(trigger, new Command.Release());
  }
}
