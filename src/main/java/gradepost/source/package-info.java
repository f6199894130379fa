/**
 * Reads routes, stock, policies, notices and packs from YAML.
 *
 * <p>In come the contents of files, handed over by {@link gradepost.source.SourceFiles}; out goes
 * either the records of {@code route}, {@code stock} and {@code drive} with the warnings that there
 * were, or every {@link gradepost.source.Problem} found, each with its file, line and column. The
 * key tables ({@link gradepost.source.Shape}) are the one place that says which keys there are;
 * they are data, so that schemas and documentation come from them too.
 *
 * <p>Not promised: that what reads well is good railway practice. Audits of a route are elsewhere.
 */
@NullMarked
package gradepost.source;

import org.jspecify.annotations.NullMarked;
