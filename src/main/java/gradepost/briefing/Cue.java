package gradepost.briefing;

import java.util.List;

/**
 * A line of the route story: everything that is met at one place.
 *
 * @param seconds of running from the cue before; empty text at the first
 * @param what what is there
 * @param todo what to do there
 * @param heading a station or the like that divides the story
 */
public record Cue(
    String place,
    String fromLast,
    String seconds,
    String speed,
    List<String> what,
    List<String> todo,
    boolean heading) {

  public Cue {
    what = List.copyOf(what);
    todo = List.copyOf(todo);
  }
}
