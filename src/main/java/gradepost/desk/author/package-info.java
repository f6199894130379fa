/**
 * The pages of the desk on which data are edited, rides are assessed and questions are answered.
 *
 * <p>In come requests that the desk has let in; out go pages. A request never names a file: what it
 * asks for is looked up in what the folder holds.
 */
@NullMarked
package gradepost.desk.author;

import org.jspecify.annotations.NullMarked;
