package gradepost.briefing.question;

import gradepost.briefing.compose.BriefingFacts;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/** Collects wrong answers in the order of nearness, none of them twice and none of them right. */
final class Distractors {
  static final int WRONG = 3;

  /** A wrong place differs from the right one by this many steps of the print grid. */
  private static final double LEAST_STEPS = 2;

  private final String right;
  private final Set<String> wrong = new LinkedHashSet<>();

  Distractors(String right) {
    this.right = right;
  }

  Distractors add(String text) {
    if (!text.equals(right) && !text.isBlank()) {
      wrong.add(text);
    }
    return this;
  }

  /** A place, if it can be told from the right one and is on the route. */
  Distractors place(BriefingFacts taught, double rightM, double atM) {
    double least = LEAST_STEPS * taught.units().placeStepM() - 1e-6;
    double printedM = taught.path().printedAtOrBefore(Math.max(0, atM));
    boolean apart = Math.abs(atM - rightM) >= least && Math.abs(printedM - rightM) >= least;
    return apart && atM >= 0 && atM <= taught.path().lengthM() ? add(taught.place(atM)) : this;
  }

  /**
   * Where the data has too few of its own: signals and landmarks about the right place, the nearest
   * behind it and ahead of it by turns, whose place is mistaken for it.
   */
  Distractors marksAbout(BriefingFacts taught, double rightM) {
    List<Double> marks =
        Stream.concat(
                taught.landmarks().stream().map(BriefingFacts.At::atM),
                taught.signals().stream().map(BriefingFacts.At::atM))
            .sorted(Comparator.comparingDouble(at -> Math.abs(at - rightM)))
            .toList();
    List<Double> behind = marks.stream().filter(at -> at < rightM).toList();
    List<Double> ahead = marks.stream().filter(at -> at > rightM).toList();
    for (int i = 0; i < WRONG; i++) {
      behind.stream().skip(i).limit(1).forEach(at -> place(taught, rightM, at));
      ahead.stream().skip(i).limit(1).forEach(at -> place(taught, rightM, at));
    }
    return this;
  }

  boolean enough() {
    return wrong.size() >= WRONG;
  }

  List<String> all() {
    return List.copyOf(wrong);
  }
}
