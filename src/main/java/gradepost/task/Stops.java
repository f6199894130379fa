package gradepost.task;

import gradepost.route.Path;
import gradepost.route.station.Platform;
import gradepost.route.station.StopMark;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Where a train stops at a platform. */
public final class Stops {

  /** The marks for trains of this direction, that for the shortest first. */
  public static List<StopMark> marks(Assignment assignment, Platform platform) {
    return platform.stopMarks().stream()
        .filter(m -> m.direction() == assignment.direction())
        .sorted(Comparator.comparingInt(StopMark::cars))
        .toList();
  }

  /** The mark for this number of cars and direction. */
  public static Optional<StopMark> mark(Assignment assignment, Platform platform) {
    return marks(assignment, platform).stream()
        .filter(m -> m.cars() == assignment.formation().cars())
        .findFirst();
  }

  /** Where the front stops: at its mark, or else at the end of the platform. */
  public static double markM(Assignment assignment, Call call) {
    Path path = assignment.path();
    return mark(assignment, call.platform())
        .map(m -> path.metresAt(m.location()))
        .orElseGet(() -> platformEndM(path, call.platform()));
  }

  /** Where this train meets the platform, metres run. */
  public static double platformStartM(Path path, Platform platform) {
    return path.span(platform.extent()).fromM();
  }

  /** Where the platform ends for this train, metres run. */
  public static double platformEndM(Path path, Platform platform) {
    return path.span(platform.extent()).toM();
  }

  /** The target of a call: its mark, or the end of the platform where there is none. */
  public static Target.Stop target(Assignment assignment, Call call) {
    Path path = assignment.path();
    Optional<StopMark> mark = mark(assignment, call.platform());
    double at = markM(assignment, call);
    Optional<Double> buffers =
        call.platform().bufferStops().map(path::metresAt).filter(b -> b >= at - 0.01);
    return new Target.Stop(
        call.station().name(),
        call,
        mark.map(m -> m.cars() + "-car mark").orElse("platform end"),
        at,
        platformStartM(path, call.platform()),
        platformEndM(path, call.platform()),
        buffers);
  }

  private Stops() {}
}
