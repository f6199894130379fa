package gradepost.desk;

import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.HttpStatus;
import io.javalin.http.SameSite;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntSupplier;

/**
 * Lets in whoever has the key that was printed at the start, and nobody else: other users of the
 * same machine, other sites in the same browser, names of others that lead here.
 *
 * <p>The key is exchanged once for a cookie that scripts cannot read and other sites cannot send.
 */
final class Gate {
  /** Where the key is handed in. */
  static final String ENTER = "/enter";

  /** What a page may load and do: all of it from here, no script and no style within the page. */
  private static final String OWN_PAGES =
      "default-src 'none'; style-src 'self'; script-src 'self'; connect-src 'self';"
          + " img-src 'self' data:; frame-src 'self'; form-action 'self'; base-uri 'none';"
          + " frame-ancestors 'none'";

  /** Papers carry their style within; scripts they have none. */
  private static final String PAPERS =
      "default-src 'none'; style-src 'unsafe-inline'; img-src data:; font-src data:;"
          + " base-uri 'none'; form-action 'none'; frame-ancestors 'self'";

  private static final String COOKIE = "gradepost";
  private static final String SESSION = "session";
  private static final int BYTES = 32;

  /** So many browsers at once; the one that was away longest has to come by the key again. */
  private static final int SESSIONS = 1000;

  private static final Set<String> CHANGING = Set.of("POST", "PUT", "PATCH", "DELETE");
  private static final Set<String> KNOWN = Set.of("GET", "HEAD", "POST");

  private final SecureRandom random = new SecureRandom();
  private final String key = secret();
  private final IntSupplier port;
  private final Map<String, Session> sessions =
      new LinkedHashMap<>(16, 0.75f, true) {
        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Session> eldest) {
          return size() > SESSIONS;
        }
      };

  /**
   * One browser that was let in.
   *
   * @param token stands in every form that changes something
   */
  record Session(String token) {}

  /**
   * @param port on which the server listens, known once it does
   */
  Gate(IntSupplier port) {
    this.port = port;
  }

  /** The address that lets in. */
  String address() {
    return "http://127.0.0.1:%d%s?key=%s".formatted(port.getAsInt(), ENTER, key);
  }

  /** Comes before everything else. */
  void check(Context ctx) {
    headers(ctx, OWN_PAGES);
    if (!isOurs(Optional.ofNullable(ctx.header("Host")))) {
      throw new Refused(HttpStatus.MISDIRECTED_REQUEST, DeskText.HOST);
    }
    if (ctx.path().equals(ENTER) || DeskServer.isOpen(ctx.path())) {
      return;
    }
    Session session =
        session(ctx).orElseThrow(() -> new Refused(HttpStatus.FORBIDDEN, DeskText.KEY));
    ctx.attribute(SESSION, session);
    if (CHANGING.contains(ctx.method().name()) && !isFromHere(ctx, session)) {
      throw new Refused(HttpStatus.FORBIDDEN, DeskText.FORM);
    }
    if (!KNOWN.contains(ctx.method().name())) {
      throw new Refused(HttpStatus.METHOD_NOT_ALLOWED, DeskText.FORM);
    }
  }

  /** Takes the key, and gives a session that nobody knew before. */
  void enter(Context ctx) {
    if (!same(key, Optional.ofNullable(ctx.queryParam("key")).orElse(""))) {
      throw new Refused(HttpStatus.FORBIDDEN, DeskText.KEY);
    }
    String name = secret();
    synchronized (sessions) {
      sessions.put(name, new Session(secret()));
    }
    Cookie cookie = new Cookie(COOKIE, name);
    cookie.setHttpOnly(true);
    cookie.setSameSite(SameSite.STRICT);
    cookie.setPath("/");
    ctx.cookie(cookie);
    // Not by a redirect: a browser that came from another site would not send the cookie along.
    ctx.header("Refresh", "0; url=/");
  }

  /** The session of a request that was let in. */
  static Session of(Context ctx) {
    return Objects.requireNonNull(ctx.<Session>attribute(SESSION));
  }

  /** For a paper, which has its style within. */
  static void paper(Context ctx) {
    headers(ctx, PAPERS);
  }

  private static void headers(Context ctx, String policy) {
    ctx.header("Content-Security-Policy", policy);
    ctx.header("X-Content-Type-Options", "nosniff");
    ctx.header("Referrer-Policy", "no-referrer");
    ctx.header("Cross-Origin-Opener-Policy", "same-origin");
    ctx.header("Cross-Origin-Resource-Policy", "same-origin");
    ctx.header("Cache-Control", "no-store");
  }

  private Optional<Session> session(Context ctx) {
    Optional<String> name = Optional.ofNullable(ctx.cookie(COOKIE));
    synchronized (sessions) {
      return name.flatMap(n -> Optional.ofNullable(sessions.get(n)));
    }
  }

  /** The token of the session, and no sign that the form stood on another site. */
  private boolean isFromHere(Context ctx, Session session) {
    String site = Optional.ofNullable(ctx.header("Sec-Fetch-Site")).orElse("same-origin");
    Optional<String> origin = Optional.ofNullable(ctx.header("Origin"));
    boolean own =
        origin
            .map(o -> o.startsWith("http://") && isOurs(Optional.of(o.substring(7))))
            .orElse(true);
    String token =
        Optional.ofNullable(ctx.header("X-Form-Token"))
            .or(() -> Optional.ofNullable(ctx.formParam("token")))
            .orElse("");
    return site.equals("same-origin") && own && same(session.token(), token);
  }

  /** A name of others may lead to this machine: the browser then tells that name. */
  private boolean isOurs(Optional<String> host) {
    int on = port.getAsInt();
    Set<String> names = Set.of("127.0.0.1:" + on, "localhost:" + on, "[::1]:" + on);
    return host.filter(h -> names.contains(h.toLowerCase(Locale.ROOT))).isPresent();
  }

  private static boolean same(String one, String other) {
    return MessageDigest.isEqual(
        one.getBytes(StandardCharsets.UTF_8), other.getBytes(StandardCharsets.UTF_8));
  }

  private String secret() {
    byte[] bytes = new byte[BYTES];
    random.nextBytes(bytes);
    return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
  }
}
