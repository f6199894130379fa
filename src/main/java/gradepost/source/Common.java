package gradepost.source;

import gradepost.units.Length;
import gradepost.units.QuantityKind;
import gradepost.units.Speed;
import java.util.function.BiConsumer;

/** Keys and values that many tables share. */
final class Common {
  static Key<String> name(String description) {
    return Key.required("name", text("a name"), description);
  }

  /** A name, or words that have to stand on one line. */
  static Scalar<String> text(String allowed) {
    return new Scalar.Text(allowed, false);
  }

  /** Sentences, which may be typed on several lines. */
  static Scalar<String> prose(String allowed) {
    return new Scalar.Text(allowed, true);
  }

  static Scalar.Quantity<Speed> speed(String least, String most) {
    return Scalar.Quantity.of(QuantityKind.SPEED, least, most);
  }

  static Scalar.Quantity<Length> length(String least, String most) {
    return Scalar.Quantity.of(QuantityKind.LENGTH, least, most);
  }

  /** The value of a check between two keys, when both were read. */
  static <A, B> void whenBoth(Values v, Key<A> first, Key<B> second, BiConsumer<A, B> check) {
    v.find(first).ifPresent(a -> v.find(second).ifPresent(b -> check.accept(a, b)));
  }

  private Common() {}
}
