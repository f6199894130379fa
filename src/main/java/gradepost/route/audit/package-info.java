/**
 * What can be doubted in a route that reads without error: known mistakes of typing and surveying,
 * and what does not fit together.
 *
 * <p>In comes a route; out go findings, each with the code of its rule, the record that it concerns
 * and the key of that record, so that whoever read the file can say where it stands. Not promised:
 * that a route without findings is right; only that it has none of the mistakes named in {@link
 * gradepost.route.audit.AuditRule}.
 */
@NullMarked
package gradepost.route.audit;

import org.jspecify.annotations.NullMarked;
