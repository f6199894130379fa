/**
 * The document as an immutable value: what every part of a pack says, in words and in numbers that
 * a chart can be drawn from.
 *
 * <p>Comes in: texts already written by the packages below this one. Goes out: values that a
 * template lays out and a canvas draws. Not promised: anything about paper, fonts or colours. Every
 * place, speed and pressure in a text is already rounded to its safe side; numbers in charts are
 * not rounded.
 */
@NullMarked
package gradepost.briefing;

import org.jspecify.annotations.NullMarked;
