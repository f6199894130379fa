package gradepost.briefing.compose;

import gradepost.drive.Finding;

/** Bad news, in words. */
final class FindingWords {
  /** 20 mph, by which a drop is a big one; a hair more, so that it is still 20 rounded down. */
  private static final double BIG_DROP_MPS = 20 * 0.44704 + 1e-6;

  private final Words words;

  FindingWords(Words words) {
    this.words = words;
  }

  String of(Finding finding) {
    if (finding instanceof Finding.BoardTooLate late) {
      return words.text(
          "finding.board-too-late",
          words.place(late.boardM()),
          words.overrun(late.boardM() - late.plannedM()),
          words.place(late.plannedM()));
    } else if (finding instanceof Finding.NoBoard) {
      return words.text("finding.no-board");
    } else if (finding instanceof Finding.BigDrop drop) {
      boolean third = drop.fromMps() - drop.toMps() >= drop.fromMps() / 3 - 1e-9;
      return words.text(
          third ? "finding.big-drop-third" : "finding.big-drop-far",
          words.speed(drop.fromMps()),
          words.speed(drop.toMps()),
          words.speed(BIG_DROP_MPS));
    } else if (finding instanceof Finding.PlatformTooShort s) {
      String text =
          words.text(
              "finding.platform-too-short", words.room(s.platformM()), words.overrun(s.trainM()));
      return s.doorInstruction().isBlank()
          ? text + " " + words.text("finding.no-door-instruction")
          : text + " " + words.text("finding.doors", s.doorInstruction());
    } else if (finding instanceof Finding.NoStopMark n) {
      return words.text("finding.no-stop-mark", n.cars());
    } else if (finding instanceof Finding.NoBrakingPoint n) {
      return n.service()
          .match(
              last ->
                  words.text(
                      "finding.no-braking-point-but", n.adhesion(), words.place(last.printedM())),
              nowhere ->
                  words.text(
                      "finding.no-braking-point",
                      n.adhesion(),
                      words.text(Reasons.key(nowhere.reason()))));
    } else if (finding instanceof Finding.NearBuffers b) {
      return words.text(
          "finding.near-buffers", words.room(b.distanceM()), words.overrun(b.marginM()));
    } else if (finding instanceof Finding.StopOutsideTolerance s) {
      return s.shortM() >= 0
          ? words.text("finding.stops-short", words.overrun(s.shortM()), words.room(s.toleranceM()))
          : words.text(
              "finding.stops-past", words.overrun(-s.shortM()), words.room(s.toleranceM()));
    } else if (finding instanceof Finding.Stalls stalls) {
      return words.text("finding.stalls", words.place(stalls.atM()));
    }
    if (finding instanceof Finding.AtBuffers buffers) {
      return words.text("finding.at-buffers", words.speedAtMost(buffers.speedMps()));
    }
    if (finding instanceof Finding.OftenLate late) {
      long share = Math.round(100 * late.share());
      return late.earlierM()
          .map(m -> words.text("finding.often-late", share, words.overrun(m)))
          .orElse(words.text("finding.often-late-only", share));
    }
    if (finding instanceof Finding.SometimesNotHeld not) {
      return words.text("finding.sometimes-not-held", (long) Math.ceil(100 * not.share() - 1e-9));
    }
    if (finding instanceof Finding.BrakeTestTooNear test) {
      return words.text(
          "finding.brake-test-too-near",
          words.place(test.testM()),
          words.overrun(test.brakingM() - test.testM()),
          words.overrun(test.endM() - test.testM()));
    }
    if (finding instanceof Finding.LessToGive less) {
      double step = words.units().pressureStepPa();
      return words.text(
          less.planned() ? "finding.less-to-give" : "finding.less-to-give-again",
          less.brake().name(),
          words.seconds(Math.floor(less.afterS())),
          words.pressure(Math.floor(less.givesPa() / step) * step),
          words.pressure(less.brake().full().pascals()));
    } else if (finding instanceof Finding.OverCeiling over) {
      return words.text(
          "finding.over-ceiling",
          words.place(over.atM()),
          words.speedAtMost(over.speedMps()),
          words.speed(over.ceilingMps()));
    } else if (finding instanceof Finding.ForbiddenMovement forbidden) {
      return words.text("finding.forbidden-movement", words.place(forbidden.atM()));
    } else if (finding instanceof Finding.NeverComes never) {
      return words.text("finding.never-comes", words.place(never.atM()));
    }
    throw new IllegalArgumentException("a finding without words: " + finding);
  }
}
