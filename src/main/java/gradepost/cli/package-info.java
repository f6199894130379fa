/**
 * The command line.
 *
 * <p>In: arguments. Out: lines on the streams, and an exit code: 0 good, 1 findings or bad data, 2
 * a mistake in the arguments. Results go to standard output, problems and progress to standard
 * error. Each command only reads its arguments, calls a use case and prints the answer.
 *
 * <p>Not promised: that lines for people keep their wording; for programs there are JSON and CSV.
 */
@NullMarked
package gradepost.cli;

import org.jspecify.annotations.NullMarked;
