package gradepost.units;

import gradepost.units.Notation.Result.Is;
import gradepost.units.Notation.Result.IsNot;
import gradepost.units.Parsed.Convention;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A lineside mileage: "3m 24ch", "3m 24.5ch", "12.460 km". */
record MileageNotation() implements Notation {
  private static final Pattern MILES =
      Pattern.compile("(\\d{1,5}) ?m ?(\\d{1,5}(?:\\.\\d{1,9})?) ?ch");
  private static final Pattern KILOMETRES = Pattern.compile("(\\d{1,6}(?:\\.\\d{1,9})?) ?km");
  private static final Pattern DOTTED = Pattern.compile("(\\d{1,5})\\.(\\d\\d)\\d*");
  private static final Pattern MILES_ONLY = Pattern.compile("(\\d{1,5}) ?(?:m|mi|miles?)");
  private static final Pattern CHAINS_ONLY = Pattern.compile("(\\d{1,2}(?:\\.\\d+)?) ?ch");
  private static final Pattern METRES = Pattern.compile("(\\d{3,7}) ?m");
  private static final Pattern LOOSE =
      Pattern.compile(
          "(\\d{1,5}) ?(?:m|mi|miles?|ml)\\.?,? ?(\\d{1,2}(?:\\.\\d+)?) ?(?:ch?|chs|chains?|c)?\\.?",
          Pattern.CASE_INSENSITIVE);

  @Override
  public String examples() {
    return "3m 24ch or 12.460 km";
  }

  @Override
  public String pattern() {
    return "^\\s*(\\d+\\s*m\\s*\\d+(\\.\\d+)?\\s*ch|\\d+(\\.\\d+)?\\s*km)\\s*$";
  }

  @Override
  public List<String> symbols() {
    return List.of("ch", "km");
  }

  @Override
  public Result read(String plain) {
    Matcher miles = MILES.matcher(plain);
    if (miles.matches()) {
      return milesChains(Integer.parseInt(miles.group(1)), Double.parseDouble(miles.group(2)));
    }
    Matcher kilometres = KILOMETRES.matcher(plain);
    if (kilometres.matches()) {
      return new Is(Double.parseDouble(kilometres.group(1)) * 1000, Convention.METRIC);
    }
    if (plain.startsWith("-") || plain.startsWith("+")) {
      return new IsNot(UnitMistakes.SIGN::with);
    }
    return Typed.isNumber(plain)
        ? new IsNot(UnitMistakes.NO_UNIT::with, ofNumber(plain))
        : new IsNot(UnitMistakes.NO_MILEAGE::with, meant(plain));
  }

  private static Result milesChains(int miles, double chains) {
    if (chains >= 80) {
      int carried = miles + (int) (chains / 80);
      return new IsNot(UnitMistakes.CHAINS_OF_A_MILE::with, text(carried, chains % 80));
    }
    return new Is(miles * Exact.MILE_M + chains * Exact.CHAIN_M, Convention.MILES);
  }

  private static String text(int miles, double chains) {
    String whole =
        chains == Math.rint(chains)
            ? String.format(Locale.ROOT, "%02d", (int) chains)
            : Typed.number(chains);
    return miles + "m " + whole + "ch";
  }

  /** A number without its unit: miles and chains with a point between them, or kilometres. */
  private static List<String> ofNumber(String plain) {
    String metric = plain + " km";
    Matcher dotted = DOTTED.matcher(plain);
    if (dotted.matches()) {
      int chains = Integer.parseInt(dotted.group(2));
      return chains < 80
          ? List.of(text(Integer.parseInt(dotted.group(1)), chains), metric)
          : List.of(metric);
    }
    return plain.matches("\\d{1,5}")
        ? List.of(text(Integer.parseInt(plain), 0), metric)
        : List.of(metric);
  }

  private Optional<String> meant(String plain) {
    Matcher metres = METRES.matcher(plain);
    if (metres.matches()) {
      double km = Double.parseDouble(metres.group(1)) / 1000;
      return Optional.of(String.format(Locale.ROOT, "%.3f km", km));
    }
    Matcher onlyMiles = MILES_ONLY.matcher(plain);
    if (onlyMiles.matches()) {
      return Optional.of(text(Integer.parseInt(onlyMiles.group(1)), 0));
    }
    Matcher onlyChains = CHAINS_ONLY.matcher(plain);
    if (onlyChains.matches()) {
      return Optional.of(text(0, Double.parseDouble(onlyChains.group(1))));
    }
    Matcher loose = LOOSE.matcher(plain);
    if (loose.matches()) {
      return Optional.of(
          text(Integer.parseInt(loose.group(1)), Double.parseDouble(loose.group(2))));
    }
    String lower = Typed.withPoint(plain).toLowerCase(Locale.ROOT);
    return Optional.of(lower).filter(l -> !l.equals(plain) && read(l).isUnderstood());
  }
}
