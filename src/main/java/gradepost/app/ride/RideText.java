package gradepost.app.ride;

import gradepost.text.Hole;
import gradepost.text.Mistake;
import gradepost.text.Mistakes;
import gradepost.text.Mistakes.Three;
import gradepost.text.Mistakes.Two;
import java.util.Collection;
import java.util.Optional;

/**
 * What is said of a ride that cannot be judged. Its sentences stand in {@code mistakes.properties}.
 */
final class RideText {
  private static final Mistakes MISTAKES = Mistakes.beside(RideText.class);

  static final Mistake NO_RIDE_RULES = MISTAKES.declare("no-ride-rules");
  static final Two<Collection<String>, Collection<String>> NO_SUCH_COURSE =
      MISTAKES.declare("no-such-course", Hole.list("directions"), Hole.list("formations"));
  static final Two<Collection<String>, Collection<String>> SEVERAL_COURSES =
      MISTAKES.declare("several-courses", Hole.list("directions"), Hole.list("formations"));
  static final Three<String, String, Optional<String>> OTHER_ROAD =
      MISTAKES.declare(
          "other-road", Hole.word("direction"), Hole.word("formation"), Hole.perhaps("other"));
  static final Two<String, String> OTHER_FORMATION =
      MISTAKES.declare("other-formation", Hole.word("formation"), Hole.word("other"));
  static final Two<Integer, Integer> NO_APPROACH =
      MISTAKES.declare("no-approach", Hole.count("number"), Hole.count("last"));

  static final Mistake NO_RIDES = MISTAKES.declare("no-rides");

  private RideText() {}
}
