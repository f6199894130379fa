package gradepost.source.ride;

import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The time of a line of an export: a number of seconds, a time of day ({@code 06:12:03.2}), or a
 * day and a time ({@code 2026-11-23T06:12:03}).
 */
final class RecorderTime {
  private static final double DAY_S = 86_400;
  private static final Pattern NUMBER = Pattern.compile("-?\\d{1,12}(\\.\\d{1,9})?");
  private static final Pattern OF_DAY =
      Pattern.compile("(\\d{1,2}):(\\d\\d)(?::(\\d\\d(?:\\.\\d+)?))?");
  private static final Pattern DATED =
      Pattern.compile("(\\d{4}-\\d\\d-\\d\\d)[T ](\\d\\d:\\d\\d.*)");

  /** Seconds since midnight, or since whatever the recorder counts from. */
  static Optional<Double> seconds(String text) {
    String plain = text.strip().replace(',', '.');
    if (NUMBER.matcher(plain).matches()) {
      return Optional.of(Double.parseDouble(plain));
    }
    Matcher dated = DATED.matcher(plain);
    if (dated.matches()) {
      return dated(dated.group(1), dated.group(2));
    }
    Matcher day = OF_DAY.matcher(plain);
    if (day.matches()) {
      double s = day.group(3) == null ? 0 : Double.parseDouble(day.group(3));
      int hours = Integer.parseInt(day.group(1));
      int minutes = Integer.parseInt(day.group(2));
      return hours < 24 && minutes < 60 && s < 60
          ? Optional.of(hours * 3600.0 + minutes * 60.0 + s)
          : Optional.empty();
    }
    return Optional.empty();
  }

  private static Optional<Double> dated(String day, String time) {
    Optional<Double> ofDay = seconds(time.replaceAll("(Z|[+-]\\d\\d:?\\d\\d)$", ""));
    try {
      double midnight = LocalDateTime.parse(day + "T00:00").toEpochSecond(ZoneOffset.UTC);
      return ofDay.map(s -> midnight + s);
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  /** Whether a text is a time of day, which begins again at midnight. */
  static boolean isOfDay(String text) {
    return text.indexOf(':') > 0 && OF_DAY.matcher(text.strip().replace(',', '.')).matches();
  }

  /** The same moment behind another, where the clock has passed midnight since. */
  static double behind(double beforeS, double s) {
    return s < beforeS - DAY_S / 2 ? behind(beforeS, s + DAY_S) : s;
  }

  /**
   * A moment that was asked for, on the scale of a line's.
   *
   * @param firstS of the first line
   */
  static double asked(double firstS, double s) {
    double day = Math.floor(firstS / DAY_S) * DAY_S;
    double there = s < DAY_S && firstS >= DAY_S ? day + s : s;
    return there < firstS - DAY_S / 2 ? there + DAY_S : there;
  }

  private RecorderTime() {}
}
