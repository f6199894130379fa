/**
 * What a driver is told.
 *
 * <p>In comes an {@link gradepost.drive.Assignment}: this train, on these lines, calling here,
 * under this policy. Out comes a {@link gradepost.drive.Plan}: instructions whose every number can
 * be printed, one approach for each place to brake for, with its fallback ladder. The plan has been
 * run again from those numbers. Not promised: the least energy, or the shortest time.
 */
@NullMarked
package gradepost.drive;

import org.jspecify.annotations.NullMarked;
