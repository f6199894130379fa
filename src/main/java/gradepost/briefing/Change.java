package gradepost.briefing;

/**
 * One thing that differs from the issue before.
 *
 * @param kind in a word (added, eased, moved, withdrawn)
 * @param place where, or for which page
 * @param text what it was and what it is
 * @param onSlip whether a driver signs for it; what changes no braking point is in the list alone
 */
public record Change(String kind, String place, String text, boolean onSlip) {
  public Change(String kind, String place, String text) {
    this(kind, place, text, true);
  }
}
