package gradepost.route.station;

import gradepost.route.place.Applies;
import gradepost.route.place.Extent;
import gradepost.route.place.Hand;
import gradepost.route.place.Location;
import java.util.List;
import java.util.Optional;

/**
 * A platform face.
 *
 * @param number as signed
 * @param side where it lies, in the forward direction
 * @param bufferStops the face of the buffer stops where the platform road ends in them
 * @param doorInstruction what is said where the platform is shorter than a train; may be empty text
 */
public record Platform(
    String number,
    Extent extent,
    Applies applies,
    Hand side,
    Optional<Location> bufferStops,
    List<StopMark> stopMarks,
    String doorInstruction) {
  public Platform {
    stopMarks = List.copyOf(stopMarks);
  }
}
