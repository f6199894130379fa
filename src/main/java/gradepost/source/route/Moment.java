package gradepost.source.route;

import gradepost.pack.DailyHours;
import gradepost.text.Allowed;
import gradepost.text.Mistakes.Four;
import gradepost.units.Parsed;
import gradepost.units.Parsed.Bad;
import gradepost.units.Parsed.Ok;
import gradepost.yaml.OwnText;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Dates and hours, as the clocks on the railway show them. */
public final class Moment {
  private static final Pattern DAY = Pattern.compile("(\\d{4})-(\\d\\d)-(\\d\\d)");
  private static final Pattern HOUR = Pattern.compile("(\\d\\d):(\\d\\d)");
  private static final Pattern TURNED = Pattern.compile("(\\d\\d?)[./-](\\d\\d?)[./-](\\d{4})(.*)");

  /** "2026-11-30". */
  public record Day() implements OwnText<LocalDate> {
    @Override
    public List<String> patterns() {
      return List.of("^\\s*\\d{4}-\\d\\d-\\d\\d\\s*$");
    }

    @Override
    public String allowed() {
      return "a date, such as 2026-11-30";
    }

    @Override
    public Parsed<LocalDate> parse(String text) {
      return day(text)
          .<Parsed<LocalDate>>map(Ok::new)
          .orElseGet(() -> bad(RouteMistakes.NO_DATE, text, turned(text)));
    }
  }

  /** "2026-11-30 04:00". */
  public record DayAndHour() implements OwnText<LocalDateTime> {
    @Override
    public List<String> patterns() {
      return List.of("^\\s*\\d{4}-\\d\\d-\\d\\d \\d\\d:\\d\\d\\s*$");
    }

    @Override
    public String allowed() {
      return "a date and hour, such as 2026-11-30 04:00";
    }

    @Override
    public Parsed<LocalDateTime> parse(String text) {
      Optional<LocalDateTime> moment = moment(text);
      if (moment.isPresent()) {
        return new Ok<>(moment.get());
      }
      if (day(text).isPresent()) {
        return new Bad<>(
            (key, allowed, meant) -> RouteMistakes.NO_HOUR.with(key, text, allowed, text),
            Optional.empty());
      }
      String spaced = text.replaceFirst("[Tt]", " ").replaceFirst(":\\d\\d(\\.0+)?$", "");
      Optional<String> meant = moment(spaced).isPresent() ? Optional.of(spaced) : turned(text);
      return bad(RouteMistakes.NO_DATE_AND_HOUR, text, meant);
    }
  }

  /** A date and hour, or "further notice", which is empty. */
  public record OpenEnd() implements OwnText<Optional<LocalDateTime>> {
    public static final String FURTHER_NOTICE = "further notice";

    @Override
    public List<String> patterns() {
      return List.of("^\\s*(\\d{4}-\\d\\d-\\d\\d \\d\\d:\\d\\d|further notice)\\s*$");
    }

    @Override
    public String allowed() {
      return new DayAndHour().allowed() + ", or " + FURTHER_NOTICE;
    }

    @Override
    public Parsed<Optional<LocalDateTime>> parse(String text) {
      if (text.equals(FURTHER_NOTICE)) {
        return new Ok<>(Optional.empty());
      }
      Parsed<LocalDateTime> moment = new DayAndHour().parse(text);
      boolean further = text.toLowerCase(Locale.ROOT).contains("further");
      return moment.match(
          ok -> new Ok<>(Optional.of(ok.value())),
          bad ->
              further && bad.meant().isEmpty()
                  ? new Bad<>(bad.fault(), List.of(FURTHER_NOTICE))
                  : new Bad<>(bad.fault(), bad.meant()));
    }
  }

  /** "22:00 to 05:30". */
  public record Hours() implements OwnText<DailyHours> {
    private static final Pattern SPAN = Pattern.compile("(\\d\\d:\\d\\d) to (\\d\\d:\\d\\d)");

    @Override
    public List<String> patterns() {
      return List.of("^\\s*\\d\\d:\\d\\d to \\d\\d:\\d\\d\\s*$");
    }

    @Override
    public String allowed() {
      return "hours of the day, such as 22:00 to 05:30";
    }

    @Override
    public Parsed<DailyHours> parse(String text) {
      Matcher span = SPAN.matcher(text);
      if (span.matches()) {
        Optional<LocalTime> from = hour(span.group(1));
        Optional<LocalTime> to = hour(span.group(2));
        if (from.isPresent() && from.equals(to)) {
          return new Bad<>(
              (key, allowed, near) -> RouteMistakes.SAME_HOURS.with(key, text), Optional.empty());
        }
        if (from.isPresent() && to.isPresent()) {
          return new Ok<>(new DailyHours(from.get(), to.get()));
        }
      }
      String respelt = text.replaceFirst("\\s*[-–]\\s*", " to ");
      boolean near = !respelt.equals(text) && parse(respelt).isOk();
      return bad(RouteMistakes.NO_HOURS, text, Optional.of(respelt).filter(t -> near));
    }
  }

  private static <T> Parsed<T> bad(
      Four<String, String, Allowed, Collection<String>> mistake,
      String text,
      Optional<String> meant) {
    return new Bad<>((key, allowed, near) -> mistake.with(key, text, allowed, near), meant);
  }

  private static Optional<LocalDateTime> moment(String text) {
    String[] parts = text.split(" ", -1);
    return parts.length != 2
        ? Optional.empty()
        : day(parts[0]).flatMap(d -> hour(parts[1]).map(d::atTime));
  }

  private static Optional<LocalDate> day(String text) {
    Matcher m = DAY.matcher(text);
    try {
      return m.matches()
          ? Optional.of(LocalDate.of(number(m, 1), number(m, 2), number(m, 3)))
          : Optional.empty();
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  private static Optional<LocalTime> hour(String text) {
    Matcher m = HOUR.matcher(text);
    try {
      return m.matches() ? Optional.of(LocalTime.of(number(m, 1), number(m, 2))) : Optional.empty();
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  /** A date written day first, turned round. */
  private static Optional<String> turned(String text) {
    Matcher m = TURNED.matcher(text);
    return m.matches()
        ? Optional.of(
            String.format(
                Locale.ROOT, "%s-%02d-%02d%s", m.group(3), number(m, 2), number(m, 1), m.group(4)))
        : Optional.empty();
  }

  private static int number(Matcher m, int group) {
    return Integer.parseInt(m.group(group));
  }

  private Moment() {}
}
