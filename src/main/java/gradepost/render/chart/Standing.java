package gradepost.render.chart;

import gradepost.briefing.chart.TrackStrip;
import java.util.List;

/**
 * What stands upright through all bands under a chart: the line of the target.
 *
 * @param at in points
 */
record Standing(List<Double> at) {
  /** From a label to a line beside it. */
  private static final double BESIDE = 2.5;

  Standing {
    at = List.copyOf(at);
  }

  static Standing of(TrackStrip track, Scale x) {
    return new Standing(
        track.signs().stream()
            .filter(s -> s.kind() == TrackStrip.Kind.TARGET)
            .map(s -> x.at(s.atM()))
            .toList());
  }

  /** Where a label of this width may begin: as wanted, else beside what would strike it. */
  List<Double> starts(double wanted, double width) {
    return at.stream()
        .filter(t -> t > wanted - BESIDE && t < wanted + width + BESIDE)
        .findFirst()
        .map(t -> List.of(t + BESIDE, t - BESIDE - width))
        .orElse(List.of(wanted));
  }
}
