package gradepost.units;

import gradepost.units.Parsed.Convention;
import java.util.List;

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

  /** What came of it. */
  sealed interface Result {
    /** Understood. */
    record Is(double si, Convention convention) implements Result {}

    /** Not understood, with the reason and what may have been meant. */
    record IsNot(String why, String maybe) implements Result {}
  }
}
