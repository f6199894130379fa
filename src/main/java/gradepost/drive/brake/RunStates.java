package gradepost.drive.brake;

import gradepost.motion.Snapshot;
import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import java.util.ArrayList;
import java.util.List;

/**
 * A run that can be picked up again anywhere along it: its states just after each handle movement.
 * Between two of them the handles rest.
 */
public class RunStates {
  /** While the handles rest a state is kept this often, s. */
  private static final double KEPT_EVERY_S = 3;

  private final List<Snapshot> states = new ArrayList<>();
  private final StopConditions until = new StopConditions();

  /** Adds a state behind those that there are. */
  public void add(Snapshot state) {
    states.add(state);
  }

  /** Adds the present state of a run, unless the last one is near and the handles are the same. */
  public void follow(Stepper stepper) {
    Snapshot last = states.isEmpty() ? null : states.get(states.size() - 1);
    boolean near =
        last != null
            && last.notch() == stepper.notch()
            && last.demandPa() == stepper.demandPa()
            && stepper.timeS() < last.timeS() + KEPT_EVERY_S;
    if (!near) {
      states.add(stepper.save());
    }
  }

  /** Adds all states of another run behind those that there are. */
  public void addAll(RunStates other) {
    states.addAll(other.states);
  }

  /** Where the run begins, metres run. */
  public double startM() {
    return states.get(0).atM();
  }

  /** Where its last state is, metres run. */
  public double endM() {
    return states.get(states.size() - 1).atM();
  }

  /** From where on the train coasts up to the last state, metres run; there where it does not. */
  public double idleFromM() {
    int i = states.size() - 1;
    while (i > 0 && idle(states.get(i)) && idle(states.get(i - 1))) {
      i--;
    }
    return states.get(i).atM();
  }

  private static boolean idle(Snapshot state) {
    return state.notch() < 0 && state.demandPa() == 0;
  }

  /** Index of the last state at or before a place. */
  public int indexAt(double atM) {
    int i = states.size() - 1;
    while (i > 0 && states.get(i).atM() > atM) {
      i--;
    }
    return i;
  }

  /** The last state that is no later than this; the first where all are. */
  public Snapshot lastBefore(double timeS) {
    int i = states.size() - 1;
    while (i > 0 && states.get(i).timeS() > timeS) {
      i--;
    }
    return states.get(i);
  }

  /** Whether a brake is asked for anywhere from this place on. */
  public boolean brakesFrom(double atM) {
    return states.subList(indexAt(atM), states.size()).stream().anyMatch(s -> s.demandPa() > 0);
  }

  /** One of the states, in their order. */
  public Snapshot state(int index) {
    return states.get(index);
  }

  /** How many states there are. */
  public int size() {
    return states.size();
  }

  /** Puts the stepper where the run is at a place; past the last state it rolls on. */
  public void pickUp(Stepper stepper, double atM) {
    Snapshot from = states.get(indexAt(atM));
    stepper.restore(from);
    stepper.advance(until.clear().place(atM));
  }

  /**
   * The same where the run ends, with the brake that checked the speed up to there still on: the
   * last state of a line is without it.
   */
  public void pickUpBraked(Stepper stepper, double atM) {
    int last = states.size() - 1;
    boolean takenOff =
        last > 0 && states.get(last).demandPa() == 0 && states.get(last - 1).demandPa() > 0;
    if (takenOff
        && indexAt(atM) == last
        && Math.abs(states.get(last).atM() - atM) < Slack.PLACE_M) {
      stepper.restore(states.get(last - 1));
      stepper.advance(until.clear().place(atM));
    } else {
      pickUp(stepper, atM);
    }
  }

  /** When power was last taken off before a place: running seconds, or −1 where it is on. */
  public double powerOffSinceS(double atM) {
    int i = indexAt(atM);
    if (states.get(i).notch() >= 0) {
      return -1;
    }
    while (i > 0 && states.get(i - 1).notch() < 0) {
      i--;
    }
    return states.get(i).timeS();
  }
}
