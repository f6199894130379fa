package gradepost.plan.fallback;

import gradepost.stock.BrakeSystem;

/** One step of the fallback ladder: a brake, and the last place for it. */
public record Rung(BrakeSystem brake, Latest latest) {}
