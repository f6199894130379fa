package gradepost.briefing.signoff;

import gradepost.briefing.chart.StripChart;
import gradepost.briefing.chart.TrackStrip;
import gradepost.briefing.chart.TrackStrip.Kind;
import gradepost.policy.StripLayer;
import java.util.ArrayList;
import java.util.List;

/** A row of the strip with some of its layers left out. */
final class BlankStrip {
  private final List<StripLayer> out;
  private final String space;

  /**
   * @param space what is printed where a name was
   */
  BlankStrip(List<StripLayer> out, String space) {
    this.out = List.copyOf(out);
    this.space = space;
  }

  StripChart of(StripChart row, String says) {
    boolean speeds = out.contains(StripLayer.SPEEDS);
    return new StripChart(
        row.id(),
        row.name(),
        says,
        row.scaleM(),
        row.speedUnit(),
        row.topSpeed(),
        speeds ? List.of() : row.permissible(),
        speeds ? List.of() : row.restrictions(),
        List.of(),
        track(row.track()));
  }

  private TrackStrip track(TrackStrip t) {
    boolean gradients = out.contains(StripLayer.GRADIENTS);
    boolean platforms = out.contains(StripLayer.PLATFORMS);
    return new TrackStrip(
        t.fromM(),
        t.toM(),
        t.names(),
        t.ticks(),
        gradients ? List.of(new TrackStrip.Slope(t.fromM(), t.toM(), 0, "")) : t.slopes(),
        out.contains(StripLayer.CURVES) ? List.of() : t.bends(),
        platforms ? List.of() : named(t.platforms()),
        signs(t.signs()));
  }

  private List<TrackStrip.Stretch> named(List<TrackStrip.Stretch> platforms) {
    if (!out.contains(StripLayer.NAMES)) {
      return platforms;
    }
    return platforms.stream()
        .map(p -> new TrackStrip.Stretch(p.fromM(), p.toM(), "", p.left()))
        .toList();
  }

  /** Where names are left out, what they hang from stays: a place to write each upon. */
  private List<TrackStrip.Sign> signs(List<TrackStrip.Sign> signs) {
    if (!out.contains(StripLayer.NAMES)) {
      return signs;
    }
    List<TrackStrip.Sign> kept = new ArrayList<>();
    for (TrackStrip.Sign s : signs) {
      if (s.kind() != Kind.BOARD || !out.contains(StripLayer.SPEEDS)) {
        kept.add(new TrackStrip.Sign(s.atM(), space, s.kind()));
      }
    }
    return kept;
  }
}
