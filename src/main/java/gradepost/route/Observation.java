package gradepost.route;

/**
 * A field that could be empty because nobody looked: what was looked for, and what is known.
 *
 * @param subject for example "low-adhesion sites"
 * @param statement for example "none known, checked on 2026-10-01"
 */
public record Observation(String subject, String statement) {}
