package gradepost.drive;

import java.util.Optional;

/**
 * The planned point in one state of the rail.
 *
 * @param atM on the print grid; empty where there is none
 * @param mainPa the main application there
 * @param technique what that was solved from; empty where it is the plan's own
 */
record PlannedPoint(Optional<Double> atM, double mainPa, Optional<Braking> technique) {
  static PlannedPoint of(Piece piece) {
    return new PlannedPoint(
        piece.found() ? piece.brakingM() : Optional.empty(),
        piece.braking().map(Braking::mainPa).orElse(0.0),
        Optional.empty());
  }
}
