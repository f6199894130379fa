/**
 * Lays a briefing out: templates make the text, a canvas of our own makes the charts, and both go
 * to HTML or to PDF.
 *
 * <p>Comes in: a {@link gradepost.briefing.Briefing} and the templates. Goes out: bytes on the
 * stream that is given, the same ones for the same briefing, whatever the locale, time zone or
 * clock. Not promised: that a depot's own template still fits one approach on one page.
 */
@NullMarked
package gradepost.render;

import org.jspecify.annotations.NullMarked;
