/**
 * The register: which issues there are, who holds copies of them, who has acknowledged and signed
 * what, what was called back.
 *
 * <p>In: a database by its JDBC address, SQLite or PostgreSQL, which is brought to the present
 * schema when opened; then acts. Out: lists and entries. Every act is one transaction, with who and
 * when. Acts are never changed or taken away.
 *
 * <p>Not promised: papers. The register knows files by their digests; the archive holds them.
 */
@NullMarked
package gradepost.reissue.register;

import org.jspecify.annotations.NullMarked;
