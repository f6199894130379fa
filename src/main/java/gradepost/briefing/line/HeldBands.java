package gradepost.briefing.line;

import gradepost.briefing.chart.Chart.HeldBand;
import gradepost.briefing.word.Words;
import gradepost.plan.Action;
import gradepost.plan.Command;
import gradepost.plan.Plan;
import gradepost.told.print.PrintGrid;
import java.util.ArrayList;
import java.util.List;

/** The speeds that a plan holds, as charts draw them. */
public final class HeldBands {
  /** Those of a stretch, cut at its ends. */
  public static List<HeldBand> of(Plan plan, Words words, double fromM, double toM) {
    PrintGrid grid = words.grid();
    List<HeldBand> out = new ArrayList<>();
    for (Action action : plan.actions()) {
      for (Command.Hold hold : action.command().hold().stream().toList()) {
        double from = Math.max(fromM, action.atM());
        double to = Math.min(toM, hold.untilM());
        if (from < to) {
          long lower = grid.speed(hold.lowerMps()).number();
          long upper = grid.speed(hold.upperMps()).number();
          out.add(new HeldBand(from, to, lower, upper, words.text("chart.held", lower, upper)));
        }
      }
    }
    return out;
  }

  private HeldBands() {}
}
