package gradepost.desk.entry;

import gradepost.desk.page.Session;
import gradepost.reissue.register.Account;
import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.SameSite;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/**
 * The browsers that were let in, each known by a cookie that scripts cannot read and other sites
 * cannot send. They are kept in memory: after a restart everybody comes in again.
 */
public final class Sessions {
  /** So many browsers at once; the one that was away longest has to come in again. */
  private static final int SESSIONS = 1000;

  /** Who signed in and was away for so long comes in again. */
  private static final Duration AWAY = Duration.ofHours(2);

  /** Nobody who signed in is in for longer. */
  private static final Duration LONGEST = Duration.ofHours(12);

  private static final int BYTES = 32;
  private static final SecureRandom RANDOM = new SecureRandom();
  private static final String MAC = "HmacSHA256";

  private final String cookie;
  private final String guest;
  private final boolean secure;
  private final Clock clock;
  private final byte[] guests = new byte[BYTES];
  private final Map<String, Held> sessions =
      new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Held> eldest) {
          return size() > SESSIONS;
        }
      };

  private record Held(Session session, Instant begun, Instant last) {}

  /**
   * @param secure whether cookies travel by TLS alone
   */
  public Sessions(boolean secure, Clock clock) {
    this.secure = secure;
    this.clock = clock;
    // A name with this beginning can be set by this very host alone.
    this.cookie = secure ? "__Host-gradepost" : "gradepost";
    this.guest = cookie + "-guest";
    RANDOM.nextBytes(guests);
  }

  /** The session of a request, if it has one that has not ended. */
  synchronized Optional<Session> of(Context ctx) {
    String name = Optional.ofNullable(ctx.cookie(cookie)).orElse("");
    Held held = sessions.get(name);
    if (held == null) {
      return Optional.empty();
    }
    Instant now = clock.instant();
    if (held.session().account().isPresent()
        && (held.last().plus(AWAY).isBefore(now) || held.begun().plus(LONGEST).isBefore(now))) {
      sessions.remove(name);
      return Optional.empty();
    }
    sessions.put(name, new Held(held.session(), held.begun(), now));
    return Optional.of(held.session());
  }

  /** Begins a session under a name that nobody knew before. The one that was ends. */
  synchronized void begin(Context ctx, Optional<Account> account) {
    end(ctx);
    String name = secret();
    Instant now = clock.instant();
    sessions.put(name, new Held(new Session(secret(), account), now, now));
    set(ctx, cookie, name);
  }

  /** The session of a request ends. */
  synchronized void end(Context ctx) {
    Optional.ofNullable(ctx.cookie(cookie)).ifPresent(sessions::remove);
    ctx.removeCookie(cookie, "/");
  }

  /** The token of a form for somebody who is not let in yet; one for all forms of a browser. */
  String guestToken(Context ctx) {
    String given = Optional.ofNullable(ctx.cookie(guest)).orElse("");
    if (given.matches("[\\w-]{43}")) {
      return sealed(given);
    }
    String name = secret();
    set(ctx, guest, name);
    return sealed(name);
  }

  /** Whether a form is the one that this browser was given. */
  boolean isGuests(Context ctx, String token) {
    return same(sealed(Optional.ofNullable(ctx.cookie(guest)).orElse("")), token);
  }

  private String sealed(String name) {
    try {
      Mac mac = Mac.getInstance(MAC);
      mac.init(new SecretKeySpec(guests, MAC));
      return text(mac.doFinal(name.getBytes(StandardCharsets.UTF_8)));
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException(e);
    }
  }

  private void set(Context ctx, String name, String value) {
    Cookie set = new Cookie(name, value);
    set.setHttpOnly(true);
    set.setSecure(secure);
    set.setSameSite(SameSite.STRICT);
    set.setPath("/");
    ctx.cookie(set);
  }

  static boolean same(String one, String other) {
    return MessageDigest.isEqual(
        one.getBytes(StandardCharsets.UTF_8), other.getBytes(StandardCharsets.UTF_8));
  }

  static String secret() {
    byte[] bytes = new byte[BYTES];
    RANDOM.nextBytes(bytes);
    return text(bytes);
  }

  private static String text(byte[] bytes) {
    return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
  }
}
