package gradepost.app.ride;

import gradepost.app.issue.Task;
import gradepost.policy.RideRules;
import gradepost.ride.Ride;
import gradepost.ride.Tying;
import gradepost.text.Mistake;
import java.util.List;
import java.util.Optional;

/** Whether an export is of the course that it is said to be, by where the train stood. */
final class RideRoad {
  /** Below this legs are as much alike as one wheel counts them. */
  private static final double ALIKE = 0.005;

  /** Another course has to fit so much better. */
  private static final double BETTER = 3;

  private static final int LEAST_STOPS = 2;

  private final Task task;
  private final List<Task> courses;
  private final Tying own;

  RideRoad(Task task, List<Task> courses, RideRules rules, Ride.Recorded ride) {
    this.task = task;
    this.courses = courses;
    this.own = new Tying(task.assignment(), ride, rules.recorder());
  }

  /** What is wrong with an export, if its stands do not lie as the stops of the course do. */
  Optional<Mistake> mistake() {
    Optional<Task> other = better(false);
    return own.fit().stops() >= LEAST_STOPS && other.isEmpty()
        ? Optional.empty()
        : Optional.of(
            RideText.OTHER_ROAD.with(
                AssessRide.direction(task), AssessRide.formation(task), other.map(RideRoad::name)));
  }

  /**
   * That the stops of another formation fit better: they lie so near those of this one that a wheel
   * that slips may bring it about, so that it is told and no more.
   */
  Optional<Mistake> doubt() {
    return better(true)
        .map(
            t ->
                RideText.OTHER_FORMATION.with(AssessRide.formation(task), AssessRide.formation(t)));
  }

  /** Another course that fits better, of the same direction or of another. */
  private Optional<Task> better(boolean sameDirection) {
    Tying.Fit fit = own.fit();
    if (fit.stops() == task.assignment().calls().size() && fit.unlike() <= ALIKE) {
      return Optional.empty();
    }
    return courses.stream()
        .filter(t -> !t.equals(task))
        .filter(t -> (t.assignment().direction() == task.assignment().direction()) == sameDirection)
        .filter(t -> better(own.to(t.assignment()).fit(), fit))
        .findFirst();
  }

  private static String name(Task course) {
    return AssessRide.direction(course) + ", " + AssessRide.formation(course);
  }

  private static boolean better(Tying.Fit other, Tying.Fit own) {
    return other.stops() > own.stops()
        || (other.stops() == own.stops()
            && own.unlike() > ALIKE
            && other.unlike() * BETTER < own.unlike());
  }
}
