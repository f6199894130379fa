package gradepost.plan;

import gradepost.task.Call;
import gradepost.told.print.PrintGrid;
import gradepost.told.print.PrintedTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A leg for which a running time is booked, as it is told.
 *
 * @param from where the train starts
 * @param to where it comes to stand
 * @param booked not more than what is booked
 * @param planned not less than what the plan takes, from start to stand
 */
public record BookedLeg(Call from, Call to, PrintedTime booked, PrintedTime planned) {

  /** Those of a plan, in order of travel; none where no time is booked. */
  public static List<BookedLeg> of(Plan plan) {
    PrintGrid grid = new PrintGrid(plan.assignment().path());
    List<BookedLeg> legs = new ArrayList<>();
    if (plan.trace().points().isEmpty()) {
      return legs;
    }
    Run run = new Run(plan.trace());
    Call from = plan.assignment().calls().get(0);
    double fromS = 0;
    for (Approach approach : plan.approaches()) {
      Optional<Call> to = approach.target().stop().map(stop -> stop.call());
      if (to.isPresent()) {
        double toS = plan.standS(run, approach);
        if (to.get().booked().isPresent()) {
          legs.add(
              new BookedLeg(
                  from,
                  to.get(),
                  grid.timeLeft(to.get().booked().get().seconds()),
                  grid.timeNeeded(toS - fromS)));
        }
        from = to.get();
        fromS = toS;
      }
    }
    return List.copyOf(legs);
  }

  /** Seconds by which the plan takes longer than is booked; negative where it has time to spare. */
  public long lateS() {
    return planned.seconds() - booked.seconds();
  }
}
