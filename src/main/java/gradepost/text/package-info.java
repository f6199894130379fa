/**
 * Catalogues of texts: whole sentences in files, with named holes.
 *
 * <p>Comes in: a file of properties that lies beside a class. Goes out: a sentence with its holes
 * filled. Not promised: that a value is rounded; whoever fills a hole has written it as it is to be
 * read.
 */
@NullMarked
package gradepost.text;

import org.jspecify.annotations.NullMarked;
