/**
 * The way of a notice, or of an edit by hand, through the packs of a folder: look at all, then work
 * out, keep, register and put in place each that is touched.
 *
 * <p>Comes in: packs, the file of notices, and the store. Goes out: what became of every pack.
 * Nothing is changed before all have been looked at, and a run that was stopped can be finished
 * later. Not promised: papers of a pack whose problems keep them back; the others are issued all
 * the same.
 */
@NullMarked
package gradepost.app.reissue;

import org.jspecify.annotations.NullMarked;
