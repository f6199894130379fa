package gradepost.drive;

/** The target that must be braked for first, and from where on the free run. */
record Choice(
    int index,
    double atM,
    double brakingM,
    boolean coastOnly,
    boolean tooLate,
    FreeRun free,
    Line line) {}
