/**
 * What is told of the line: what stands beside it, its story, its strip, and its tables.
 *
 * <p>In: a plan's route and permissible speeds, and where the train stands. Out: parts of the
 * document about the line, in the order in which a train meets it.
 *
 * <p>Not promised: that all of it is useful to a driver; the route says what there is.
 */
@NullMarked
package gradepost.briefing.line;

import org.jspecify.annotations.NullMarked;
