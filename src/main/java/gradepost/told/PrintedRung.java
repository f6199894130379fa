package gradepost.told;

/** One step of the fallback ladder. */
public record PrintedRung(PrintedBrake brake, PrintedLatest latest) {}
