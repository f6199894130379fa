/**
 * What a driver is told, as it is printed.
 *
 * <p>In: places, speeds, pressures and times of a plan. Out: values that are equal exactly where
 * they are the same on paper, and that say what they mean in metres, pascals and seconds. An {@link
 * gradepost.told.InstructionSheet} is one approach, an {@link gradepost.told.InstructionSet} one
 * run. Paper, comparison of issues and the run that proves a plan all start from them, so that they
 * cannot disagree. {@link gradepost.told.PrintGrid} is the only place where something that is told
 * is rounded; each of its methods says which way it leans.
 *
 * <p>Not promised: that two values which differ on paper differ by much on the line.
 */
@NullMarked
package gradepost.told;

import org.jspecify.annotations.NullMarked;
