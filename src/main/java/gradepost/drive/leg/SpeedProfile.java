package gradepost.drive.leg;

import gradepost.drive.brake.RunStates;
import gradepost.motion.EvenChange;
import gradepost.motion.Stepper;
import java.util.ArrayList;
import java.util.List;

/**
 * A run whose speed is given from place to place, power and brake off: between two places the speed
 * changes evenly.
 */
public final class SpeedProfile extends RunStates {
  private record Place(double timeS, double atM, double speedMps) {}

  private final List<Place> places = new ArrayList<>();

  /** Adds the time, the place and the speed of a stepper that coasts there. */
  public void addHeld(Stepper stepper) {
    places.add(new Place(stepper.timeS(), stepper.atM(), stepper.speedMps()));
    add(stepper.save());
  }

  /** The same run up to a place: where it begins, and what was added up to there. */
  public SpeedProfile upTo(double toM) {
    SpeedProfile out = new SpeedProfile();
    for (int i = 0; i < places.size() && (i == 0 || places.get(i).atM() <= toM); i++) {
      out.places.add(places.get(i));
      out.add(state(i));
    }
    return out;
  }

  @Override
  public void pickUp(Stepper stepper, double atM) {
    int i = Math.min(indexAt(atM), places.size() - 2);
    if (i < 0 || atM >= places.get(i + 1).atM()) {
      super.pickUp(stepper, atM);
      return;
    }
    Place from = places.get(i);
    Place to = places.get(i + 1);
    double mps = EvenChange.speedMps(from.atM(), from.speedMps(), to.atM(), to.speedMps(), atM);
    double rolled = atM - from.atM();
    double afterS = rolled <= 0 ? 0 : EvenChange.seconds(rolled, from.speedMps(), mps);
    stepper.place(from.timeS() + afterS, atM, mps);
  }
}
