/**
 * The way in, and what is written back: reads any of the five kinds of file, writes the schema of
 * each, and takes lists of a route out into a table and in again.
 *
 * <p>In: names of files, and a {@link gradepost.source.file.SourceFiles} that has their contents.
 * Out: values with the warnings that there were, or every problem found. Key tables are data: the
 * same tables read a file, make its schema and describe its keys. What several packs name is read
 * once.
 *
 * <p>Not promised: that what reads well is good railway practice; the audits of a route are in
 * {@code route.audit}.
 */
@NullMarked
package gradepost.source;

import org.jspecify.annotations.NullMarked;
