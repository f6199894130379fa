package gradepost.app;

import java.util.List;
import java.util.Locale;

/** What a row of a table enters in the register. */
public enum BatchAct {
  /** A copy for each row; numbered by the register where the table has no number. */
  HAND_OUT("issue person", "copy"),
  /** A copy that came back; where somebody holds only one, its number may be left out. */
  RETURN("issue person", "copy destroyed"),
  /** A slip that came back signed. */
  ACKNOWLEDGE("issue person", ""),
  /** A driver who was signed off. */
  SIGN_OFF("issue person direction assessor lapses", "formation score paper conditions"),
  /** Somebody who joins the list of staff. */
  STAFF("person", "");

  private final String needed;
  private final String more;

  BatchAct(String needed, String more) {
    this.needed = needed;
    this.more = more;
  }

  /** The columns that a table must have. */
  List<String> needed() {
    return List.of(needed.split(" "));
  }

  /** All columns that it may have. */
  List<String> columns() {
    return List.of((needed + " " + more).strip().split(" "));
  }

  /** As it is typed. */
  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
