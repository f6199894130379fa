package gradepost.policy;

import gradepost.stock.LoadCase;
import gradepost.units.Speed;

/**
 * Which way a latest point leans.
 *
 * @param load worst load case
 * @param overspeed by how much the train may be faster than planned
 * @param brakeFactor share of the stated brake force that is counted on, 0 to 1
 * @param isolatedShare share of the vehicles whose brake is taken as isolated, the strongest first,
 *     0 to below 1
 */
public record SafeSide(LoadCase load, Speed overspeed, double brakeFactor, double isolatedShare) {}
