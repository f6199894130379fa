/**
 * The least work that a leg takes in a given time, bounded from below. This note is the proof.
 *
 * <h2>In and out</h2>
 *
 * <p>In: a {@link gradepost.drive.bound.RelaxedLeg}, and the time that there is. Out: {@link
 * gradepost.drive.bound.EnergyBound}, joules at the wheel rim for each kilogram of inertia, where
 * the energy of a plan is counted too, and the price of time that proves it.
 *
 * <h2>What is relaxed</h2>
 *
 * <p>The train may do all that a plan may, and more: any force of power between none and the
 * greatest of its notches at that speed, changed at once and as often as it likes; any force of the
 * brake, where the greatest speeds leave room for the strongest brake, without delay. It has no
 * shortest time of power or of coasting, no margin under the permissible speed, no rail gap and no
 * rounding. Adhesion limits the power as the plan's rail does, and the brake not at all. So a plan
 * that keeps the permissible speed and the time is one of its runs.
 *
 * <h2>The bound</h2>
 *
 * <p>For each kilogram of inertia let {@code y} be the kinetic energy, {@code v} the speed, {@code
 * F(y)} the greatest effort, {@code r(y)} the running resistance, {@code g(s)} the force of
 * gradient and curves, {@code Y(s)} the greatest kinetic energy at a place. A run has {@code y' = f
 * - b - r(y) - g(s)}, with {@code 0 <= f <= F(y)}, {@code b >= 0} and {@code 0 <= y <= Y(s)}. Take
 * any price {@code w >= 0} of a second, and any function {@code e(s) <= 1} that is continuous and
 * piecewise linear. Then
 *
 * <pre>
 *   work + w T  =  integral of  f + w/v
 *               =  [(1 - e) y]  +  integral of  f + w/v + e' y - (1 - e) y'
 *               =  [(1 - e) y]  +  integral of  e f + (1 - e) (b + r + g) + e' y + w/v
 *               &gt;= [(1 - e) y]  +  integral of  (1 - e) g  +  integral of  m(s),
 *   m(s)  =  least over 0 &lt;= y &lt;= Y(s) of  e' y + (1 - e) r(y) + min(0, e) F(y) + w/v,
 * </pre>
 *
 * <p>since {@code (1 - e) b} is not below zero and {@code e f} not below {@code min(0, e) F}. The
 * bracket is what is in it at the end, less what is in it at the start. With {@code w T} taken off
 * this bounds the work of every run that takes no longer than T. Nothing else is needed of e and w:
 * good ones only prove more.
 *
 * <h2>Error to the safe side</h2>
 *
 * <ul>
 *   <li>The integral of {@code (1 - e) g} is exact, since both are piecewise linear in s.
 *   <li>On a segment e' is constant, and {@code m} as a function of s is the least of functions
 *       that are concave in s: so the trapezoid of its ends is no more than its integral. Y is
 *       taken for the whole segment at its greatest.
 *   <li>In a cell of kinetic energy r is no less than its chord, since it is concave in y ({@code a
 *       + b v + c v²} with b not below zero); 1/v is convex, so no less than a tangent; F is no
 *       more than its greatest there or above ({@link gradepost.drive.bound.FallingForce}). What is
 *       left is linear, and least at an end of the cell.
 *   <li>Y is not above the caps, the energy under full power from the start, and that from which
 *       the strongest brake still comes down to a lower cap, or to a stand: sums of forces that are
 *       taken at their greatest on each segment.
 *   <li>A thousand millionth of all that is added up is taken off for rounding.
 * </ul>
 *
 * <h2>Finding e and w</h2>
 *
 * <p>{@link gradepost.drive.bound.CheapestRun} finds a run on a coarse grid; w is the lowest price
 * at which it is in time. {@link gradepost.drive.bound.Slopes} integrates the adjoint equation of
 * the maximum principle along it: e is 1 + the change of the cost to the end with y. That the run
 * and e do not quite agree is evened out by trying triangular changes of e. The cost of all is
 * linear in the length of the leg.
 *
 * <h2>Not promised</h2>
 *
 * <p>That the relaxed train can do it: where F falls steeply and e is far below 0 (a long climb at
 * full power) a mixture of speeds counts, and the bound may be some percent too low. That a plan
 * comes near it: the policy's rules are not in it.
 *
 * <h2>Sources</h2>
 *
 * <p>From memory, as in {@link gradepost.drive.leg}: Howlett, <em>The optimal control of a
 * train</em>, Annals of Operations Research 98, 2000, for the maximum principle; Everett,
 * Operations Research 11, 1963, for prices in the place of limits. The function {@code (e - 1) y}
 * is a subsolution of the Hamilton–Jacobi–Bellman equation up to a function of s.
 */
@NullMarked
package gradepost.drive.bound;

import org.jspecify.annotations.NullMarked;
