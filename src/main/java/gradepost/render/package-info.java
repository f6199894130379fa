/**
 * Lays a document out: templates make the text, and text and charts go to HTML or to PDF.
 *
 * <p>In: a {@link gradepost.briefing.Printable} and the templates. Out: bytes on the stream that is
 * given, the same ones for the same document, whatever the locale, time zone or clock. Both faces
 * come from the same templates. Nothing but the document is known here.
 *
 * <p>Not promised: that a depot's own template still fits one approach on one page.
 */
@NullMarked
package gradepost.render;

import org.jspecify.annotations.NullMarked;
