/**
 * The use cases in a browser: pages over {@code gradepost.app}, and who is let in.
 *
 * <p>In come requests; out come pages that say what the engine says. Nothing is computed here. A
 * request never names a file: what it asks for is looked up in what the folder and the register
 * hold.
 */
@NullMarked
package gradepost.desk;

import org.jspecify.annotations.NullMarked;
