package gradepost.drive;

import gradepost.route.Location;
import java.util.Optional;

/** What an approach is driven to: a place, and the speed that may not be exceeded there. */
public sealed interface Target {

  /** Distance run of the front of the train when it meets the target, in metres. */
  double atM();

  /** Permissible speed there; 0 for a stop. */
  double speedMps();

  String name();

  /**
   * A booked stop.
   *
   * @param markText the stop mark ("4-car mark", or "platform end" where there is no mark)
   * @param buffersM distance run of the buffer stops, where the platform road ends in them
   * @param platformStartM where the platform begins for this train
   */
  record Stop(
      String name,
      Call call,
      String markText,
      double atM,
      double platformStartM,
      double platformEndM,
      Optional<Double> buffersM)
      implements Target {
    @Override
    public double speedMps() {
      return 0;
    }

    public boolean terminal() {
      return buffersM.isPresent();
    }
  }

  /**
   * A fall of the permissible speed.
   *
   * @param kind what makes it
   * @param reference of the notice, for a temporary one; else the restriction's name
   * @param fromMps permissible speed before it
   * @param warningM distance run of the first board that warns of it
   */
  record Reduction(
      String name,
      Kind kind,
      String reference,
      double atM,
      double speedMps,
      double fromMps,
      Optional<Location> warning,
      Optional<Double> warningM)
      implements Target {

    /** What makes the permissible speed fall. */
    public enum Kind {
      PERMANENT,
      TEMPORARY,
      JUNCTION,
      TERMINAL
    }
  }
}
