package gradepost.briefing.page;

import gradepost.briefing.SpreadChart;
import gradepost.briefing.word.Words;
import gradepost.plan.Approach;
import gradepost.plan.Spread;
import gradepost.task.Target;
import java.util.Optional;

/** How far runs differ when nobody corrects them: for the reader to know that he must. */
final class SpreadWriter {
  private final Words words;

  SpreadWriter(Words words) {
    this.words = words;
  }

  Optional<SpreadChart> chart(String id, Approach approach) {
    return approach
        .spread()
        .filter(s -> s.shortM05().isPresent())
        .map(s -> of(id + "-spread", approach.target(), s));
  }

  private SpreadChart of(String id, Target target, Spread spread) {
    String kind = target.isStop() ? "stop" : "board";
    double unit = words.units().lengthUnitM();
    double pastM = spread.shortM05().orElseThrow();
    double middleM = spread.shortM50().orElseThrow();
    double beforeM = spread.shortM95().orElseThrow();
    String past = side(pastM);
    String before = side(beforeM);
    String says =
        words.text(
            "spread.says-" + kind,
            before,
            past,
            Math.round(100 * spread.pastShare()),
            words.speed(target.speedMps()));
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

  /** Outwards: neither end is made to look nearer than it is. */
  private String side(double shortM) {
    return words.text(
        shortM >= 0 ? "spread.before" : "spread.past", words.overrun(Math.abs(shortM)));
  }
}
