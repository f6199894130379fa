package gradepost.route;

import gradepost.route.place.Extent;
import gradepost.units.Gradient;

/** A stretch of one gradient; rising is positive in the forward direction. */
public record GradientPiece(Extent extent, Gradient gradient) {}
