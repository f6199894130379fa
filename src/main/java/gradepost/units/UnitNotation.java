package gradepost.units;

import gradepost.units.Notation.Result.Is;
import gradepost.units.Notation.Result.IsNot;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * A number and its unit, "40 mph"; where {@code compound}, also "64 ft 6 in".
 *
 * @param units the first of each convention is the one suggested for a bare number
 */
record UnitNotation(List<Unit> units, boolean compound, String examples) implements Notation {
  private static final Pattern FORM =
      Pattern.compile("([+-]?\\d{1,15}(?:\\.\\d{1,15})?) ?(\\D.*)?");
  private static final Pattern TWO_TERMS =
      Pattern.compile("(\\d{1,15}) ?(\\D+?) ?(\\d{1,15}(?:\\.\\d{1,15})?) ?(\\D+)");

  UnitNotation {
    units = List.copyOf(units);
  }

  @Override
  public String pattern() {
    String unit =
        units.stream()
            .map(
                u ->
                    u.symbol()
                        .replaceAll("([(){}.^$|*+?/\\[\\]])", "\\\\$1")
                        .replace("2", "[2\u00b2]"))
            .collect(Collectors.joining("|", "(", ")"));
    String term = "\\d+(\\.\\d+)?\\s*" + unit;
    return "^\\s*" + term + (compound ? "(\\s*" + term + ")?" : "") + "\\s*$";
  }

  @Override
  public List<String> symbols() {
    return units.stream().map(Unit::symbol).toList();
  }

  @Override
  public Result read(String plain) {
    Matcher form = FORM.matcher(plain);
    String point = Typed.withPoint(plain);
    if (!point.equals(plain) && read(point).isUnderstood()) {
      return new IsNot(UnitMistakes.DECIMAL_COMMA::with, point);
    }
    if (!form.matches()) {
      return new IsNot(UnitMistakes.NO_NUMBER::with);
    }
    double number = Double.parseDouble(form.group(1));
    if (form.group(2) == null) {
      return new IsNot(UnitMistakes.NO_UNIT::with, bareSuggestion(form.group(1)));
    }
    String written = form.group(2).strip();
    Optional<Unit> unit = named(written);
    if (unit.isEmpty()) {
      return compound
          ? readTwoTerms(plain, form.group(1), written)
          : unknown(form.group(1), written);
    }
    if (number < 0) {
      return new IsNot(UnitMistakes.NEGATIVE::with, plain.substring(1));
    }
    return new Is(number * unit.get().si(), unit.get().convention());
  }

  private Result readTwoTerms(String plain, String number, String written) {
    Matcher terms = TWO_TERMS.matcher(plain);
    if (!terms.matches()) {
      return unknown(number, written);
    }
    Optional<Unit> first = named(terms.group(2).strip());
    Optional<Unit> second = named(terms.group(4).strip());
    if (first.isEmpty() || second.isEmpty()) {
      return unknown(number, written);
    }
    double large = first.get().si();
    double small = Double.parseDouble(terms.group(3)) * second.get().si();
    if (small >= large) {
      Unit whole = first.get();
      return new IsNot(
          (key, text, allowed, meant) ->
              UnitMistakes.SECOND_PART_TOO_LARGE.with(key, text, whole, allowed, meant));
    }
    return new Is(Double.parseDouble(terms.group(1)) * large + small, first.get().convention());
  }

  private Result unknown(String number, String written) {
    return new IsNot(
        (key, text, allowed, meant) ->
            UnitMistakes.UNKNOWN_UNIT.with(key, text, written, allowed, meant),
        meant(written).map(u -> number + " " + u.symbol()));
  }

  private Optional<Unit> named(String written) {
    return units.stream().filter(u -> u.symbol().equals(written)).findFirst();
  }

  private Optional<Unit> meant(String written) {
    String folded = written.toLowerCase(Locale.ROOT).replace(".", "");
    Optional<Unit> same =
        units.stream()
            .filter(
                u ->
                    u.symbol().toLowerCase(Locale.ROOT).equals(folded)
                        || u.alsoMeant().contains(folded))
            .findFirst();
    return same.isPresent() ? same : Nearest.to(written, symbols()).flatMap(this::named);
  }

  private List<String> bareSuggestion(String number) {
    List<String> offers = new ArrayList<>();
    for (Parsed.Convention convention : Parsed.Convention.values()) {
      units.stream()
          .filter(u -> u.convention() == convention)
          .findFirst()
          .filter(u -> convention != Parsed.Convention.NEUTRAL || offers.isEmpty())
          .ifPresent(u -> offers.add(number + " " + u.symbol()));
    }
    return offers;
  }
}
