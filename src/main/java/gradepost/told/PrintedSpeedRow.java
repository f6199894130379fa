package gradepost.told;

import gradepost.told.print.PrintedPlace;
import gradepost.told.print.PrintedPressure;
import gradepost.told.print.PrintedSpeed;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Where to brake from one speed.
 *
 * @param planned on the rail of the plan; empty where there is no room, or where no train may be so
 *     fast there
 * @param poorest the same on the poorest of the other states of the rail
 */
public record PrintedSpeedRow(
    PrintedSpeed speed, Optional<Planned> planned, Optional<Poor> poorest) {

  /**
   * A place.
   *
   * @param asPlanned whether it is a point of the plan
   * @param brakeOn whether the train of the plan has the brake on there already
   * @param leavesFallback whether the next brake still does if the service brake fails there
   */
  public record Point(
      PrintedPlace place, boolean asPlanned, boolean brakeOn, boolean leavesFallback) {}

  /**
   * On the rail of the plan the technique is that of the instructions.
   *
   * @param most the heaviest application
   */
  public record Planned(Point at, PrintedPressure most) {}

  /**
   * On any other rail it is told whole.
   *
   * @param rail the state for which it is
   */
  public record Poor(String rail, Point at, List<PrintedOrder> technique) {
    public Poor {
      technique = List.copyOf(technique);
    }
  }

  /** The places of the row. */
  public Stream<Point> points() {
    return Stream.concat(planned.stream().map(Planned::at), poorest.stream().map(Poor::at));
  }
}
