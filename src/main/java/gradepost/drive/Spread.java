package gradepost.drive;

/**
 * Where the train comes to its target when the printed technique is carried out and nothing is
 * corrected: where it stands, or where its speed is down to the permissible one of the board.
 * Percentiles of how far short that is, negative past the target.
 *
 * @param pastShare share of the runs that pass the target
 */
public record Spread(
    double shortM05,
    double shortM10,
    double shortM50,
    double shortM95,
    double pastShare,
    int samples) {}
