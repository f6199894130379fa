package gradepost.briefing.signoff;

/**
 * The page on which something is taught.
 *
 * @param page counted from 1, in its own file
 * @param reference whether that file is the reference, else the paper
 */
public record TaughtOn(int page, boolean reference) {}
