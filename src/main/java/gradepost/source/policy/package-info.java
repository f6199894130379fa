/**
 * Reads a policy file, and looks whether a train's brake can do what it asks.
 *
 * <p>In: the tree of the file. Out: a {@link gradepost.policy.Policy} with the reason that stands
 * beside each value, or problems at their places.
 *
 * <p>Not promised: that the rules are wise.
 */
@NullMarked
package gradepost.source.policy;

import org.jspecify.annotations.NullMarked;
