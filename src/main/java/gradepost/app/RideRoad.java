package gradepost.app;

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

  private final Task task;
  private final List<Task> courses;
  private final RideRules rules;

  RideRoad(Task task, List<Task> courses, RideRules rules) {
    this.task = task;
    this.courses = courses;
    this.rules = rules;
  }

  /** What is wrong with an export, if its stands do not lie as the stops of the course do. */
  Optional<Mistake> mistake(Ride.Recorded ride) {
    Tying.Fit own = fit(task, ride);
    if (own.stops() == task.assignment().calls().size() && own.unlike() <= ALIKE) {
      return Optional.empty();
    }
    Optional<Task> other =
        courses.stream()
            .filter(t -> !t.equals(task))
            .filter(t -> better(fit(t, ride), own))
            .findFirst();
    if (own.stops() >= 2 && other.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        AppText.OTHER_ROAD.with(
            AssessRide.direction(task),
            AssessRide.formation(task),
            other.map(t -> AssessRide.direction(t) + ", " + AssessRide.formation(t))));
  }

  private Tying.Fit fit(Task course, Ride.Recorded ride) {
    return new Tying(course.assignment(), ride, rules.recorder()).fit();
  }

  private static boolean better(Tying.Fit other, Tying.Fit own) {
    return other.stops() > own.stops()
        || (other.stops() == own.stops()
            && own.unlike() > ALIKE
            && other.unlike() * BETTER < own.unlike());
  }
}
