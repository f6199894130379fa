package gradepost.briefing;

import java.util.List;

/**
 * A line of the route story: everything that is met at one place.
 *
 * @param seconds of running from the cue before; empty text at the first
 * @param what what is there
 * @param todo what to do there
 * @param heading a station or the like that divides the story
 * @param changed since the issue before
 */
public record Cue(
    String place,
    String seconds,
    String speed,
    List<String> what,
    List<String> todo,
    boolean heading,
    boolean changed) {

  /** A cue as in the issue before. */
  public Cue(
      String place,
      String seconds,
      String speed,
      List<String> what,
      List<String> todo,
      boolean heading) {
    this(place, seconds, speed, what, todo, heading, false);
  }

  public Cue {
    what = List.copyOf(what);
    todo = List.copyOf(todo);
  }

  /** The same cue, marked. */
  public Cue marked(boolean differs) {
    return new Cue(place, seconds, speed, what, todo, heading, differs);
  }
}
