package gradepost.units;

import gradepost.units.Notation.Result.Is;
import gradepost.units.Notation.Result.IsNot;
import gradepost.units.Parsed.Convention;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A gradient: "1 in 80 rising", "12.5 permille falling", "1.25 % rising", "level"; SI is ‰ here.
 */
record GradientNotation() implements Notation {
  private static final String NUMBER = "(\\d{1,9}(?:\\.\\d{1,9})?)";
  private static final Pattern ONE_IN = Pattern.compile("1 in " + NUMBER + " (rising|falling)");
  private static final Pattern SLOPE = Pattern.compile(NUMBER + " ?(permille|%) (rising|falling)");
  private static final Pattern NO_WAY =
      Pattern.compile("(?:1 in " + NUMBER + "|" + NUMBER + " ?(?:permille|%))");
  private static final Pattern LOOSE =
      Pattern.compile(
          "(?:(rising|falling),? )?1 ?(?:in|:) ?" + NUMBER + ",? ?(rising|falling|up|down|r|f)?");

  @Override
  public String examples() {
    return "1 in 80 rising, 12.5 permille falling or level";
  }

  @Override
  public String pattern() {
    return "^\\s*(level|(1\\s+in\\s+\\d+(\\.\\d+)?|\\d+(\\.\\d+)?\\s*(permille|\u2030|%))"
        + "\\s+(rising|falling))\\s*$";
  }

  @Override
  public List<String> symbols() {
    return List.of("permille", "%");
  }

  @Override
  public Result read(String plain) {
    if (plain.equals("level")) {
      return new Is(0, Convention.NEUTRAL);
    }
    Matcher oneIn = ONE_IN.matcher(plain);
    if (oneIn.matches()) {
      double n = Double.parseDouble(oneIn.group(1));
      return n < 1
          ? new IsNot(UnitMistakes.TOO_STEEP::with)
          : new Is(signed(1000 / n, oneIn.group(2)), Convention.MILES);
    }
    Matcher slope = SLOPE.matcher(plain);
    if (slope.matches()) {
      double permille = Double.parseDouble(slope.group(1)) * (slope.group(2).equals("%") ? 10 : 1);
      return new Is(signed(permille, slope.group(3)), Convention.METRIC);
    }
    return isNot(plain);
  }

  private IsNot isNot(String plain) {
    if (Typed.isNumber(plain)) {
      String steep = "1 in " + plain.replaceFirst("^[+-]", "");
      return new IsNot(UnitMistakes.NO_UNIT::with, ways(steep));
    }
    String lower = plain.toLowerCase(Locale.ROOT);
    if (NO_WAY.matcher(lower).matches()) {
      return new IsNot(UnitMistakes.NO_WAY::with, ways(lower));
    }
    Matcher loose = LOOSE.matcher(lower);
    if (loose.matches()) {
      String way = loose.group(1) != null ? loose.group(1) : loose.group(3);
      String steep = "1 in " + loose.group(2);
      if (way == null) {
        return new IsNot(UnitMistakes.NO_WAY::with, ways(steep));
      }
      boolean rises = way.startsWith("r") || way.equals("up");
      return new IsNot(UnitMistakes.NO_GRADIENT::with, ways(steep).get(rises ? 0 : 1));
    }
    String respelt = Typed.withPoint(lower).replaceAll("\\b(?:per cent|percent)\\b", "%");
    boolean spelling = !respelt.equals(plain) && read(respelt).isUnderstood();
    return new IsNot(
        UnitMistakes.NO_GRADIENT::with,
        spelling ? Optional.of(respelt) : Nearest.to(plain, List.of("level")));
  }

  /** A slope that rises, and the same that falls, as they are typed. */
  private static List<String> ways(String steep) {
    return List.of(steep + " rising", steep + " falling");
  }

  private static double signed(double slope, String way) {
    return way.equals("falling") && slope != 0 ? -slope : slope;
  }
}
