package gradepost.route.place;

import gradepost.units.Mileage;

/** A lineside place: a mileage and the section whose datum it is counted from. */
public record Location(String section, Mileage mileage) {}
