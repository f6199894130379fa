package gradepost.pack;

import java.time.LocalTime;

/** Hours of the day; {@code to} before {@code from} runs over midnight. */
public record DailyHours(LocalTime from, LocalTime to) {
  /** Whether this time of day is in them: their beginning is, their end is not. */
  public boolean contains(LocalTime time) {
    boolean begun = !time.isBefore(from);
    boolean open = time.isBefore(to);
    return from.isBefore(to) ? begun && open : begun || open;
  }
}
