package gradepost.briefing;

/**
 * A thing by the line and its picture, as it is printed.
 *
 * @param name as the paper names it
 * @param data the picture as a data address
 * @param widthMm how wide it is printed
 * @param heightMm how high; zero where the sheet has no room for it
 */
public record Shown(String name, String data, int widthMm, int heightMm) {
  /** Whether it stands on paper too, not on the screen alone. */
  public boolean onPaper() {
    return heightMm > 0;
  }
}
