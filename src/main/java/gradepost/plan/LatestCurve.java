package gradepost.plan;

import gradepost.stock.BrakeSystem;

/** The run of the train, braked at the latest point of one brake, in the planned rail state. */
public record LatestCurve(BrakeSystem brake, Trace trace) {}
