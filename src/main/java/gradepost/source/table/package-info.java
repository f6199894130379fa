/**
 * Tables and lists as text: comma-separated values in and out, YAML on one line, and changes to one
 * list of a YAML file.
 *
 * <p>Comes in: cells, or the text of a file. Goes out: text in which only what had to change has
 * changed; comments, blank lines and order stay. Not promised: dialects of CSV other than that of
 * RFC 4180.
 */
@NullMarked
package gradepost.source.table;

import org.jspecify.annotations.NullMarked;
