package gradepost.told;

/**
 * Where runs end that the driver corrects.
 *
 * @param early nineteen of twenty end no further before the target than this
 * @param late one of twenty ends past this
 * @param fullShare runs that need full service, hundredths
 */
public record PrintedSpread(PrintedEnd early, PrintedEnd late, long fullShare) {}
