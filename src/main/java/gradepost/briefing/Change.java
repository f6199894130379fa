package gradepost.briefing;

/**
 * One thing that differs from the issue before.
 *
 * @param kind in a word (added, eased, moved, withdrawn)
 * @param place where, or for which page
 * @param text what it was and what it is
 */
public record Change(String kind, String place, String text) {}
