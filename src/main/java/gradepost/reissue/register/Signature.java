package gradepost.reissue.register;

import java.time.LocalDate;

/**
 * A driver is signed off: each direction and each formation by itself.
 *
 * @param person the driver
 * @param formation empty where the pack has one only, and where nobody said
 * @param assessor who signed; another person
 * @param lapses the day on which it lapses
 * @param score of the knowledge paper, as it was marked; empty where it was not given
 * @param paper the number of the paper, by which its questions can be drawn again; likewise
 * @param conditions in which the assessed ride was made: day or night, weather, rail; likewise
 */
public record Signature(
    String person,
    String direction,
    String formation,
    String assessor,
    LocalDate lapses,
    String score,
    String paper,
    String conditions) {
  /** One of which nothing else is known. */
  public Signature(String person, String direction, String assessor, LocalDate lapses) {
    this(person, direction, "", assessor, lapses, "", "", "");
  }

  /** The same, the driver's name as the papers print it. */
  public Signature by(String name) {
    return new Signature(name, direction, formation, assessor, lapses, score, paper, conditions);
  }

  /** What is covered, in a few words. */
  public String covers() {
    return formation.isEmpty() ? direction : direction + ", " + formation;
  }
}
