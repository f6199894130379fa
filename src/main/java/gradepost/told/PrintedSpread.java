package gradepost.told;

/**
 * Where runs end that nobody corrects.
 *
 * @param early nineteen of twenty end no further before the target than this
 * @param late one of twenty ends past this
 * @param pastShare runs that pass the target, hundredths
 */
public record PrintedSpread(PrintedEnd early, PrintedEnd late, long pastShare) {}
