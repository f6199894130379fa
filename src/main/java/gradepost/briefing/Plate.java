package gradepost.briefing;

import java.util.List;
import java.util.Optional;

/**
 * The boxes of one approach on a page of its own, each always in the same place.
 *
 * @param grid how high the boxes are
 * @param about under the name: what it is, where, on what track
 * @param brakeAt where the brake goes on first; empty where the planned run needs none
 * @param unbraked what stands in that box instead
 * @param firstLine how many of the approach's instructions come before the first that stands here:
 *     they stand on the line sheets
 * @param pressureUnit of the gauge
 * @param section of the mileage, as it is written behind a place: in the tables of the plate it is
 *     understood
 * @param speeds where to brake from another speed at the first point
 * @param fails one table: what is left when the service brake gives nothing; empty where the stock
 *     has no other brake
 * @param notes what else a driver has to know here
 * @param pictures of what the driver goes by
 */
public record Plate(
    Grid grid,
    List<String> about,
    Optional<BrakeAt> brakeAt,
    String unbraked,
    int firstLine,
    String pressureUnit,
    String section,
    Optional<Speeds> speeds,
    Optional<Table> fails,
    List<String> notes,
    List<Shown> pictures) {

  /**
   * How high the boxes of a plate are, in millimetres from the top; together a page.
   *
   * @param headMm name and braking point, side by side
   * @param pictureMm speed over distance
   * @param rowsMm what to do, and where to brake from another speed, side by side
   * @param failsMm if the service brake fails
   * @param findings how many there is room for; the reference has the rest
   */
  public record Grid(int headMm, int pictureMm, int rowsMm, int failsMm, int findings) {
    /** An approach with up to seven rows. */
    public static final Grid SEVEN = new Grid(54, 67, 73, 40, 4);

    /** Up a terminal platform, or one brake after another: up to ten rows. */
    public static final Grid TEN = new Grid(53, 63, 78, 34, 2);

    /** The same with more rows: a lower picture, and one finding. */
    public static final Grid TWELVE = new Grid(53, 57, 88, 34, 1);

    /**
     * The one that has room for so many rows.
     *
     * @param several whether one brake comes after another
     */
    public static Grid of(int rows, boolean several) {
      return rows > 10 ? TWELVE : rows > 7 || several ? TEN : SEVEN;
    }
  }

  /**
   * The braking point.
   *
   * @param others the point on each other rail, where it is another
   * @param setBy what set it
   * @param rows its cues, speed and pressures
   */
  public record BrakeAt(String place, List<String> others, String setBy, List<Fact> rows) {
    public BrakeAt {
      others = List.copyOf(others);
      rows = List.copyOf(rows);
    }
  }

  /**
   * Where to brake from another speed.
   *
   * @param columns five: the speed, a place and a pressure on the rail of the plan, both on any
   *     other; three where there is no other
   */
  public record Speeds(String title, List<String> columns, List<Speed> rows, List<String> notes) {
    public Speeds {
      columns = List.copyOf(columns);
      rows = List.copyOf(rows);
      notes = List.copyOf(notes);
    }
  }

  /**
   * One speed.
   *
   * @param cells as many as there are columns
   * @param planned whether the first place is that of the plan
   * @param otherPlanned whether the second is
   */
  public record Speed(List<String> cells, boolean planned, boolean otherPlanned) {
    public Speed {
      cells = List.copyOf(cells);
    }
  }

  public Plate {
    about = List.copyOf(about);
    notes = List.copyOf(notes);
    pictures = List.copyOf(pictures);
  }

  /** The pictures that there is room for. */
  public List<Shown> onPaper() {
    return pictures.stream().filter(Shown::onPaper).toList();
  }

  /** The same with these pictures. */
  public Plate with(List<Shown> others) {
    return new Plate(
        grid,
        about,
        brakeAt,
        unbraked,
        firstLine,
        pressureUnit,
        section,
        speeds,
        fails,
        notes,
        others);
  }
}
