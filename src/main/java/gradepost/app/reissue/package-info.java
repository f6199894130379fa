/**
 * The way of a notice, or of an edit by hand, through the packs of a folder.
 *
 * <p>In: packs, the file of notices, and the store. Out: what became of every pack. All packs are
 * looked at before any is changed. Then each that is touched is worked out, kept and registered, in
 * one act each. Files are put in place from the archive when all are registered. So a run that
 * stops anywhere leaves whole issues, and the next run finishes it.
 *
 * <p>Not promised: papers of a pack whose problems keep them back; the others are issued all the
 * same.
 */
@NullMarked
package gradepost.app.reissue;

import org.jspecify.annotations.NullMarked;
