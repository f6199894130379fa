/**
 * How a leg, from one stand to the next, is driven. This note is the design of the search.
 *
 * <h2>In and out</h2>
 *
 * <p>In: the train, the targets up to the next stop, the permissible speed, and the policy's rules
 * of driving. Out: {@link gradepost.drive.leg.ApproachSolution}, one for each target that is braked
 * for, with instructions that can be printed. {@link gradepost.drive.leg.RunChooser} does this for
 * every leg of a run, from mark to mark, all legs side by side. How far short of its mark a train
 * stood is nothing to the next leg, so that what is new on one leg changes no sheet of another.
 * {@link gradepost.drive.leg.LegDecider} sees to it: it knows no more of the road than what lies
 * along its leg. So a {@link gradepost.drive.leg.LegQuestion} holds all on which a leg depends, and
 * whoever has its {@link gradepost.drive.leg.LegAnswer} need not search again. An answer is only
 * the manner in which the leg is driven; every figure is worked out from it again.
 *
 * <h2>The idea</h2>
 *
 * <p>There are two models of one leg. A coarse one, on a grid, is solved as a whole and says where
 * to take power and how far: a {@link gradepost.drive.grid.ControlProfile}. An exact one, the
 * simulation of {@link gradepost.motion}, drives that profile under the rules of driving, finds the
 * braking points and moves everything to printable places. The grid only proposes where power is
 * wanted, and up to which speed. Braking points, times and energy on paper never come from it, and
 * no way of driving is taken that was not run again from its instructions.
 *
 * <h2>State and equation</h2>
 *
 * <p>{@link gradepost.drive.grid.LegCosts} is a dynamic programme. Its state is
 *
 * <ul>
 *   <li>a place {@code k}: the start, the end, every edge of the rules, the aim of every target,
 *       and between these equal parts of at most 50 m;
 *   <li>a speed {@code v}: multiples of 0.3 m/s, and the highest speed allowed at that place;
 *   <li>the handles {@code h}: 0 nothing on, 1 to N a power notch, N + 1 a checking application.
 * </ul>
 *
 * <p>With a price {@code w} on a second (watts) and {@code m} on a handle movement (joules), the
 * least cost from a state to the stand at the end obeys Bellman's equation
 *
 * <pre>
 *   V(k, v, h) = min over arcs a of { J(a) + w t(a) + m n(a) + V(k', v', h') }
 *   V(end, 0, 0) = 0
 * </pre>
 *
 * <p>where J is the work at the wheel rim, t the time and n the movements of the arc. Every arc
 * leads to a later place, or takes none and only moves a handle, so that one pass from the end to
 * the start solves it. Between two columns V is read along a straight line; where one of them is
 * out of reach, the other one counts: a column that nothing leads from must not close the speeds
 * beside it.
 *
 * <h2>Arcs</h2>
 *
 * <p>{@link gradepost.drive.grid.LegSteps} works them out and {@link gradepost.drive.grid.LegTable}
 * keeps them, since they are the same at every price:
 *
 * <ul>
 *   <li><b>coast</b> over one segment; not where the rules want the speed checked;
 *   <li><b>power</b> in a notch over one segment; it comes off by itself at the speed for that;
 *   <li><b>notch up</b> from coasting to a notch, with the time for each notch and for no less than
 *       the policy's shortest time of power; it may cover several segments, and costs a movement
 *       for each notch. A higher notch may be taken later, on the grid in no time; a lower one only
 *       by shutting off;
 *   <li><b>shut off</b>, with as many whole segments of coasting as fit into the time that the
 *       policy wants before a braking point;
 *   <li><b>check</b> the speed with the brake, which takes hold after its lag; keep it on over one
 *       segment; release it at the speed for that;
 *   <li><b>brake</b> for a target, in one arc from where the brake goes on to the target. Where
 *       that is, how long it takes and how many movements it needs is read from a {@link
 *       gradepost.drive.brake.BrakeCurve}, worked out by simulation of the policy's technique,
 *       every 0.5 m/s. So the dead times and the build-up of the brake do not have to be states. A
 *       reduction may also be braked for to 1.4 or 2.8 m/s less. From one state at most four
 *       brakings are kept. Steps and limits are in {@link gradepost.drive.brake.PlannerSettings}.
 * </ul>
 *
 * <p>Within an arc the speed is v' = sqrt(v² + 2 F s / M), with F at the middle speed of the arc
 * (three passes), the force of the track at the middle of the segment ({@link
 * gradepost.drive.grid.LegGrid}), and M the inertia with its rotating parts. The highest speed at a
 * place is the lower of the permissible speed on either side and the speed from which every target
 * ahead can still be braked for, as far as the grid tells.
 *
 * <h2>Prices</h2>
 *
 * <p>The task has limits: a running time (the fastest way's, and the policy's allowance) and few
 * movements. The prices stand in their place, as Lagrange multipliers. Five prices of time from 0.5
 * to 100 W/kg and two of a movement (3 and 25 J/kg) are tried; for each price of a movement the
 * price of time is then halved three times, by its logarithm, between one that is too slow and one
 * that is in time. That makes at most 16 solutions of the table for a leg. From each, the cheapest
 * way is drawn forwards over real speeds, not columns. Where it leads nowhere, since V between
 * columns is a guess, it goes back and takes the next best arc, ever further back (at most 300
 * times before it comes further than ever).
 *
 * <h2>From a profile to instructions</h2>
 *
 * <p>{@link gradepost.drive.leg.LegPlanner} goes from approach to approach. {@link
 * gradepost.drive.leg.FreeRun} drives as if nothing had to be braked for: power in sequence, where
 * the profile has it and the rules allow it, the speed band, coasting, the brake where a falling
 * grade needs it. {@link gradepost.drive.leg.LegSearch} looks, for every target ahead, for the last
 * place from which coasting and then the brake still meet it ({@link
 * gradepost.drive.brake.LastPlace}), and takes the earliest of them. {@link
 * gradepost.drive.leg.PrintableFit} moves it to a landmark, else to the print grid, else to the
 * single yard or metre, as far as that keeps 80 % of the speed. The braking is then solved with
 * printable pressures. If a later target turns out to be too near, the approach before it is
 * dropped and that target is braked for instead. Without a profile the same is done by the rules
 * alone.
 *
 * <p>A running brake test ({@link gradepost.drive.grid.RunningTest}) is a fixed application where
 * the run passes its place. It is no target that the leg is divided at: a target is met at a speed,
 * from a place that is searched for, while a test has its place and leaves whatever speed it
 * leaves. So every state behind it is one of a train that made it, and nothing else has to know.
 * The run is brought to its speed from above by shutting off where coasting leads to it, and from
 * below by power in the last 40 s before power has to be off for it; on the grid these are a
 * highest speed, a lowest speed, a stretch without power and a drag. Which tests have room is
 * settled before a leg is chosen, on the ways by the rules alone and as fast as they allow ({@link
 * gradepost.drive.check.TestRoom}); a way that does not make one of them does not stand.
 *
 * <p>{@link gradepost.drive.leg.LegChooser} gives each result to {@link
 * gradepost.drive.check.InstructionRun}, which knows nothing of the search, and judges what comes
 * of it: whether it breaks a rule; then how many movements are made for a moment, or how often the
 * train creeps; then the logarithm of the energy, with log (1 + c) for each instruction that a
 * driver has to keep in mind ({@link gradepost.plan.Step#rows}), where c is the share of the energy
 * that the policy gives for one movement (usually 3 %). So a handle that goes through its notches
 * in one go counts once, and a notch that is taken later counts again. Ways in time go before ways
 * that are not.
 *
 * <p>From up to four ways a local search goes on, at most 14 rounds each ({@link
 * gradepost.drive.leg.LegImprover}), fewer where the stretches that were looked at add up to twenty
 * times a very long leg. {@link gradepost.drive.leg.Promising} names them: the cheapest in time,
 * and those that would be cheapest if 1 % of time were worth 15 % of energy; of ways that are alike
 * one, and none that lies hopelessly behind. A {@link gradepost.drive.grid.GuideChange} has one
 * power off a speed unit sooner or later, 60 m earlier or later, one notch more, less or not at
 * all, a notch that is taken later taken in one go, a power left on up to where the next one comes
 * off, a power not taken, or a brake released two units sooner or later. What it does is worked out
 * from the last stage that is alike ({@link gradepost.drive.grid.GuideDependencies}) to where the
 * train is again where it was, within 15 m and 0.1 m/s and with the same handles ({@link
 * gradepost.drive.leg.LegMeeting}), and only there. So that there are such places on a leg on which
 * nothing is braked for, a run also stops to look at every 3 km where the train coasts. Changes
 * that lie apart are made together: those that save most within the time, or all that are worth
 * while at the least price of time at which they are in time. The leg is then worked out whole, and
 * only that counts. Where no change helps, 5 s more or less of coasting before the brake is tried.
 * A round that gains less than 0.4 % is the last. Each leg keeps its own time, so that a
 * restriction in one does not change another.
 *
 * <h2>Points that have to be earlier</h2>
 *
 * <p>A cue, the automatic brake or the share of late runs may want a brake on before the computed
 * point. {@link gradepost.drive.leg.RunChooser} then drives the leg in the same manner with the
 * brake on by there. Where that takes too much time, the local search begins at that way, and what
 * it finds is taken if it has no more movements than the way without limits and costs no more than
 * 1 % more: a search of the whole leg could gain no more than that. Else the whole leg is searched
 * with the limits.
 *
 * <h2>A speed that is held</h2>
 *
 * <p>Near the best ways {@link gradepost.drive.leg.HoldFinder} looks for the same cycle made again
 * under one ceiling: power and off, or a check and its release. The leg is worked out again with
 * one instruction in its place, driven by {@link gradepost.drive.brake.HeldSpeed}, and improved
 * from there. It is taken where the run really repeats in the band, {@link
 * gradepost.drive.check.HeldSpeeds} finds nothing wrong at either edge of it, and the way is the
 * better one by fewer movements at hardly more energy. The grid does not know of it.
 *
 * <h2>The bound, and what it does not prove</h2>
 *
 * <p>Let L(w, m) be the value at the start. For every way <em>of the grid</em> that takes at most T
 * seconds and n movements, its energy is at least L(w, m) − w T − m n (weak duality). This is a
 * statement about the grid alone. It is no lower bound for the train, and nothing is printed from
 * it: the error of the grid is not bounded, V between columns may be too high or too low, and the
 * simulation may do what the grid may not, such as power from between two places, or another speed
 * of release. Plans have come out below the value of a finer grid; {@code EnergyOnAFinerGridTest}
 * keeps them between 2 % below and 5.5 % above it over whole runs. What no train can do with less
 * is worked out in {@code gradepost.drive.bound}, by another way; plans lie 20 % and more above
 * that, since it knows neither the margins under the permissible speed nor the technique of
 * braking.
 *
 * <h2>Cost</h2>
 *
 * <p>With P places, S speeds and N notches there are P S (2 N + 12) arcs, worked out once for a leg
 * and read once for each pair of prices; P grows with the length. In the local search a change
 * costs the stretch along which it makes a difference, the changes of a round grow with the length,
 * and so do the few whole legs of a round; rounds do not. {@code GrowthTest} counts the metres of
 * all runs: four times the leg is 4.4 times the work. Over a line with stops the cost grows with
 * the number of stops. A stretch with power on throughout offers no place to meet again: a change
 * that makes a difference for more than 20 km is given up.
 *
 * <h2>Not promised</h2>
 *
 * <p>That no better way exists, on energy or on movements: the neighbourhood is small, and the
 * number of seeds and rounds is fixed. That a slightly different train or line has a similar plan.
 * That there is a way in time; else the quickest that stands is taken. That a speed is held by part
 * power: notches and the brake are used in turns within the speed band. That the plan is the same
 * under other search settings; these are constants beside the algorithms. What shapes the driving
 * and could be doubted is the policy's ({@link gradepost.policy.Practice}).
 *
 * <h2>Sources</h2>
 *
 * <p>All from memory, none was at hand when this was written. They are about the theory; the search
 * here is this project's own arrangement of it.
 *
 * <ul>
 *   <li>Bellman, <em>Dynamic Programming</em>, Princeton University Press 1957.
 *   <li>Everett, <em>Generalized Lagrange multiplier method for solving problems of optimum
 *       allocation of resources</em>, Operations Research 11, 1963: prices in the place of limits.
 *   <li>Howlett and Pudney, <em>Energy-Efficient Train Control</em>, Springer 1995; Howlett,
 *       <em>The optimal control of a train</em>, Annals of Operations Research 98, 2000: power,
 *       hold, coast and brake as the only regimes of least energy.
 *   <li>Albrecht, Howlett, Pudney, Vu and Zhou, <em>The key principles of optimal train
 *       control</em>, Transportation Research Part B 94, 2016.
 *   <li>Franke, Terwiesch and Meyer, <em>An algorithm for the optimal control of the driving of
 *       trains</em>, IEEE Conference on Decision and Control 2000; Ko, Koseki and Miyatake,
 *       <em>Application of dynamic programming to the optimization of the running profile of a
 *       train</em>, Computers in Railways IX, 2004: dynamic programming over place and speed.
 * </ul>
 */
@NullMarked
package gradepost.drive.leg;

import org.jspecify.annotations.NullMarked;
