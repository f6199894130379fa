package gradepost.units;

import gradepost.text.Allowed;
import gradepost.text.Mistake;
import gradepost.units.Parsed.Convention;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** How one kind of quantity is written. Every notation yields SI. */
sealed interface Notation permits UnitNotation, MileageNotation, GradientNotation {

  /** Reads a text that {@link Typed#plain} has been over. */
  Result read(String plain);

  /** What is written, with examples: "such as 40 mph or 64 km/h". */
  String examples();

  /** A regular expression (ECMA 262) that every text which can be read matches. */
  String pattern();

  /** Every symbol that may follow a number. */
  List<String> symbols();

  /** Why a text was not understood. */
  interface Why {
    /** The mistake in words: of a key, the text behind it, what is allowed and what was meant. */
    Mistake with(String key, String text, Allowed allowed, Collection<String> meant);
  }

  /** What came of it. */
  sealed interface Result {
    /** One answer for each case. */
    <T> T match(Function<Is, T> is, Function<IsNot, T> not);

    /** Whether it was understood. */
    default boolean isUnderstood() {
      return match(is -> true, not -> false);
    }

    /** Understood. */
    record Is(double si, Convention convention) implements Result {
      @Override
      public <T> T match(Function<Is, T> is, Function<IsNot, T> not) {
        return is.apply(this);
      }
    }

    /** Not understood, with the reason and every text that may have been meant. */
    record IsNot(Why why, List<String> meant) implements Result {
      public IsNot {
        meant = List.copyOf(meant);
      }

      IsNot(Why why, String... meant) {
        this(why, List.of(meant));
      }

      IsNot(Why why, Optional<String> meant) {
        this(why, meant.stream().toList());
      }

      @Override
      public <T> T match(Function<Is, T> is, Function<IsNot, T> not) {
        return not.apply(this);
      }
    }
  }
}
