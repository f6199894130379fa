package gradepost.told;

import gradepost.told.print.PrintedLength;
import gradepost.told.print.PrintedPlace;
import gradepost.told.print.PrintedSpeed;
import java.util.List;
import java.util.Optional;

/**
 * Where the brake goes on in one state of the rail, and how.
 *
 * @param speed of the planned train there; empty where the instructions tell it, or the sheet does
 *     not tell the cue
 * @param technique what is done from there on; of the planned rail, which the sheet tells step by
 *     step, only the main application
 * @param cue what to count from to the place; of the planned rail the application tells that
 * @param pastLast how far it lies past the last place for the service brake on the safe side
 */
public record PrintedPoint(
    PrintedPlace place,
    Optional<PrintedSpeed> speed,
    List<PrintedOrder> technique,
    Seen cue,
    Optional<PrintedLength> pastLast) {
  public PrintedPoint {
    technique = List.copyOf(technique);
  }
}
