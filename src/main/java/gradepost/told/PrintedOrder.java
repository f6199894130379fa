package gradepost.told;

import java.util.List;

/**
 * What to do and what to wait for before it. A power handle that is taken through its notches is
 * one order, and so is a first application with the main one behind it, a running brake test with
 * its release, and a brake that is eased again as the speed drops.
 *
 * @param further what follows, each after the one before
 */
public record PrintedOrder(PrintedTrigger on, PrintedCommand does, List<Further> further) {

  /**
   * One more notch, the main application, the release, or less brake again.
   *
   * @param on a time after what is done before it, or a speed that has dropped to this
   */
  public record Further(PrintedCommand does, PrintedTrigger on) {}

  public PrintedOrder {
    further = List.copyOf(further);
  }
}
