/**
 * What a driver is told, as it is printed.
 *
 * <p>In: places, speeds, pressures and times as {@link gradepost.told.print} gives them. Out:
 * values that are equal exactly where they are the same on paper. An {@link
 * gradepost.told.InstructionSheet} is one approach, an {@link gradepost.told.InstructionSet} one
 * run. Paper, comparison of issues and the run that proves a plan all start from them, so that they
 * cannot disagree. Nothing is rounded here.
 *
 * <p>Not promised: that what is told can be driven; {@code PlanVerifier} finds that out.
 */
@NullMarked
package gradepost.told;

import org.jspecify.annotations.NullMarked;
