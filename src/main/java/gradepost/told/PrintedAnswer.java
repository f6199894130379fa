package gradepost.told;

import gradepost.told.print.PrintedLength;
import gradepost.told.print.PrintedSpeed;
import java.util.Optional;

/**
 * What another brake does where the service brake fails.
 *
 * @param atTarget speed there at the worst; empty where the target is met in time
 * @param suffices whether no other brake is needed: it meets the target, or nearly does
 * @param signalsUnknown whether only a signal that is not supplied could matter
 * @param leftToBuffers room that is left before the buffer stops, where that is told
 */
public record PrintedAnswer(
    PrintedBrake brake,
    PrintedEnd end,
    Optional<PrintedSpeed> atTarget,
    boolean suffices,
    boolean signalsUnknown,
    Optional<PrintedLength> leftToBuffers) {

  /** Whether the target is met in time. */
  public boolean holds() {
    return atTarget.isEmpty();
  }
}
