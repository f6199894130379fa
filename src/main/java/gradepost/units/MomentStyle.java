package gradepost.units;

import java.time.format.DateTimeFormatter;
import java.time.format.ResolverStyle;
import java.util.Locale;

/** How a day and a time of it are read and written: "2026-11-20 12:00". */
public final class MomentStyle {
  public static final DateTimeFormatter MOMENT =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm", Locale.ROOT)
          .withResolverStyle(ResolverStyle.STRICT);

  private MomentStyle() {}
}
