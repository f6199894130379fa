/**
 * What is told of the line: what stands beside it, its story, its strip, and its tables.
 *
 * <p>Comes in: a plan's route, speeds and stands. Goes out: parts of the document about the line,
 * in the order in which a train meets it. Not promised: that all of it is worth a driver's while;
 * the route says what there is.
 */
@NullMarked
package gradepost.briefing.line;

import org.jspecify.annotations.NullMarked;
