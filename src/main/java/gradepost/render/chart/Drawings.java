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
public final class Drawings {
  private Drawings() {}

  public static Drawing of(Chart chart, Fonts fonts) {
    if (chart instanceof ApproachChart c) {
      return new ApproachDrawing(c, fonts);
    } else if (chart instanceof StripChart c) {
      return new StripDrawing(c, fonts);
    } else if (chart instanceof TrainChart c) {
      return new TrainDrawing(c, fonts);
    } else if (chart instanceof StandsChart c) {
      return new StandsDrawing(c, fonts);
    } else if (chart instanceof PressureChart c) {
      return new PressureDrawing(c, fonts);
    } else if (chart instanceof SpreadChart c) {
      return new SpreadDrawing(c, fonts);
    } else if (chart instanceof RunChart c) {
      return new RunDrawing(c, fonts);
    } else if (chart instanceof CodeChart c) {
      return new CodeDrawing(c);
    }
    throw new IllegalArgumentException("a chart without a drawing: " + chart.id());
  }
}
