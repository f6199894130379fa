package gradepost.app.account;

import com.password4j.Argon2Function;
import com.password4j.Password;
import com.password4j.types.Argon2;
import gradepost.text.Mistake;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.text.Normalizer;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import java.util.function.Supplier;

/**
 * Passwords: which are taken, and how they are kept. The rules are those of NIST SP 800-63B-4
 * (2025), section 3.1.1, for a password that is the only factor: fifteen characters at least, any
 * characters, none required, no expiry, and none that is guessed first. They are kept by Argon2id
 * (RFC 9106) with 19 MiB, two passes and one lane.
 */
public final class Passwords {
  /** The fewest characters. */
  public static final int SHORTEST = 15;

  /** The most characters: far above the 64 that have to be taken. */
  public static final int LONGEST = 256;

  /** What has to be left when the commonest words are taken out. */
  private static final int LEFT = 6;

  /** The fewest different characters of those that are left. */
  private static final int DIFFERENT = 5;

  private static final Argon2Function HASH =
      Argon2Function.getInstance(19_456, 2, 1, 32, Argon2.ID);

  /** Each takes 19 MiB while it lasts: so many at once, the others wait. */
  private static final Semaphore AT_ONCE = new Semaphore(2, true);

  /** Letters and figures that nobody takes for another. */
  private static final String LETTERS = "abcdefghjkmnpqrstuvwxyz23456789";

  private static final SecureRandom RANDOM = new SecureRandom();
  private static final List<String> COMMON = common();

  /** Compared with where there is no such account, so that the answer takes as long. */
  private static final String NOBODY = hash("nobody has this password");

  /** A password that was never used: four groups of five characters, some 99 bits. */
  public static String made() {
    StringBuilder out = new StringBuilder();
    for (int i = 0; i < 20; i++) {
      if (i > 0 && i % 5 == 0) {
        out.append('-');
      }
      out.append(LETTERS.charAt(RANDOM.nextInt(LETTERS.length())));
    }
    return out.toString();
  }

  /**
   * Why a password is not taken; empty where it is.
   *
   * @param name of whoever is to have it
   */
  public static Optional<Mistake> obstacle(String name, String password) {
    int length = password.codePointCount(0, password.length());
    if (length < SHORTEST || length > LONGEST) {
      return Optional.of(AccountText.LENGTH.with(length, SHORTEST, LONGEST));
    }
    String left = folded(password);
    for (String part : name.split("[^\\p{L}\\p{N}]+", -1)) {
      if (part.length() > 2) {
        left = left.replace(folded(part), "");
      }
    }
    for (String word : COMMON) {
      left = left.replace(word, "");
    }
    return left.codePointCount(0, left.length()) < LEFT
            || left.chars().distinct().count() < DIFFERENT
        ? Optional.of(AccountText.GUESSED)
        : Optional.empty();
  }

  /** What is kept of a password. */
  static String hash(String password) {
    return alone(() -> Password.hash(normal(password)).addRandomSalt(16).with(HASH).getResult());
  }

  /** Whether a password is the one that was kept. */
  static boolean is(String password, String hash) {
    return alone(
        () ->
            Password.check(normal(password), hash).with(Argon2Function.getInstanceFromHash(hash)));
  }

  /** Takes as long as the answer for an account that is there. */
  static void isNobodys(String password) {
    is(password, NOBODY);
  }

  private static <T> T alone(Supplier<T> work) {
    AT_ONCE.acquireUninterruptibly();
    try {
      return work.get();
    } finally {
      AT_ONCE.release();
    }
  }

  /** The same letters may be typed in more than one way. */
  private static String normal(String password) {
    return Normalizer.normalize(password, Normalizer.Form.NFC);
  }

  private static String folded(String text) {
    return normal(text).toLowerCase(Locale.ROOT).replaceAll("[\\s\\p{P}\\p{S}]", "");
  }

  /** The longest first, so that what is part of another does not break it. */
  private static List<String> common() {
    try (InputStream in =
            Objects.requireNonNull(Passwords.class.getResourceAsStream("common-passwords.txt"));
        BufferedReader lines =
            new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
      return lines
          .lines()
          .filter(line -> !line.startsWith("#"))
          .map(String::strip)
          .filter(line -> !line.isEmpty())
          .sorted(Comparator.comparing(String::length).reversed())
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private Passwords() {}
}
