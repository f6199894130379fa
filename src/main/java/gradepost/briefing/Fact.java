package gradepost.briefing;

/** A label and what stands beside it. */
public record Fact(String label, String value) {}
