/**
 * What is left when a brake fails or gives less than it should, how far runs scatter, and what both
 * want of a braking point.
 *
 * <p>In: an approach as planned. Out: the last place for each brake in each state of the rail, what
 * a brake applied late leads to, where to brake from other speeds than the planned one, the spread
 * of runs as printed and as a driver corrects them, and the places by which the brake has to be on
 * for them. Each spread is drawn by target, so that another issue does not change what it does not
 * touch. Last places lean to the safe side.
 *
 * <h2>The driver who corrects</h2>
 *
 * <p>{@link gradepost.drive.fallback.CorrectedBraking} carries out one braking of a sheet with a
 * train that differs from the planned one by a {@link gradepost.drive.fallback.Draw}. The driver
 * puts the brake on as late as was drawn, and goes on as the sheet says: by its seconds and speeds.
 *
 * <p><b>What he sees.</b> Every two seconds from then on (policy, {@code looks-every}) his place s
 * and his speed v, both as they are. He knows the speed u that the plan has at that place, and
 * where the plan is done: where it stands, or where its speed is down to that of the board. He
 * knows neither the mass of his train nor how its brake holds.
 *
 * <p><b>What he works out.</b> The way that is left is d; nearer than the tolerance of a stop, or
 * than the plan keeps before a board, he aims no finer. The rest of the way needs (v² − u²) / 2d
 * more deceleration than the plan has, or less. At what a pressure takes off the planned train at
 * that speed this is a pressure, to whole steps of the gauge. It goes on top of what the sheet says
 * from then on, until he works out another one.
 *
 * <p><b>What he does.</b> A second later (policy, {@code corrects-after}) the handle is where he
 * wants it; while his hand is on its way he does not look. A brake that is graduated both ways is
 * added to and eased, no further than full service and no further than to where the blocks still
 * touch; one with steps is set to the nearest. A brake that only releases fully is added to and
 * never eased. From there on it is the model of the brake that decides: dead time, the rates at
 * which cylinders fill and empty, adhesion.
 *
 * <p>A train that is as planned has nothing to correct, and ends where the plan ends. A train whose
 * brake holds a share f of what it should needs ever more as it comes nearer: with an even
 * deceleration the square of its speed goes with the way left to the power of f. So the looks bring
 * a weak brake to its mark without knowing that it is weak, as long as full service can.
 *
 * <h2>A point that is early enough</h2>
 *
 * <p>{@link gradepost.drive.fallback.EarlierPoints} tells by where the brake has to be on: by the
 * place that still leaves the next brake enough, and by the last place from which no more of the
 * corrected runs are late than the policy allows ({@link gradepost.drive.fallback.SharePoint}). Few
 * enough is few enough with 95 % confidence ({@link gradepost.drive.fallback.BinomialBound}), not
 * by the count; before buffer stops, signals and check rails not one run may be late. {@code
 * Planner} has the run made again with these places as limits, at most three times. A limit never
 * moves a point away from the train. Where the technique, begun there, does not end at its aim, the
 * point stays. Where no place keeps the share, it is the one from which the fewest are late, if
 * that is no more than half as many as before; and the paper says so.
 *
 * <p>Not promised: a place for every brake; where there is none the reason is given. A spread is no
 * forecast of how drivers drive.
 */
@NullMarked
package gradepost.drive.fallback;

import org.jspecify.annotations.NullMarked;
