/**
 * The command line.
 *
 * <p>In come arguments; out go lines on the streams and an exit code: 0 good, 1 findings or bad
 * data, 2 a mistake in the arguments. Results go to standard output, problems and progress to
 * standard error.
 */
@NullMarked
package gradepost.cli;

import org.jspecify.annotations.NullMarked;
