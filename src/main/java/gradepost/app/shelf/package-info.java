/**
 * The packs of a folder, kept at hand for many who ask: read again only where their files changed,
 * planned and laid out once.
 *
 * <p>In comes a folder; out come facts and papers that can be shown. Nothing is written, and
 * nothing is promised of files that change while they are read: the next question reads them again.
 */
@NullMarked
package gradepost.app.shelf;

import org.jspecify.annotations.NullMarked;
