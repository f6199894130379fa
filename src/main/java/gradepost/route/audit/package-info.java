/**
 * What can be doubted in a route that reads without error: known mistakes of typing and surveying,
 * and what does not fit together.
 *
 * <p>In: a route. Out: findings, each with the code of its rule, the record that it concerns and
 * the key of that record, so that the reader of the file can say where it stands. The sentences
 * stand in {@code findings.properties}, under the code of the rule.
 *
 * <p>Not promised: that a route without findings is right; only that it has none of the mistakes
 * named in {@link gradepost.route.audit.AuditRule}.
 */
@NullMarked
package gradepost.route.audit;

import org.jspecify.annotations.NullMarked;
