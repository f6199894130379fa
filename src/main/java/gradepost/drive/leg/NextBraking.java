package gradepost.drive.leg;

import gradepost.drive.brake.RunStates;

/**
 * The target that must be braked for first, and from where on the free run.
 *
 * @param aimM where its speed is to be reached
 * @param goesOn nothing has to be braked for so far: the train coasts, and the run goes on from
 *     {@code atM}
 */
record NextBraking(
    int index,
    double aimM,
    double atM,
    double brakingM,
    boolean coastOnly,
    boolean tooLate,
    boolean goesOn,
    FreeRun free,
    RunStates line) {}
