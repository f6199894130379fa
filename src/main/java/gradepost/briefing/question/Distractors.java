package gradepost.briefing.question;

import gradepost.briefing.compose.BriefingFacts;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

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

  /** Places about the right one, for where the data has too few of its own. */
  Distractors placesAbout(BriefingFacts taught, double rightM) {
    double step = taught.units().placeStepM();
    for (double by : new double[] {-3, 3, -5, 5, -8, 8}) {
      place(taught, rightM, rightM + by * step);
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
