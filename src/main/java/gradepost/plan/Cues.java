package gradepost.plan;

import gradepost.route.Landmark;
import java.util.Optional;

/**
 * The landmarks at a braking point and behind it.
 *
 * @param anchor the landmark that the printed point stands at, where one was in reach
 * @param backstop the first one after the point: met with no brake on, it is late
 * @param backstopAfterM how far after the point it stands
 */
public record Cues(Optional<Landmark> anchor, Optional<Landmark> backstop, double backstopAfterM) {}
