package gradepost.yaml;

import gradepost.units.Length;
import gradepost.units.QuantityKind;
import gradepost.units.Speed;
import java.util.function.BiConsumer;

/** Keys and values that many tables share. */
public final class Common {
  /** A name, which must be there. */
  public static Key<String> name(String description) {
    return Key.required("name", text("a name"), description);
  }

  /** A name, or words that have to stand on one line. */
  public static Scalar<String> text(String allowed) {
    return new Scalar.Text(allowed, false);
  }

  /** Sentences, which may be typed on several lines. */
  public static Scalar<String> prose(String allowed) {
    return new Scalar.Text(allowed, true);
  }

  /** A speed within bounds, which are written as in a file. */
  public static Scalar.Quantity<Speed> speed(String least, String most) {
    return Scalar.Quantity.of(QuantityKind.SPEED, least, most);
  }

  /** A length within bounds, which are written as in a file. */
  public static Scalar.Quantity<Length> length(String least, String most) {
    return Scalar.Quantity.of(QuantityKind.LENGTH, least, most);
  }

  /** The value of a check between two keys, when both were read. */
  public static <A, B> void whenBoth(
      Values v, Key<A> first, Key<B> second, BiConsumer<A, B> check) {
    v.find(first).ifPresent(a -> v.find(second).ifPresent(b -> check.accept(a, b)));
  }

  private Common() {}
}
