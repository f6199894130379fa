/**
 * The accounts of the desk: made, given new passwords, shut; and who signs in.
 *
 * <p>In come names and passwords; out come accounts of the register. Of a password nothing but its
 * hash is kept. The counts of failed tries live as long as the program.
 */
@NullMarked
package gradepost.app.account;

import org.jspecify.annotations.NullMarked;
