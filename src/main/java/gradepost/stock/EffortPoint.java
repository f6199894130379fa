package gradepost.stock;

import gradepost.units.Force;
import gradepost.units.Speed;

/** One reading of tractive effort against speed. */
public record EffortPoint(Speed speed, Force effort) {}
