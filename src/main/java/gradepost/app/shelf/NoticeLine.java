package gradepost.app.shelf;

import java.util.List;

/**
 * A line for which there can be a notice.
 *
 * @param name of its route
 * @param forward what trains in the listed order are called
 * @param backward what the others are called
 * @param speedUnit in which its speeds are given
 * @param lines names of its running lines
 * @param places of its features, in forward order
 */
public record NoticeLine(
    String name,
    String forward,
    String backward,
    String speedUnit,
    List<String> lines,
    List<Place> places) {

  /**
   * A place to pick.
   *
   * @param at as a notice has it, with its section where two sections have the mileage
   * @param what lies there
   */
  public record Place(String at, String what) {}

  /** Copies the lists. */
  public NoticeLine {
    lines = List.copyOf(lines);
    places = List.copyOf(places);
  }
}
