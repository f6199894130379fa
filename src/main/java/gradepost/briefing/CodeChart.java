package gradepost.briefing;

/** A machine-readable square that says {@code text}. */
public record CodeChart(String id, String name, String says, String text) implements Chart {}
