/**
 * The operator's own rules, as values: how a train is driven, what counts as usual practice, how
 * far a plan keeps from what it must not touch, what counts as the safe side, how knowledge is
 * tested and signed.
 *
 * <p>In: figures as the operator's policy states them. Out: records that refuse figures without
 * sense. Practice that a policy does not state has usual values, which are printed like the others.
 * What is said of a brake that is not whole stands in clauses; an absent one permits nothing.
 * Nothing here drives a train.
 *
 * <p>Not promised: that the rules can be kept with a given train; {@code source.policy} and {@code
 * drive} look at that.
 */
@NullMarked
package gradepost.policy;

import org.jspecify.annotations.NullMarked;
