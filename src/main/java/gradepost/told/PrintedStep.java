package gradepost.told;

import gradepost.told.print.PrintedPlace;
import gradepost.told.print.PrintedSpeed;
import gradepost.told.print.PrintedTime;
import java.util.Optional;

/**
 * One numbered instruction of a sheet.
 *
 * @param where it is done: its place, or about where what it waits for comes
 * @param speed there
 * @param sinceLast from the instruction before it on the sheet; empty for the first one
 * @param seen what tells the place
 */
public record PrintedStep(
    PrintedOrder order,
    PrintedPlace where,
    PrintedSpeed speed,
    Optional<PrintedTime> sinceLast,
    Seen seen) {}
