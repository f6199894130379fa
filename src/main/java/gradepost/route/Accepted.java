package gradepost.route;

import java.time.LocalDate;

/**
 * A finding of the audit for which somebody answers. It is tied to the finding's own words: when
 * what stands at the lineside changes, so do they, and the finding comes back. What was computed
 * for a train stands in the bound, so that another policy does not bring everything back.
 *
 * @param rule code of the rule
 * @param finding what was found, as the check prints it
 * @param by who accepts it
 */
public record Accepted(String rule, String finding, String by, LocalDate on, String reason) {}
