package gradepost.render.chart;

import gradepost.briefing.ApproachChart;
import gradepost.briefing.Chart;
import gradepost.briefing.CodeChart;
import gradepost.briefing.PressureChart;
import gradepost.briefing.RunChart;
import gradepost.briefing.SpreadChart;
import gradepost.briefing.StandsChart;
import gradepost.briefing.StripChart;
import gradepost.briefing.TrainChart;

/** Lays each kind of chart out. */
public final class Drawings implements Chart.Cases<Drawing> {
  private final Fonts fonts;

  private Drawings(Fonts fonts) {
    this.fonts = fonts;
  }

  /** The chart laid out, its texts measured in these fonts. */
  public static Drawing of(Chart chart, Fonts fonts) {
    return chart.match(new Drawings(fonts));
  }

  @Override
  public Drawing approach(ApproachChart chart) {
    return new ApproachDrawing(chart, fonts);
  }

  @Override
  public Drawing strip(StripChart chart) {
    return new StripDrawing(chart, fonts);
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
  public Drawing spread(SpreadChart chart) {
    return new SpreadDrawing(chart, fonts);
  }

  @Override
  public Drawing code(CodeChart chart) {
    return new CodeDrawing(chart);
  }

  @Override
  public Drawing run(RunChart chart) {
    return new RunDrawing(chart, fonts);
  }
}
