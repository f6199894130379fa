/**
 * Values for other programs: the hand-over of a plan as JSON, problems as SARIF, schemas.
 *
 * <p>Comes in: records. Goes out: text whose keys are the names of the components, with the unit in
 * the name. Whoever renames a component changes the format. Not promised: that a reader of an older
 * version understands a newer one.
 */
@NullMarked
package gradepost.app.export;

import org.jspecify.annotations.NullMarked;
