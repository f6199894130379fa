package gradepost.source.ride;

import gradepost.plan.Plan;
import gradepost.ride.Ride;
import gradepost.source.route.RouteFrame;
import gradepost.yaml.Reader;
import gradepost.yaml.Reading;
import gradepost.yaml.SourcePosition;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads what was observed of a ride: an assessor's lines, an approach each, or a recorder's export.
 * The names of the columns tell which it is.
 */
final class RideReader {
  /** A cell as typed, without its quotation marks, and where it begins. */
  record Cell(String text, SourcePosition spot) {}

  private static final Pattern UNIT = Pattern.compile(".*[(\\[](.*)[)\\]]\\s*");

  private final RideText.Table table;
  private final Plan plan;
  private final RideAsked asked;
  private final Reader in;

  /**
   * @param name of the file
   * @param asked what the ride is said to be
   */
  RideReader(String name, RideText.Table table, Plan plan, RideAsked asked) {
    this.table = table;
    this.plan = plan;
    this.asked = asked;
    this.in = new Reader(name, RouteFrame.of(plan.assignment().route()));
  }

  /** The ride, or what is wrong. */
  Reading<Ride> read() {
    table.problems().all().forEach(in::add);
    if (in.count() == 0 && table.rows().isEmpty()) {
      in.error(
          new SourcePosition(in.file(), 1, 1),
          table.headings().isEmpty() ? RideMistakes.EMPTY_FILE : RideMistakes.HEADINGS_ONLY);
    }
    Optional<Ride> ride = in.count() > 0 ? Optional.empty() : ride();
    return Reading.of(ride.filter(r -> in.count() == 0), in.problems());
  }

  private Optional<Ride> ride() {
    return table.recorded()
        ? new RecordedRide(plan, asked, in).read(table)
        : new TypedRide(plan, asked, in).read(table);
  }

  /** A heading in lower case with single spaces. */
  static String plain(String heading) {
    return heading.toLowerCase(Locale.ROOT).replaceAll("[\\s_-]+", " ").strip();
  }

  /** The unit in brackets of either kind behind the name, where there is one. */
  static Optional<String> unit(String heading) {
    return Optional.of(UNIT.matcher(heading)).filter(Matcher::matches).map(m -> m.group(1).strip());
  }

  /** The same without the unit in brackets. */
  static String name(String heading) {
    return plain(heading.replaceAll("[(\\[].*[)\\]]\\s*$", ""));
  }
}
