package gradepost.reissue.register;

import gradepost.text.Mistake;
import gradepost.units.PrintedText;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What may be entered as the name of a person or place, or as other words that papers print. */
public final class Names {
  private static final int LONGEST = 200;
  private static final Pattern COPY_NUMBER = Pattern.compile("[1-9]\\d{0,8}");
  private static final Pattern SCORE = Pattern.compile("(\\d{1,4}) of (\\d{1,4})");

  /** What is entered. */
  public enum Entered {
    /** A remark of a few words. */
    REMARK(RegisterText.REMARK, RegisterText.REASON_HELP),
    /** The person at work. */
    BY(RegisterText.BY, RegisterText.BY_HELP),
    /** The same, as the option is typed. */
    BY_OPTION(RegisterText.BY_OPTION, RegisterText.BY_HELP),
    /** The number of a copy. */
    COPY(RegisterText.COPY, RegisterText.COPY_HELP),
    /** Who has a copy. */
    HOLDER(RegisterText.HOLDER, RegisterText.LATIN_BESIDE_HELP),
    /** Who signed. */
    PERSON(RegisterText.PERSON, RegisterText.LATIN_BESIDE_HELP),
    /** A name as the papers print it. */
    LATIN(RegisterText.LATIN, RegisterText.LATIN_HELP),
    /** Who signed a driver off. */
    ASSESSOR(RegisterText.ASSESSOR, RegisterText.LATIN_HELP),
    /** Who checked the data of an issue. */
    CHECKER(RegisterText.CHECKER, RegisterText.LATIN_HELP),
    /** Why an issue is recalled, or an entry taken back. */
    REASON(RegisterText.REASON, RegisterText.REASON_HELP);

    private final String noun;
    private final String help;

    Entered(String noun, String help) {
      this.noun = noun;
      this.help = help;
    }
  }

  /** Why these words cannot be entered, and what can; empty where they can. */
  public static Optional<Mistake> obstacle(Entered what, String given) {
    if (given.codePoints().noneMatch(Character::isLetterOrDigit)) {
      return Optional.of(RegisterText.BLANK.with(what.noun));
    }
    if (given.length() > LONGEST) {
      return Optional.of(RegisterText.TOO_LONG.with(what.noun, given.length(), LONGEST));
    }
    return PrintedText.obstacle(given)
        .map(
            why ->
                RegisterText.NOT_PRINTABLE.with(
                    what.noun, given, why, PrintedText.meant(given).orElse(what.help)));
  }

  /** Refuses words that the papers could not print. */
  static void require(Entered what, String given) throws RegisterException {
    Optional<Mistake> obstacle = obstacle(what, given);
    if (obstacle.isPresent()) {
      throw new RegisterException(obstacle.get());
    }
  }

  /** The number of a copy, as it is counted on from: one copy has one number only. */
  static void requireCopy(String given) throws RegisterException {
    require(Entered.COPY, given);
    if (!COPY_NUMBER.matcher(given).matches()) {
      throw new RegisterException(RegisterText.COPY_NUMBER.with(given));
    }
  }

  /** So many right answers of so many; empty where it was not given. */
  static void requireScore(String given) throws RegisterException {
    Matcher score = SCORE.matcher(given);
    if (!given.isEmpty()
        && !(score.matches()
            && Integer.parseInt(score.group(2)) > 0
            && Integer.parseInt(score.group(1)) <= Integer.parseInt(score.group(2)))) {
      throw new RegisterException(RegisterText.SCORE.with(given));
    }
  }

  /** A name as its bearer writes it, in any script, for the log alone: seen, and on one line. */
  static void requireWritten(String written) throws RegisterException {
    if (written.isBlank()
        || written.length() > LONGEST
        || !PrintedText.seen(written).equals(written)) {
      throw new RegisterException(RegisterText.NOT_WRITABLE.with(written, LONGEST));
    }
  }

  /** What a paper prints of words that an old register holds; the same where it can print them. */
  public static String printed(String held) {
    if (held.codePoints().noneMatch(Character::isLetterOrDigit)) {
      return RegisterText.PRINTED_BLANK;
    }
    return PrintedText.obstacle(held).isEmpty() ? held : RegisterText.PRINTED_CODED.of(held);
  }

  private Names() {}
}
