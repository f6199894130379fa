package gradepost.briefing.signoff;

import gradepost.briefing.LineSheet;
import gradepost.briefing.chart.Curve;
import gradepost.briefing.chart.LineChart;
import gradepost.briefing.chart.TrackStrip;
import gradepost.policy.StripLayer;
import java.util.List;

/** A sheet of the line with some of its layers left out. */
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

  LineSheet of(LineSheet sheet, String says) {
    return new LineSheet(
        sheet.id(),
        sheet.title(),
        chart(sheet.chart(), says),
        sheet.rows().stream().map(this::row).toList());
  }

  private LineChart chart(LineChart c, String says) {
    return new LineChart(
        c.id(),
        c.name(),
        says,
        c.topSpeed(),
        c.speedStep(),
        out.contains(StripLayer.SPEEDS) ? List.of() : c.permissible(),
        Curve.through(c.planned().kind(), c.planned().text(), List.of()),
        List.of(),
        List.of(),
        c.structures(),
        c.gaps(),
        c.magnets(),
        c.heads(),
        track(c.track()),
        c.levels(),
        c.headPx(),
        c.heightPx());
  }

  private TrackStrip track(TrackStrip t) {
    boolean gradients = out.contains(StripLayer.GRADIENTS);
    boolean platforms = out.contains(StripLayer.PLATFORMS);
    return new TrackStrip(
        t.fromM(),
        t.toM(),
        t.names(),
        t.ticks(),
        gradients ? List.of() : t.slopes(),
        out.contains(StripLayer.CURVES) ? List.of() : t.bends(),
        platforms ? List.of() : t.platforms(),
        out.contains(StripLayer.NAMES)
            ? t.signs().stream().map(this::unnamed).toList()
            : t.signs());
  }

  private TrackStrip.Sign unnamed(TrackStrip.Sign sign) {
    return new TrackStrip.Sign(sign.atM(), "", sign.kind(), sign.left());
  }

  /** The place stays: what to write is asked of it. A station's row tells its platform too. */
  private LineSheet.Row row(LineSheet.Row r) {
    boolean blank =
        out.contains(StripLayer.NAMES) || (r.heading() && out.contains(StripLayer.PLATFORMS));
    if (!blank) {
      return r;
    }
    List<String> line = List.of(space);
    LineSheet.Set set =
        new LineSheet.Set(r.set().place(), line, List.of(), false, r.set().heightPx());
    return new LineSheet.Row(
        r.place(), r.speed(), line, List.of(), r.heading(), r.link(), r.changed(), set);
  }
}
