package gradepost.source;

import gradepost.source.route.Moment;
import gradepost.source.route.PlaceKind;
import gradepost.units.Parsed;
import gradepost.yaml.HeightText;
import gradepost.yaml.ListOf;
import gradepost.yaml.Scalar;
import gradepost.yaml.ValueType;
import gradepost.yaml.WordOr;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;

/** The least and the most that a key takes, as they would be typed. */
final class Edges {

  /** Whether the values of a kind have a least and a most, or are a few: no words, no dates. */
  static boolean bounded(ValueType<?> kind) {
    return kind instanceof Scalar.Quantity<?>
        || kind instanceof Scalar.PlainNumber
        || kind instanceof Scalar.Choice<?>
        || kind instanceof HeightText
        || kind instanceof ListOf<?>
        || kind instanceof WordOr<?>;
  }

  /** Of the kind of this value; none where the kind has no bounds. */
  static List<String> of(KeyWalk.Met met) {
    return of(met.kind(), met.typed());
  }

  private static List<String> of(ValueType<?> kind, String typed) {
    if (kind instanceof Scalar.Quantity<?> quantity) {
      return quantity.least().isEmpty() ? List.of() : quantity(quantity, typed);
    } else if (kind instanceof Scalar.PlainNumber number) {
      return List.of(plain(number.least()), plain(number.most()));
    } else if (kind instanceof Scalar.Choice<?> choice) {
      return List.copyOf(choice.words().keySet());
    } else if (kind instanceof Scalar.Text) {
      return List.of("x", "\"" + "word ".repeat(Scalar.Text.LONGEST / 5 - 1) + "\"");
    } else if (kind instanceof HeightText) {
      return List.of("-5000 m", "5000 m");
    } else if (kind instanceof Moment.Day) {
      return List.of("0001-01-01", "9999-12-31");
    } else if (kind instanceof Moment.DayAndHour) {
      return List.of("0001-01-01 00:00", "9999-12-31 23:59");
    } else if (kind instanceof Moment.OpenEnd) {
      return List.of("0001-01-01 00:00", "9999-12-31 23:59", "further notice");
    } else if (kind instanceof Moment.Hours) {
      return List.of("00:00 to 23:59", "23:59 to 00:00");
    } else if (kind instanceof WordOr<?> either) {
      List<String> all = new ArrayList<>(of(either.other(), typed));
      all.add(either.word());
      return all;
    } else if (kind instanceof ListOf<?> list && list.least() == 0) {
      return List.of("[]");
    } else if (kind instanceof PlaceKind) {
      return List.of("{section: Valley, at: 0m 10ch}", "{section: Harbour, at: 0m 60ch}");
    }
    return List.of();
  }

  /** In the unit of what is typed, rounded inwards. */
  private static <Q> List<String> quantity(Scalar.Quantity<Q> quantity, String typed) {
    if (!typed.matches("[0-9.]+ ?\\D.*")
        || !(quantity.kind().parse(typed) instanceof Parsed.Ok<Q> now)) {
      return List.of(quantity.least(), quantity.most());
    }
    String unit = typed.replaceFirst("^[0-9.]+ ?", "");
    double number = Double.parseDouble(typed.replaceFirst(" ?[^0-9.].*$", ""));
    double si = quantity.kind().si(now.value());
    if (!(number > 0) || !(si > 0)) {
      return List.of(quantity.least(), quantity.most());
    }
    double each = si / number;
    return List.of(
        in(
                quantity.kind().si(quantity.kind().require(quantity.least())) / each,
                RoundingMode.CEILING)
            + " "
            + unit,
        in(quantity.kind().si(quantity.kind().require(quantity.most())) / each, RoundingMode.FLOOR)
            + " "
            + unit);
  }

  private static String in(double value, RoundingMode mode) {
    return new BigDecimal(value + (mode == RoundingMode.CEILING ? -1e-9 : 1e-9))
        .setScale(6, mode)
        .stripTrailingZeros()
        .toPlainString();
  }

  private static String plain(double value) {
    return BigDecimal.valueOf(value).stripTrailingZeros().toPlainString();
  }

  private Edges() {}
}
