/**
 * Catalogues of texts: whole sentences in files, with named holes.
 *
 * <p>In: a file of properties that lies beside a class. Out: a sentence with its holes filled. A
 * key or a hole that is missing is a fault of the program and stops it.
 *
 * <p>Not promised: that a value is rounded; it is written as it is to be read before it fills a
 * hole.
 */
@NullMarked
package gradepost.text;

import org.jspecify.annotations.NullMarked;
