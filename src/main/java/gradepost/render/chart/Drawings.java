package gradepost.render.chart;

import gradepost.briefing.chart.ApproachChart;
import gradepost.briefing.chart.Chart;
import gradepost.briefing.chart.CodeChart;
import gradepost.briefing.chart.LineChart;
import gradepost.briefing.chart.PressureChart;
import gradepost.briefing.chart.RoadChart;
import gradepost.briefing.chart.RunChart;
import gradepost.briefing.chart.StandsChart;
import gradepost.briefing.chart.TrainChart;

/** Lays each kind of chart out. */
public final class Drawings implements Chart.Cases<Drawing> {
  private final Fonts fonts;
  private final boolean paper;

  private Drawings(Fonts fonts, boolean paper) {
    this.fonts = fonts;
    this.paper = paper;
  }

  /** The chart laid out, its texts measured in these fonts. */
  public static Drawing of(Chart chart, Fonts fonts) {
    return chart.match(new Drawings(fonts, true));
  }

  /** The same for a screen, which may be as narrow as a telephone. */
  public static Drawing onScreen(Chart chart, Fonts fonts) {
    return chart.match(new Drawings(fonts, false));
  }

  @Override
  public Drawing approach(ApproachChart chart) {
    return paper ? new ApproachDrawing(chart, fonts) : ApproachDrawing.narrow(chart, fonts);
  }

  @Override
  public Drawing line(LineChart chart) {
    return new LineSheetDrawing(chart, fonts);
  }

  @Override
  public Drawing train(TrainChart chart) {
    return new TrainDrawing(chart, fonts);
  }

  @Override
  public Drawing stands(StandsChart chart) {
    return new StandsDrawing(chart, fonts);
  }

  @Override
  public Drawing pressure(PressureChart chart) {
    return new PressureDrawing(chart, fonts);
  }

  @Override
  public Drawing code(CodeChart chart) {
    return new CodeDrawing(chart);
  }

  @Override
  public Drawing run(RunChart chart) {
    return new RunDrawing(chart, fonts);
  }

  @Override
  public Drawing road(RoadChart chart) {
    return new RoadDrawing(chart, fonts);
  }
}
