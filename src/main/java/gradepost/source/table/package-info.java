/**
 * Tables and lists as text: comma-separated values in and out, YAML on one line, and changes to one
 * list of a YAML file.
 *
 * <p>In: cells, or the text of a file. Out: text in which only what had to change has changed;
 * comments, blank lines and order stay.
 *
 * <p>Not promised: dialects of CSV other than that of RFC 4180.
 */
@NullMarked
package gradepost.source.table;

import org.jspecify.annotations.NullMarked;
