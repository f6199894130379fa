package gradepost.told.print;

/**
 * A time as it is printed.
 *
 * @param seconds whole ones
 */
public record PrintedTime(long seconds) {}
