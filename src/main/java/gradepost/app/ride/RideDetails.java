package gradepost.app.ride;

import gradepost.briefing.signoff.RideReport;
import gradepost.source.ride.RideHeading;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Map;
import java.util.Optional;

/**
 * What is known of a ride beside its file.
 *
 * @param direction by the route's own name; may be left out where the pack has one
 * @param formation likewise
 * @param on the day of the ride
 * @param driver who drove
 * @param assessor who rode with him
 * @param from where the run begins in an export, by its clock; empty for all of it
 * @param to where it ends
 * @param leftOut approaches that are not judged, by number, each with the reason
 * @param form the assessor's, where an export has what it does not: how the train stood at its
 *     marks
 * @param json whether the ride is written as JSON too
 */
public record RideDetails(
    Optional<String> direction,
    Optional<String> formation,
    Optional<LocalDate> on,
    Optional<String> driver,
    Optional<String> assessor,
    Optional<String> from,
    Optional<String> to,
    Map<Integer, String> leftOut,
    Optional<Path> form,
    boolean json) {
  /** Copies the map. */
  public RideDetails {
    leftOut = Map.copyOf(leftOut);
  }

  /** Nothing is. */
  public static RideDetails none() {
    return new RideDetails(
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Map.of(),
        Optional.empty(),
        false);
  }

  /** The same, driven on a day. */
  public RideDetails on(LocalDate day) {
    return new RideDetails(
        direction, formation, Optional.of(day), driver, assessor, from, to, leftOut, form, json);
  }

  /** The same by the driver and the assessor that a file names; else by those that are known. */
  RideDetails by(RideHeading heading) {
    return new RideDetails(
        direction,
        formation,
        on,
        heading.value("driver").or(() -> driver),
        heading.value("assessor").or(() -> assessor),
        from,
        to,
        leftOut,
        form,
        json);
  }

  RideReport.Named named() {
    return new RideReport.Named(on, driver.orElse(""), assessor.orElse(""));
  }
}
