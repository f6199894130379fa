/**
 * What is told of the line: what stands beside it, the line drawn and told, and its tables.
 *
 * <p>In: a plan's route and permissible speeds, and where the train stands. Out: parts of the
 * document about the line, in the order in which a train meets it. Sheets of the line are made in
 * four steps: {@code LineTeller} puts all that is met and done into rows, {@code LineCuts} cuts
 * them, {@code RowSetting} breaks their words into lines and sets each level with its place, and
 * {@code LineChartWriter} draws the stretch beside them.
 *
 * <p>Not promised: that all of it is useful to a driver; the route says what there is.
 */
@NullMarked
package gradepost.briefing.line;

import org.jspecify.annotations.NullMarked;
