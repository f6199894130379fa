package gradepost.policy;

/** By what a driver's route knowledge is assessed, signed and kept. */
public record SignOffRules(PaperRules papers, RideRules ride, Currency currency) {}
