package gradepost.pack;

/**
 * What the depot wants to be said before all else to whoever drives one formation.
 *
 * @param formation by name; another's papers do not have it
 */
public record FormationRisk(String formation, String item) {}
