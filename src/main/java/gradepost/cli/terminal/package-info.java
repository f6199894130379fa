/**
 * What a terminal shows of a command: its answer, how far it has come, a route as text.
 *
 * <p>In: answers and values. Out: lines on the streams of the command.
 */
@NullMarked
package gradepost.cli.terminal;

import org.jspecify.annotations.NullMarked;
