/**
 * Data as they are edited by people: texts of files, what is found in them as they are typed, and
 * every text that was ever saved.
 *
 * <p>In come the name of a file that the folder holds, and a text. Out come findings by line, the
 * line drawn, and a text in its place, whole or not at all. No text that lay in a file is lost.
 * That two who are not at the same desk see each other is promised only where the register is kept.
 */
@NullMarked
package gradepost.app.author;

import org.jspecify.annotations.NullMarked;
