package gradepost.app.author;

import java.util.List;
import java.util.Optional;

/**
 * What was found in a text that is not saved yet.
 *
 * @param here what is wrong or worth knowing in it, by line
 * @param elsewhere the same in the files of packs that use it, as they would be with it
 * @param packs that use it, by their names from the folder
 * @param strip the line as it would be; empty where no pack that uses it can be read
 */
public record Checked(
    List<Found> here, List<Found> elsewhere, List<String> packs, Optional<Strip> strip) {
  static final String ERROR = "error";

  /** Copies the lists. */
  public Checked {
    here = List.copyOf(here);
    elsewhere = List.copyOf(elsewhere);
    packs = List.copyOf(packs);
  }

  /**
   * One finding.
   *
   * @param file by its name from the folder
   * @param line counted from 1, as the column is
   * @param severity error, warning or note
   * @param says what was found and what is allowed
   * @param maybe what may have been meant; empty text where nothing comes near
   */
  public record Found(
      String file, int line, int column, String severity, String says, String maybe) {}

  /**
   * The line drawn downwards in the direction of travel.
   *
   * @param of whose strip it is: direction, train, pack
   * @param svg an element, its texts escaped
   * @param places which lines of the text name which places
   */
  public record Strip(String of, String svg, List<At> places) {
    /** Copies the list. */
    public Strip {
      places = List.copyOf(places);
    }
  }

  /**
   * A line of the text that names places.
   *
   * @param line counted from 1
   * @param from height in the drawing at which they begin, from 0 at its top to 1 at its foot
   * @param to where they end
   */
  public record At(int line, double from, double to) {}

  /** Whether a pack that uses it could not be briefed. */
  public boolean faulty() {
    return here.stream().anyMatch(f -> f.severity().equals(ERROR))
        || elsewhere.stream().anyMatch(f -> f.severity().equals(ERROR));
  }
}
