/**
 * The grid of print, and the units in which it gives what is told.
 *
 * <p>In: places, speeds, pressures, lengths and times as plain numbers, on one path and in its
 * world of units. Out: values that hold whole printed units: they are equal exactly where they are
 * the same on paper, say what they mean in metres, metres a second, pascals and seconds, and write
 * themselves. {@link gradepost.told.print.PrintGrid} is the only place where something that is told
 * is rounded; each of its methods says which way it leans. It also says which places can be told at
 * all, for those who plan on them.
 *
 * <p>Not promised: that two values which differ on paper differ by much on the line. What the
 * values are told of, and why, is not known here.
 */
@NullMarked
package gradepost.told.print;

import org.jspecify.annotations.NullMarked;
