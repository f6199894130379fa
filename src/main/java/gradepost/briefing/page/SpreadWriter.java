package gradepost.briefing.page;

import gradepost.briefing.word.Reasons;
import gradepost.briefing.word.Words;
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

  /** One sentence; empty where it was not computed. */
  Optional<String> says(InstructionSheet sheet) {
    return sheet.spread().map(s -> says(sheet.target(), s));
  }

  private String says(PrintedTarget target, PrintedSpread told) {
    boolean seldom = told.fullShare() == 0;
    return words.text(
        target.isStop()
            ? seldom ? "spread.says-stop-seldom" : "spread.says-stop"
            : seldom ? "spread.says-board-seldom" : "spread.says-board",
        side(told.early()),
        side(told.late()),
        told.fullShare(),
        target.speed().map(PrintedSpeed::text).orElse(""));
  }

  private String side(PrintedEnd end) {
    return end.match(
        before -> words.text("spread.before", before.by().text()),
        past -> words.text("spread.past", past.by().text()),
        nowhere -> words.text(Reasons.key(nowhere.why())));
  }
}
