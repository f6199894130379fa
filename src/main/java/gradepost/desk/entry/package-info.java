/**
 * Who is let in to the desk, from where, and as whom: by the key of this machine, or by an account
 * with a password.
 */
@NullMarked
package gradepost.desk.entry;

import org.jspecify.annotations.NullMarked;
