package gradepost.drive;

import gradepost.route.Landmark;
import java.util.List;
import java.util.Optional;

/**
 * One target and everything about coming to it.
 *
 * @param number 1-based, in order of travel
 * @param fromM where its page begins: the end of the approach before
 * @param shutOffM where power is taken off for it; empty where the train was coasting already
 * @param exactBrakingPointM as computed; empty when the train needs no brake for it
 * @param brakingPointM on the print grid, at or before the exact one
 * @param landmark the nearest one at or before the printed point
 * @param cues what the driver goes by at the printed point
 * @param endM where the planned run meets the target (a stop: where it stands)
 * @param actions in order
 * @param cases one for each adhesion case, the planned one first
 */
public record Approach(
    int number,
    Target target,
    double fromM,
    Optional<Double> shutOffM,
    Optional<Double> exactBrakingPointM,
    Optional<Double> brakingPointM,
    Optional<Landmark> landmark,
    Cues cues,
    double brakingSpeedMps,
    double mainPressurePa,
    double endM,
    List<Action> actions,
    List<CaseResult> cases,
    List<LatestCurve> curves,
    Optional<Spread> spread,
    List<Finding> findings) {
  public Approach {
    actions = List.copyOf(actions);
    cases = List.copyOf(cases);
    curves = List.copyOf(curves);
    findings = List.copyOf(findings);
  }
}
