package gradepost.plan;

import gradepost.route.BrakeTestPlace;

/**
 * What a running brake test should show for this train.
 *
 * @param atM distance run of the place
 * @param plannedMps planned speed there
 * @param pressurePa cylinder pressure to ask for: the policy's first application
 * @param heldS how long it is held
 * @param speedAfterMps speed after that, begun at the speed of the test
 * @param decelerationMps2 at the end of it
 * @param endM distance run where the brake is off again
 */
public record BrakeTest(
    BrakeTestPlace place,
    double atM,
    double plannedMps,
    double pressurePa,
    double heldS,
    double speedAfterMps,
    double decelerationMps2,
    double endM) {}
