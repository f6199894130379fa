package gradepost.route;

import java.time.LocalDate;

/**
 * A finding of the audit for which somebody answers. It is tied to the finding's own words: when
 * the data change, the numbers in them change, and the finding comes back.
 *
 * @param rule code of the rule
 * @param finding what was found, as the check prints it
 * @param by who accepts it
 */
public record Accepted(String rule, String finding, String by, LocalDate on, String reason) {}
