package gradepost.units;

import gradepost.text.Allowed;
import gradepost.text.Hole;
import gradepost.text.Mistakes;
import gradepost.text.Mistakes.Five;
import gradepost.text.Mistakes.Four;
import gradepost.text.Mistakes.Six;
import gradepost.text.Mistakes.Three;
import gradepost.text.Phrase;
import gradepost.units.PrintedText.Obstacle;
import java.util.Collection;

/**
 * What can be wrong with a quantity as it was typed. Its sentences stand in {@code
 * mistakes.properties}.
 */
final class UnitMistakes {
  private static final Mistakes MISTAKES = Mistakes.beside(UnitMistakes.class);
  private static final Hole<String> KEY = Hole.word("key");
  private static final Hole<String> TEXT = PrintedText.quoted("text");
  private static final Hole<Allowed> ALLOWED = Hole.allowed("allowed");
  private static final Hole<Collection<String>> NEAR = Hole.list("near", " or ");

  static final Phrase<QuantityKind<?>> QUANTITY =
      MISTAKES.phrase(
          "quantity",
          new Hole<QuantityKind<?>>("noun", QuantityKind::noun)
              .and(new Hole<>("examples", QuantityKind::examples)));

  static final String PRINTABLE = MISTAKES.phrase("printable");
  static final String LINE_BREAK = MISTAKES.phrase("line-break");
  static final Phrase<Obstacle> INVISIBLE =
      MISTAKES.phrase("invisible", new Hole<>("code", Obstacle::code));
  static final Phrase<Obstacle> NO_GLYPH =
      MISTAKES.phrase(
          "no-glyph",
          new Hole<>("character", Obstacle::character).and(new Hole<>("code", Obstacle::code)));

  static final Three<String, Allowed, Collection<String>> EMPTY =
      MISTAKES.declare("empty", KEY, ALLOWED, NEAR);
  static final Four<String, String, Allowed, Collection<String>> NO_UNIT = of("no-unit");
  static final Five<String, String, String, Allowed, Collection<String>> UNKNOWN_UNIT =
      MISTAKES.declare("unknown-unit", KEY, TEXT, PrintedText.quoted("unit"), ALLOWED, NEAR);
  static final Four<String, String, Allowed, Collection<String>> NO_NUMBER = of("no-number");
  static final Four<String, String, Allowed, Collection<String>> DECIMAL_COMMA =
      of("decimal-comma");
  static final Four<String, String, Allowed, Collection<String>> NEGATIVE = of("negative");
  static final Five<String, String, Unit, Allowed, Collection<String>> SECOND_PART_TOO_LARGE =
      MISTAKES.declare(
          "second-part-too-large", KEY, TEXT, new Hole<>("unit", Unit::symbol), ALLOWED, NEAR);
  static final Six<String, String, QuantityKind<?>, QuantityKind<?>, Allowed, Collection<String>>
      ANOTHER_KIND =
          MISTAKES.declare(
              "another-kind",
              KEY,
              TEXT,
              new Hole<>("other", QuantityKind::noun),
              new Hole<>("noun", QuantityKind::noun),
              ALLOWED,
              NEAR);
  static final Four<String, String, Allowed, Collection<String>> SIGN = of("sign");
  static final Four<String, String, Allowed, Collection<String>> NO_MILEAGE = of("no-mileage");
  static final Four<String, String, Allowed, Collection<String>> CHAINS_OF_A_MILE =
      of("chains-of-a-mile");
  static final Four<String, String, Allowed, Collection<String>> NO_GRADIENT = of("no-gradient");
  static final Four<String, String, Allowed, Collection<String>> NO_WAY = of("no-way");
  static final Four<String, String, Allowed, Collection<String>> TOO_STEEP = of("too-steep");

  private static Four<String, String, Allowed, Collection<String>> of(String key) {
    return MISTAKES.declare(key, KEY, TEXT, ALLOWED, NEAR);
  }

  private UnitMistakes() {}
}
