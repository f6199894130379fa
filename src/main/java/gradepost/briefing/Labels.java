package gradepost.briefing;

import java.util.List;

/**
 * Labels for envelopes or pigeon-holes, on sheets of A4 without gaps between them.
 *
 * @param sheets the labels of each sheet, line by line; a place that is left free has none
 */
public record Labels(
    String language,
    String title,
    String subject,
    String issueLine,
    CoverIssue issue,
    Grid grid,
    List<List<Label>> sheets)
    implements Printable {
  /**
   * How a sheet is divided.
   *
   * @param across labels side by side
   * @param down labels one below another
   * @param widthMm of a label
   * @param heightMm of a label
   */
  public record Grid(int across, int down, double widthMm, double heightMm) {
    /** So many that a name and a line under it have room. */
    private static final int MOST_ACROSS = 4;

    /** Likewise. */
    private static final int MOST_DOWN = 12;

    /** The A4 sheet, divided evenly. */
    public Grid(int across, int down) {
      this(across, down, 210.0 / across, 297.0 / down);
    }

    /** Checks the numbers. */
    public Grid {
      if (!has(across, down)) {
        throw new IllegalArgumentException(across + " by " + down + " labels");
      }
    }

    /** Whether a sheet can be divided so. */
    public static boolean has(int across, int down) {
      return across >= 1 && across <= MOST_ACROSS && down >= 1 && down <= MOST_DOWN;
    }

    /** How many labels a sheet has. */
    public int places() {
      return across * down;
    }
  }

  /**
   * One label.
   *
   * @param name of the person or place, in lines; none where the label is left free
   * @param under the depot, and "label 1 of 2" where one label does not hold all; may be empty
   * @param lines what is given, each no wider than the label
   */
  public record Label(List<String> name, String under, List<String> lines) {
    /** A label that is left free. */
    public static final Label FREE = new Label(List.of(), "", List.of());

    /** Copies the lists. */
    public Label {
      name = List.copyOf(name);
      lines = List.copyOf(lines);
    }
  }

  /** Copies the lists. */
  public Labels {
    sheets = sheets.stream().map(List::copyOf).toList();
  }

  @Override
  public String template() {
    return "labels.ftlh";
  }
}
