package gradepost.drive.leg;

/**
 * The target that must be braked for first, and from where on the free run.
 *
 * @param aimM where its speed is to be reached
 */
record NextBraking(
    int index,
    double aimM,
    double atM,
    double brakingM,
    boolean coastOnly,
    boolean tooLate,
    FreeRun free,
    RunStates line) {}
