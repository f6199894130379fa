package gradepost.yaml;

import java.util.List;

/**
 * A text that only some tables know; whoever brings it says how it is read, and has to say how its
 * schema looks.
 */
public non-sealed interface OwnText<T> extends Scalar<T> {

  /** Regular expressions (ECMA 262) of which every text that can be read matches one. */
  List<String> patterns();

  @Override
  default <R> R matchText(Texts<R> texts) {
    return texts.own(this);
  }
}
