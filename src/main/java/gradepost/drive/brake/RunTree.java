package gradepost.drive.brake;

import gradepost.motion.Snapshot;
import gradepost.motion.Stepper;
import gradepost.motion.StopConditions;
import gradepost.motion.StopReason;
import gradepost.motion.Trail;
import gradepost.motion.TrainBrake;
import java.util.ArrayList;
import java.util.List;

/**
 * Brakings of one train from one state, tried one after the other: what several of them begin with
 * is run once. All are made with the same brake.
 */
final class RunTree implements BrakedTrain {
  private final Stepper stepper;
  private final StopConditions until = new StopConditions();
  private final Node root;
  private Node at;

  /** A state, and what came of it. */
  private static final class Node {
    final Snapshot state;
    final StopReason ended;
    final List<Branch> branches = new ArrayList<>(2);
    final Trail trail = new Trail();

    Node(Snapshot state, StopReason ended) {
      this.state = state;
      this.ended = ended;
    }
  }

  /** A pressure that was asked for, or else (not a number) what a run went on to. */
  private record Branch(double pressurePa, double timeS, double downToMps, Node to) {
    boolean asks(double otherPa) {
      return pressurePa == otherPa;
    }

    /** Whether this is a run to another end: also if it did not come down to a speed above that. */
    boolean runs(double otherS, double otherMps) {
      return Double.isNaN(pressurePa)
          && timeS == otherS
          && (downToMps == otherMps || (otherMps < downToMps && to.ended != StopReason.SPEED_DOWN));
    }
  }

  /**
   * @param start where each of them begins; nothing watches the stepper
   */
  RunTree(Stepper stepper, Snapshot start) {
    this.stepper = stepper;
    root = new Node(start, StopReason.NEVER);
    at = root;
  }

  /** Puts the train back to where each of them begins. */
  void again() {
    goTo(root);
  }

  @Override
  public void brake(TrainBrake rig, double pressurePa) {
    for (Branch branch : at.branches) {
      if (branch.asks(pressurePa)) {
        goTo(branch.to());
        return;
      }
    }
    stepper.brake(rig, pressurePa);
    add(pressurePa, 0, 0, StopReason.NEVER);
  }

  @Override
  public StopReason advance(double timeS, double downToMps) {
    for (Branch branch : at.branches) {
      if (branch.runs(timeS, downToMps)) {
        goTo(branch.to());
        return at.ended;
      }
    }
    until.clear().hopeless(root.state.atM()).time(timeS).speedDown(downToMps);
    return add(Double.NaN, timeS, downToMps, stepper.advance(until, at.trail));
  }

  private void goTo(Node known) {
    at = known;
    stepper.restore(at.state);
  }

  private StopReason add(double pressurePa, double timeS, double downToMps, StopReason ended) {
    Node next = new Node(stepper.save(), ended);
    at.branches.add(new Branch(pressurePa, timeS, downToMps, next));
    at = next;
    return ended;
  }
}
