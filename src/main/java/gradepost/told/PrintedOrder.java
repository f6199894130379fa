package gradepost.told;

import gradepost.told.print.PrintedTime;
import java.util.List;

/**
 * What to do and what to wait for before it. A power handle that is taken through its notches is
 * one order, and so is a first application with the main one behind it, and a running brake test
 * with its release.
 *
 * @param further what follows, each a time after the one before
 */
public record PrintedOrder(PrintedTrigger on, PrintedCommand does, List<Further> further) {

  /** One more notch, the main application, or the release. */
  public record Further(PrintedCommand does, PrintedTime after) {}

  public PrintedOrder {
    further = List.copyOf(further);
  }
}
