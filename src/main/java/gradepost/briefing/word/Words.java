package gradepost.briefing.word;

import gradepost.briefing.Messages;
import gradepost.plan.Telling;
import gradepost.route.Path;
import gradepost.route.place.Hand;
import gradepost.stock.BrakeSystem;
import gradepost.task.Target;
import gradepost.told.PrintedBrake;
import gradepost.told.PrintedTarget;
import gradepost.told.print.PrintGrid;
import gradepost.told.print.PrintedPlace;
import gradepost.told.print.PrintedTime;
import gradepost.units.Gradient;
import gradepost.units.MomentStyle;
import gradepost.units.UnitStyle;
import java.time.LocalDateTime;
import java.util.Locale;

/** Puts quantities into words, each rounded to the side that the caller names. */
public final class Words {
  private final Messages messages;
  private final Path path;
  private final PrintGrid grid;

  public Words(Messages messages, Path path) {
    this.messages = messages;
    this.path = path;
    this.grid = new PrintGrid(path);
  }

  /** A text by its key, with its holes filled. */
  public String text(String key, Object... holes) {
    return messages.text(key, holes);
  }

  /** The texts. */
  public Messages messages() {
    return messages;
  }

  /** The route in the direction of travel. */
  public Path path() {
    return path;
  }

  /** The units of the route. */
  public UnitStyle units() {
    return path.units();
  }

  /** The grid on which everything is printed. */
  public PrintGrid grid() {
    return grid;
  }

  /** A place that the driver comes to: on the print grid, at or before it. */
  public String place(double atM) {
    return spelt(grid.place(atM), "");
  }

  /** The same without the section in which it lies, for where that is told above it. */
  public String placeWithin(double atM) {
    PrintedPlace.Mileage at = grid.place(atM);
    return spelt(new PrintedPlace.Mileage(at.section(), at.steps(), false), "");
  }

  /** A place that the train must have reached: at or after it. */
  public String placePast(double atM) {
    return spelt(grid.placePast(atM), "");
  }

  /**
   * A place on the way to a target: on the print grid, at or before it; close to the target, where
   * that grid is too coarse, so many yards or metres before it; so is one that was planned to the
   * yard or metre.
   *
   * @param before the text that says so, with a hole for the distance
   */
  public String placeTo(double atM, double targetM, String before) {
    return spelt(grid.placeTo(atM, targetM), before);
  }

  /** The same, with a few words for what it is so far to. */
  public String placeTo(double atM, Target target) {
    return placeTo(atM, target.atM(), target.isStop() ? "where.to-mark" : "where.to-board");
  }

  /** A printed place on the way to a target. */
  public String place(PrintedPlace place, PrintedTarget target) {
    return spelt(place, target.isStop() ? "where.to-mark" : "where.to-board");
  }

  /**
   * A printed place.
   *
   * @param before the text for one before a target, with a hole for the distance
   */
  public String spelt(PrintedPlace place, String before) {
    return place.match(grid::text, grid::text, near -> text(before, near.ahead().text()));
  }

  /** A speed with its unit, rounded down, from metres a second. */
  public String speed(double mps) {
    return grid.speed(mps).text();
  }

  /** A speed that a train may have at the worst. */
  public String speedAtMost(double mps) {
    return grid.speedAtMost(mps).text();
  }

  /** The same without the unit. */
  public String number(double mps) {
    return Long.toString(grid.speed(mps).number());
  }

  /** The number of a speed that a train may have at the worst. */
  public String numberAtMost(double mps) {
    return Long.toString(grid.speedAtMost(mps).number());
  }

  /** A speed in the unit of the route, not rounded. */
  public double speedValue(double mps) {
    return mps / units().speedUnitMps();
  }

  /** A length that must not be overstated, with its unit, from metres. */
  public String room(double metres) {
    return grid.room(metres).text();
  }

  /** A length that must not be understated, with its unit, from metres. */
  public String overrun(double metres) {
    return grid.lengthUp(metres).text();
  }

  /** How far apart two cues are: yards and chains, or metres and kilometres. */
  public String apart(double metres) {
    return grid.apart(metres);
  }

  /** A time in whole seconds. */
  public String seconds(double seconds) {
    return time(grid.time(seconds));
  }

  /** A printed time. */
  public String time(PrintedTime time) {
    return text("time.seconds", time.seconds());
  }

  /** A time in minutes and seconds, from seconds. */
  public String minutes(double seconds) {
    return minutes(grid.time(seconds));
  }

  /** A printed time in minutes and seconds. */
  public String minutes(PrintedTime time) {
    long whole = time.seconds();
    return text("time.minutes", whole / 60, String.format(Locale.ROOT, "%02d", whole % 60));
  }

  /** A notch as it is called: a bare number could be that of an action. */
  public String notch(String name) {
    return name.chars().allMatch(Character::isDigit) ? text("notch.numbered", name) : name;
  }

  /** A gauge pressure with its unit, from pascals. */
  public String pressure(double pascals) {
    return grid.pressure(pascals).text();
  }

  /** A gradient with its way, from per mille; rising is positive. */
  public String gradient(double permille) {
    String plain = units().gradient(new Gradient(permille));
    int cut = plain.lastIndexOf(' ');
    if (cut < 0) {
      return text("gradient.level");
    }
    return text(permille > 0 ? "gradient.rising" : "gradient.falling", plain.substring(0, cut));
  }

  /** Whether a gradient of so many per mille rises or falls; neither where it is level. */
  public String way(double permille) {
    boolean level = units().gradient(new Gradient(permille)).indexOf(' ') < 0;
    return level ? "" : text(permille > 0 ? "gradient.up" : "gradient.down");
  }

  /** The slope alone: for a chart that shows which way. */
  public String slope(double permille) {
    String plain = units().gradient(new Gradient(permille));
    int cut = plain.lastIndexOf(' ');
    return cut < 0 ? text("gradient.level.short") : plain.substring(0, cut);
  }

  /** The radius of a curve with its unit, rounded down, from metres. */
  public String radius(double metres) {
    return grid.radius(metres);
  }

  /** Left or right. */
  public String hand(Hand hand) {
    return text(hand == Hand.LEFT ? "hand.left" : "hand.right");
  }

  /** A date and hour. */
  public String moment(LocalDateTime moment) {
    return MomentStyle.MOMENT.format(moment);
  }

  /** A brake as it is asked for: in full service, or the emergency application. */
  public String called(BrakeSystem brake) {
    return called(Telling.brake(brake));
  }

  /** The same of a printed one. */
  public String called(PrintedBrake brake) {
    return brake.kind() == PrintedBrake.Kind.EMERGENCY
        ? brake.called()
        : text("brake.full-service", brake.called());
  }

  /** What sets a permissible speed; causes that the computation names itself have words here. */
  String cause(String cause) {
    String key = "cause." + cause.toLowerCase(Locale.ROOT);
    return messages.has(key) ? text(key) : cause;
  }

  /** A text, or the dash of an empty cell. */
  public String orDash(String text) {
    return text.isBlank() ? text("dash") : text;
  }
}
