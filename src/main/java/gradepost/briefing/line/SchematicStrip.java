package gradepost.briefing.line;

import gradepost.briefing.chart.Chart;
import gradepost.briefing.chart.StripChart;
import gradepost.briefing.chart.TrackStrip;
import java.util.TreeSet;

/**
 * A row of the strip with equal steps between what is met. Order and sides stay; places are moved
 * so that a crowded mile is as easy to read as an empty one, and no distance is to scale.
 */
final class SchematicStrip {
  /** Things closer than this count as one. */
  private static final double SAME_M = 2;

  /** How much of a step hangs on the true distance, so that far still looks farther than near. */
  private static final double TRUE_SHARE = 0.25;

  private final double[] at;
  private final double[] to;

  private SchematicStrip(StripChart row) {
    TrackStrip track = row.track();
    TreeSet<Double> places = new TreeSet<>();
    track.signs().forEach(s -> places.add(s.atM()));
    track.platforms().forEach(p -> places.add((p.fromM() + p.toM()) / 2));
    row.permissible().forEach(s -> places.add(s.toM()));
    track.slopes().forEach(s -> places.add(s.toM()));
    track.bends().forEach(b -> places.add((b.fromM() + b.toM()) / 2));
    places.add(track.toM());
    TreeSet<Double> apart = new TreeSet<>();
    apart.add(track.fromM());
    for (double place : places) {
      if (place > apart.last() + SAME_M && place <= track.toM()) {
        apart.add(place);
      }
    }
    at = apart.stream().mapToDouble(Double::doubleValue).toArray();
    to = new double[at.length];
    double length = track.lengthM();
    double even = length / (at.length - 1);
    to[0] = track.fromM();
    for (int i = 1; i < at.length; i++) {
      to[i] = to[i - 1] + TRUE_SHARE * (at[i] - at[i - 1]) + (1 - TRUE_SHARE) * even;
    }
  }

  /** The same row, evened out; its ends stay where they are. */
  static StripChart of(StripChart row, String id, String name, String says) {
    SchematicStrip evened = new SchematicStrip(row);
    return new StripChart(
        id,
        name,
        says,
        row.scaleM(),
        row.speedUnit(),
        row.topSpeed(),
        row.permissible().stream()
            .map(
                s ->
                    new StripChart.Step(
                        evened.at(s.fromM()),
                        evened.at(s.toM()),
                        s.speed(),
                        s.text(),
                        s.temporary()))
            .toList(),
        row.restrictions().stream().map(evened::stretch).toList(),
        row.held().stream()
            .map(
                h ->
                    new Chart.HeldBand(
                        evened.at(h.fromM()), evened.at(h.toM()), h.lower(), h.upper(), h.text()))
            .toList(),
        evened.track(row.track()));
  }

  private double at(double place) {
    if (place <= at[0]) {
      return to[0] + place - at[0];
    }
    for (int i = 1; i < at.length; i++) {
      if (place <= at[i]) {
        return to[i - 1] + (place - at[i - 1]) / (at[i] - at[i - 1]) * (to[i] - to[i - 1]);
      }
    }
    return to[to.length - 1] + place - at[at.length - 1];
  }

  private TrackStrip.Stretch stretch(TrackStrip.Stretch s) {
    return new TrackStrip.Stretch(at(s.fromM()), at(s.toM()), s.text(), s.left());
  }

  private TrackStrip track(TrackStrip t) {
    return new TrackStrip(
        t.fromM(),
        t.toM(),
        t.names(),
        t.ticks().stream().map(k -> new TrackStrip.Tick(at(k.atM()), k.text(), k.major())).toList(),
        t.slopes().stream()
            .map(s -> new TrackStrip.Slope(at(s.fromM()), at(s.toM()), s.permille(), s.text()))
            .toList(),
        t.bends().stream()
            .map(
                b ->
                    new TrackStrip.Bend(
                        at(b.fromM()),
                        at(b.toM()),
                        b.left(),
                        b.radiusM(),
                        b.checkLeft(),
                        b.checkRight(),
                        b.text()))
            .toList(),
        t.platforms().stream().map(this::stretch).toList(),
        t.signs().stream().map(s -> new TrackStrip.Sign(at(s.atM()), s.text(), s.kind())).toList());
  }
}
