package gradepost.told;

import gradepost.told.print.PrintedTime;
import java.util.List;

/**
 * What to do and what to wait for before it. A power handle that is taken through its notches is
 * one order.
 *
 * @param further the notches after the first one, each a time after the one before
 */
public record PrintedOrder(PrintedTrigger on, PrintedCommand does, List<Notch> further) {

  /**
   * One more notch.
   *
   * @param index into the notches of the stock
   */
  public record Notch(int index, PrintedTime after) {}

  public PrintedOrder {
    further = List.copyOf(further);
  }
}
