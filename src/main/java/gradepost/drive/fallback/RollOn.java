package gradepost.drive.fallback;

import gradepost.drive.leg.ApproachSolution;
import java.util.List;
import java.util.Optional;

/**
 * How the plan goes on from a step of the speed up a terminal platform: the brake is let go, and
 * the train rolls on over the next steps up to the next application.
 *
 * @param releaseMps the speed at which the brake is let go
 * @param untilM where the next application begins, metres run
 */
record RollOn(double releaseMps, double untilM) {
  /** Empty where the piece is braked for something else, or its brake is not let go. */
  static Optional<RollOn> of(List<ApproachSolution> braked, int index) {
    ApproachSolution piece = braked.get(index);
    double untilM =
        index + 1 < braked.size()
            ? braked.get(index + 1).brakingM().orElse(piece.target().atM())
            : piece.target().atM();
    return piece
        .braking()
        .filter(b -> piece.target().isTerminalStep() && b.releases())
        .map(b -> new RollOn(b.releasedAtMps(), untilM));
  }
}
