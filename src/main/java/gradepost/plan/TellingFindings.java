package gradepost.plan;

import gradepost.plan.fallback.Latest;
import gradepost.route.BigDrop;
import gradepost.told.PrintedFinding;
import gradepost.told.PrintedValue;
import gradepost.told.Reason;
import gradepost.told.print.PrintGrid;
import java.util.List;

/** Puts findings as they are printed: the key of a sentence, and what stands in its holes. */
public final class TellingFindings implements Finding.Cases<PrintedFinding> {
  private final PrintGrid grid;

  public TellingFindings(PrintGrid grid) {
    this.grid = grid;
  }

  /** The sentence of a finding. */
  public PrintedFinding of(Finding finding) {
    return finding.match(this);
  }

  @Override
  public PrintedFinding boardTooLate(Finding.BoardTooLate late) {
    return says(
        "board-too-late",
        place(late.boardM()),
        needed(late.boardM() - late.plannedM()),
        place(late.plannedM()));
  }

  @Override
  public PrintedFinding noBoard(Finding.NoBoard none) {
    return says("no-board");
  }

  @Override
  public PrintedFinding bigDrop(Finding.BigDrop drop) {
    boolean third = BigDrop.isThird(drop.fromMps(), drop.toMps());
    return third
        ? says("big-drop-third", speed(drop.fromMps()), speed(drop.toMps()))
        : says(
            "big-drop-far",
            speed(drop.fromMps()),
            speed(drop.toMps()),
            speed(BigDrop.FAR.metresPerSecond()));
  }

  @Override
  public PrintedFinding platformTooShort(Finding.PlatformTooShort s) {
    return s.doorInstruction().isBlank()
        ? says("platform-too-short-no-doors", room(s.platformM()), needed(s.trainM()))
        : says(
            "platform-too-short-doors",
            room(s.platformM()),
            needed(s.trainM()),
            new PrintedValue.Name(s.doorInstruction()));
  }

  @Override
  public PrintedFinding noStopMark(Finding.NoStopMark none) {
    return says("no-stop-mark", new PrintedValue.Count(none.cars()));
  }

  @Override
  public PrintedFinding noBrakingPoint(Finding.NoBrakingPoint none) {
    PrintedValue rail = new PrintedValue.Name(none.adhesion());
    return none.service()
        .match(
            last -> says("no-braking-point-but", rail, place(last.printedM())),
            nowhere -> says("no-braking-point", rail, why(nowhere.reason())));
  }

  @Override
  public PrintedFinding nearBuffers(Finding.NearBuffers near) {
    return says("near-buffers", room(near.distanceM()), needed(near.marginM()));
  }

  @Override
  public PrintedFinding atBuffers(Finding.AtBuffers buffers) {
    return says("at-buffers", atMost(buffers.speedMps()));
  }

  @Override
  public PrintedFinding oftenLate(Finding.OftenLate late) {
    PrintedValue share = new PrintedValue.Count(grid.share(late.share()));
    return late.earlierM()
        .map(m -> says("often-late", share, needed(m)))
        .orElse(says("often-late-only", share));
  }

  @Override
  public PrintedFinding sometimesNotHeld(Finding.SometimesNotHeld not) {
    return says("sometimes-not-held", new PrintedValue.Count(grid.shareAtMost(not.share())));
  }

  @Override
  public PrintedFinding lateThough(Finding.LateThough late) {
    return says("late-though", new PrintedValue.Count(grid.shareAtMost(late.share())));
  }

  @Override
  public PrintedFinding noRoomForTest(Finding.NoRoomForTest test) {
    BrakeTest.NoRoom why = test.why();
    PrintedValue at = place(test.testM());
    PrintedValue asked = speed(test.testMps());
    return switch (why.reason()) {
      case SLOW -> says("test-too-slow", at, speed(why.is()), asked);
      case FAST -> says("test-too-fast", at, atMost(why.is()), asked);
      case BRAKING -> says("test-in-braking", at);
      case CHECKED -> says("test-while-checked", at);
      case AGAIN -> says("test-too-near", at, left(why.is()));
      case RECHARGE -> says("test-not-recharged", at, time(why.is()));
      case NO_WAY -> says("test-no-way", at);
    };
  }

