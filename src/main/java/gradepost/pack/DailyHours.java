package gradepost.pack;

import java.time.LocalTime;

/** Hours of the day; {@code to} before {@code from} runs over midnight. */
public record DailyHours(LocalTime from, LocalTime to) {}
