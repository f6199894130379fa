package gradepost.briefing.page;

import gradepost.briefing.chart.SpreadChart;
import gradepost.briefing.word.Reasons;
import gradepost.briefing.word.Words;
import gradepost.plan.Spread;
import gradepost.told.InstructionSheet;
import gradepost.told.PrintedEnd;
import gradepost.told.PrintedSpread;
import gradepost.told.PrintedTarget;
import gradepost.told.print.PrintedSpeed;
import java.util.Optional;

/** Where runs end that the driver corrects, and how often he needs full service for it. */
final class SpreadWriter {
  private final Words words;

  SpreadWriter(Words words) {
    this.words = words;
  }

  /**
   * What is told of it, and a drawing of the same.
   *
   * @param drawn for the curve alone
   */
  Optional<SpreadChart> chart(String id, InstructionSheet sheet, Optional<Spread> drawn) {
    return sheet.spread().map(s -> of(id + "-spread", sheet.target(), s, drawn.orElseThrow()));
  }

  private SpreadChart of(String id, PrintedTarget target, PrintedSpread told, Spread spread) {
    String kind = target.isStop() ? "stop" : "board";
    double unit = words.units().lengthUnitM();
    double pastM = spread.corrected().shortM05().orElseThrow();
    double middleM = spread.corrected().shortM50().orElseThrow();
    double beforeM = spread.corrected().shortM95().orElseThrow();
    String past = side(told.late());
    String before = side(told.early());
    String says =
        words.text(
            "spread.says-" + kind,
            before,
            past,
            told.fullShare(),
            target.speed().map(PrintedSpeed::text).orElse(""));
    return new SpreadChart(
        id,
        words.text("chart.spread"),
        says,
        pastM / unit,
        middleM / unit,
        beforeM / unit,
        past,
        before,
        words.text("spread.target-" + kind));
  }

  private String side(PrintedEnd end) {
    return end.match(
        before -> words.text("spread.before", before.by().text()),
        past -> words.text("spread.past", past.by().text()),
        nowhere -> words.text(Reasons.key(nowhere.why())));
  }
}
