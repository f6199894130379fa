package gradepost.reissue.register;

import gradepost.units.PrintedText;
import java.util.Optional;

/** What may be entered as the name of a person or place, or as other words that papers print. */
public final class Names {
  private static final int LONGEST = 200;

  /**
   * Why these words cannot be entered, and what can, as the whole of a message; empty where they
   * can.
   *
   * @param what the words are, such as "the person's name"
   * @param maybe what may help where a character cannot be printed
   */
  public static Optional<String> obstacle(String what, String given, String maybe) {
    if (given.codePoints().noneMatch(Character::isLetterOrDigit)) {
      return Optional.of(what + " is blank; allowed: at least one letter or figure");
    }
    if (given.length() > LONGEST) {
      return Optional.of(
          "%s has %d characters; allowed: up to %d".formatted(what, given.length(), LONGEST));
    }
    String shown = PrintedText.seen(given);
    return PrintedText.obstacle(given)
        .map(
            why ->
                "%s \"%s\" %s; allowed: %s, on one line\n  Maybe %s"
                    .formatted(
                        what,
                        shown,
                        why.inWords(),
                        PrintedText.allowed(),
                        PrintedText.meant(given).orElse(maybe)));
  }

  /** Refuses words that the papers could not print. */
  static void require(String what, String given, String maybe) throws RegisterException {
    Optional<String> obstacle = obstacle(what, given, maybe);
    if (obstacle.isPresent()) {
      throw new RegisterException(obstacle.get());
    }
  }

  /** A name as its bearer writes it, in any script, for the log alone: seen, and on one line. */
  static void requireWritten(String written) throws RegisterException {
    if (written.isBlank()
        || written.length() > LONGEST
        || !PrintedText.seen(written).equals(written)) {
      throw new RegisterException(
          "the name as written, \"%s\", is blank, longer than %d characters, or has invisible characters or line breaks; allowed: letters of any script on one line"
              .formatted(PrintedText.seen(written), LONGEST));
    }
  }

  /** What a paper prints of words that an old register holds; the same where it can print them. */
  public static String printed(String held) {
    if (held.codePoints().noneMatch(Character::isLetterOrDigit)) {
      return "(blank in the register)";
    }
    return PrintedText.obstacle(held).isEmpty()
        ? held
        : PrintedText.coded(held) + " (cannot be printed as it is in the register)";
  }

  private Names() {}
}
