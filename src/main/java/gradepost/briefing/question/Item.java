package gradepost.briefing.question;

import gradepost.drive.Subject;
import java.util.List;

/**
 * Something that can be asked.
 *
 * @param of what it is asked of, by name: a station, a signal, an approach; may be empty text
 * @param atM the place that is asked about, distance run in metres; NaN where it has none
 * @param right the one right answer
 * @param near wrong answers, the nearest first; three at least
 * @param taught where the briefing teaches it
 */
public record Item(
    Subject subject,
    String of,
    double atM,
    String ask,
    String right,
    List<String> near,
    Reference taught) {

  /** A sheet of the briefing: the anchor of its heading, and what to look at there. */
  public record Reference(String anchor, String what) {}

  public Item {
    near = List.copyOf(near);
    if (near.size() < Near.WRONG || near.contains(right)) {
      throw new IllegalArgumentException("three wrong answers to: " + ask);
    }
  }
}
