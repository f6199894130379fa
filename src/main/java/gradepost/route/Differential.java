package gradepost.route;

import gradepost.units.Speed;

/** Another speed for one class of train at the same restriction. */
public record Differential(String trainClass, Speed speed) {}
