package gradepost.yaml;

import gradepost.text.Mistake;
import gradepost.units.Parsed;
import java.util.List;

/**
 * A text that only some tables know; whoever brings it says how it is read, and has to say how its
 * schema looks.
 */
public non-sealed interface OwnText<T> extends Scalar<T> {

  /** Regular expressions (ECMA 262) of which every text that can be read matches one. */
  List<String> patterns();

  /** That a text cannot be read. */
  static <T> Parsed<T> bad(Mistake mistake) {
    return new Parsed.Bad<>(mistake.what(), mistake.allowed(), mistake.maybe());
  }

  @Override
  default <R> R matchText(Texts<R> texts) {
    return texts.own(this);
  }
}
