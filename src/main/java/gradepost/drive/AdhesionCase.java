package gradepost.drive;

import gradepost.stock.AdhesionLaw;

/**
 * A state of the rail that every approach is computed for; {@code note} says what it stands for.
 */
public record AdhesionCase(String name, AdhesionLaw law, String note) {}
