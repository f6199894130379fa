/**
 * Values for other programs: the hand-over of a plan as JSON, problems as SARIF, schemas.
 *
 * <p>In: records. Out: text. The keys of the hand-over are the names of the record components, with
 * the unit in the name, so that it needs no second description. To rename a component is to change
 * the format, and {@link gradepost.app.export.HandOver} counts its version.
 *
 * <p>Not promised: that a reader of an older version understands a newer one.
 */
@NullMarked
package gradepost.app.export;

import org.jspecify.annotations.NullMarked;