  @Override
  public PrintedFinding testInstead(Finding.TestInstead instead) {
    return instead
        .where()
        .map(w -> says("test-instead", place(w.atM()), speed(w.mps())))
        .orElseGet(() -> says("test-nowhere"));
  }

  @Override
  public PrintedFinding testOnRail(Finding.TestOnRail test) {
    return says(
        test.brakingM() < test.testM() ? "test-left-out" : "test-goes-on",
        new PrintedValue.Name(test.adhesion()),
        place(test.brakingM()),
        place(test.testM()));
  }

  @Override
  public PrintedFinding nextFirst(Finding.NextFirst first) {
    return says(
        "next-first",
        new PrintedValue.Speed(grid.speed(first.fromMps())),
        new PrintedValue.Name(first.adhesion()),
        new PrintedValue.Name(first.next()));
  }

  @Override
  public PrintedFinding ruleBroken(Finding.RuleBroken rule) {
    PrintedValue at = place(rule.atM());
    PrintedValue wanted = time(rule.rule());
    return switch (rule.broken()) {
      case POWER_SHORT -> says("power-short", at, left(rule.is()), wanted);
      case DEAD_NOTCH -> says("dead-notch", at, time(rule.is()), wanted);
      case NOTCH_KEPT -> says("notch-kept", at, time(rule.is()), wanted);
      case POWER_AGAIN -> says("power-again", at, left(rule.is()), wanted);
      case BRAKE_AT_ONCE -> says("brake-at-once", at, left(rule.is()), wanted);
      case BRAKE_AGAIN -> says("brake-again", at, left(rule.is()), wanted);
      case BRAKE_SHORT -> says("brake-short", at, left(rule.is()), wanted);
      case MOVEMENTS -> counted("many-movements", rule);
      case ROWS -> counted("many-rows", rule);
    };
  }

  private PrintedFinding counted(String key, Finding.RuleBroken rule) {
    return says(
        key,
        place(rule.atM()),
        new PrintedValue.Count((int) rule.is()),
        new PrintedValue.Count((int) rule.rule()));
  }

  @Override
  public PrintedFinding lessToGive(Finding.LessToGive less) {
    return says(
        less.planned() ? "less-to-give" : "less-to-give-again",
        new PrintedValue.Name(less.brake().name()),
        new PrintedValue.Time(grid.timeLeft(less.afterS())),
        new PrintedValue.Pressure(grid.pressureLeft(less.givesPa())),
        new PrintedValue.Pressure(grid.pressure(less.brake().full().pascals())));
  }

  @Override
  public PrintedFinding fullAgain(Finding.FullAgain full) {
    return says(
        "full-again",
        new PrintedValue.Name(full.brake().name()),
        place(full.releasedM()),
        time(full.afterS()),
        new PrintedValue.Place(grid.placePast(full.fullM())));
  }

  private static PrintedFinding says(String key, PrintedValue... values) {
    return new PrintedFinding("finding." + key, List.of(values));
  }

  private PrintedValue place(double atM) {
    return new PrintedValue.Place(grid.place(atM));
  }

  private PrintedValue speed(double mps) {
    return new PrintedValue.Speed(grid.speed(mps));
  }

  private PrintedValue atMost(double mps) {
    return new PrintedValue.Speed(grid.speedAtMost(mps));
  }

  private PrintedValue room(double metres) {
    return new PrintedValue.Length(grid.room(metres));
  }

  private PrintedValue needed(double metres) {
    return new PrintedValue.Length(grid.lengthUp(metres));
  }

  private PrintedValue left(double seconds) {
    return new PrintedValue.Time(grid.timeLeft(seconds));
  }

  private PrintedValue time(double seconds) {
    return new PrintedValue.Time(grid.timeNeeded(seconds));
  }

  private static PrintedValue why(Latest.Reason reason) {
    return new PrintedValue.Why(Reason.valueOf(reason.name()));
  }
}
