package gradepost.drive;

import gradepost.told.PrintGrid;
import gradepost.told.PrintedFinding;
import gradepost.told.PrintedValue;
import gradepost.told.Reason;
import gradepost.units.Speed;
import java.util.List;

/** Puts findings as they are printed: the key of a sentence, and what stands in its holes. */
public final class TellingFindings {
  /** By which a drop is a big one; a hair more, so that it is still 20 rounded down. */
  private static final double BIG_DROP_MPS = Speed.ofMph(20).metresPerSecond() + 1e-6;

  private final PrintGrid grid;

  public TellingFindings(PrintGrid grid) {
    this.grid = grid;
  }

  /** The sentence of a finding. */
  public PrintedFinding of(Finding finding) {
    if (finding instanceof Finding.BoardTooLate late) {
      return says(
          "board-too-late",
          place(late.boardM()),
          needed(late.boardM() - late.plannedM()),
          place(late.plannedM()));
    } else if (finding instanceof Finding.NoBoard) {
      return says("no-board");
    } else if (finding instanceof Finding.BigDrop drop) {
      boolean third = drop.fromMps() - drop.toMps() >= drop.fromMps() / 3 - 1e-9;
      return third
          ? says("big-drop-third", speed(drop.fromMps()), speed(drop.toMps()))
          : says("big-drop-far", speed(drop.fromMps()), speed(drop.toMps()), speed(BIG_DROP_MPS));
    } else if (finding instanceof Finding.PlatformTooShort s) {
      return s.doorInstruction().isBlank()
          ? says("platform-too-short-no-doors", room(s.platformM()), needed(s.trainM()))
          : says(
              "platform-too-short-doors",
              room(s.platformM()),
              needed(s.trainM()),
              new PrintedValue.Name(s.doorInstruction()));
    } else if (finding instanceof Finding.NoStopMark n) {
      return says("no-stop-mark", new PrintedValue.Count(n.cars()));
    } else if (finding instanceof Finding.NoBrakingPoint n) {
      PrintedValue rail = new PrintedValue.Name(n.adhesion());
      return n.service() instanceof Latest.Point last
          ? says("no-braking-point-but", rail, place(last.printedM()))
          : says("no-braking-point", rail, why(((Latest.Nowhere) n.service()).reason()));
    } else if (finding instanceof Finding.NearBuffers b) {
      return says("near-buffers", room(b.distanceM()), needed(b.marginM()));
    } else if (finding instanceof Finding.StopOutsideTolerance s) {
      return says(
          s.shortM() >= 0 ? "stops-short" : "stops-past",
          needed(Math.abs(s.shortM())),
          room(s.toleranceM()));
    } else if (finding instanceof Finding.Stalls stalls) {
      return says("stalls", place(stalls.atM()));
    } else if (finding instanceof Finding.AtBuffers buffers) {
      return says("at-buffers", atMost(buffers.speedMps()));
    } else if (finding instanceof Finding.OftenLate late) {
      PrintedValue share = new PrintedValue.Count(grid.share(late.share()));
      return late.earlierM()
          .map(m -> says("often-late", share, needed(m)))
          .orElse(says("often-late-only", share));
    } else if (finding instanceof Finding.SometimesNotHeld not) {
      return says("sometimes-not-held", new PrintedValue.Count(grid.shareAtMost(not.share())));
    } else if (finding instanceof Finding.BrakeTestTooNear test) {
      return says(
          "brake-test-too-near",
          place(test.testM()),
          needed(test.brakingM() - test.testM()),
          needed(test.endM() - test.testM()));
    } else if (finding instanceof Finding.LessToGive less) {
      return says(
          less.planned() ? "less-to-give" : "less-to-give-again",
          new PrintedValue.Name(less.brake().name()),
          new PrintedValue.Time(grid.timeLeft(less.afterS())),
          new PrintedValue.Pressure(grid.pressureLeft(less.givesPa())),
          new PrintedValue.Pressure(grid.pressure(less.brake().full().pascals())));
    } else if (finding instanceof Finding.OverCeiling over) {
      return says(
          "over-ceiling", place(over.atM()), atMost(over.speedMps()), speed(over.ceilingMps()));
    } else if (finding instanceof Finding.ForbiddenMovement forbidden) {
      return says("forbidden-movement", place(forbidden.atM()));
    } else if (finding instanceof Finding.NeverComes never) {
      return says("never-comes", place(never.atM()));
    }
    throw new IllegalArgumentException("a finding that no sheet tells: " + finding);
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

  private static PrintedValue why(Latest.Reason reason) {
    return new PrintedValue.Why(Reason.valueOf(reason.name()));
  }
}
