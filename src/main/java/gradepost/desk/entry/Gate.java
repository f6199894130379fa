package gradepost.desk.entry;

import gradepost.app.account.SignIn;
import gradepost.desk.page.DeskText;
import gradepost.desk.page.Refused;
import gradepost.desk.page.Rights;
import gradepost.desk.page.Session;
import gradepost.reissue.register.Account;
import gradepost.reissue.register.RegisterException;
import gradepost.text.Mistake;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntSupplier;

/**
 * Comes before everything else. By the key that was printed at the start, or by an account with its
 * password, and not otherwise: other users of the same machine, other sites in the same browser and
 * names of others that lead here are turned away. What a role may not do is refused here, for all
 * pages.
 */
public final class Gate {
  /** Where the key is handed in. */
  public static final String ENTER = "/enter";

  /** Where a name and its password are handed in. */
  public static final String SIGN_IN = "/sign-in";

  /** How pages look. */
  public static final String STYLE = "/desk.css";

  /** The script of pages that answer while something is typed. */
  public static final String LIVE = "/live.js";

  /** What is the same for everybody, and shown to whoever asks. */
  private static final Set<String> OPEN = Set.of(STYLE, LIVE);

  private static final String ACCOUNT = "/account";
  private static final String HOME = "/";
  private static final Set<String> CHANGING = Set.of("POST", "PUT", "PATCH", "DELETE");
  private static final Set<String> KNOWN = Set.of("GET", "HEAD", "POST");

  /** What is left to whoever has to change a first password. */
  private static final Set<String> FIRST = Set.of(ACCOUNT, "/sign-out");

  private final String key = Sessions.secret();
  private final Door door;
  private final SignIn signIn;
  private final Sessions sessions;
  private final IntSupplier port;

  /**
   * @param port on which the server listens, known once it does
   */
  public Gate(Door door, SignIn signIn, Sessions sessions, IntSupplier port) {
    this.door = door;
    this.signIn = signIn;
    this.sessions = sessions;
    this.port = port;
  }

  /** The address that lets in, or that asks for name and password. */
  public String address() {
    String at = door.address(port.getAsInt());
    return door.accounts() ? at + HOME : "%s%s?key=%s".formatted(at, ENTER, key);
  }

  /** Whether a path is the same for everybody, and shown to whoever asks. */
  public static boolean isOpen(String path) {
    return OPEN.contains(path);
  }

  /** Lets a request pass, or refuses it. */
  public void check(Context ctx) throws RegisterException {
    Headers.ownPage(ctx, door.secure());
    if (Optional.ofNullable(ctx.header("Host"))
        .filter(host -> door.isOurs(host, port.getAsInt()))
        .isEmpty()) {
      throw new Refused(HttpStatus.MISDIRECTED_REQUEST, DeskText.HOST);
    }
    if (door.behindProxy() && !Asker.cameByTls(ctx)) {
      throw new Refused(HttpStatus.FORBIDDEN, DeskText.PLAIN_PROXY);
    }
    String method = ctx.method().name();
    if (!KNOWN.contains(method)) {
      throw new Refused(HttpStatus.METHOD_NOT_ALLOWED, DeskText.FORM);
    }
    boolean changes = CHANGING.contains(method);
    if (changes && !isFromHere(ctx)) {
      throw new Refused(HttpStatus.FORBIDDEN, DeskText.FORM);
    }
    String path = ctx.path();
    if (isOpen(path) || path.equals(door.accounts() ? SIGN_IN : ENTER)) {
      return;
    }
    Optional<Session> session = sessions.of(ctx).flatMap(s -> still(s, changes, ctx));
    if (session.isEmpty()) {
      if (door.accounts() && method.equals("GET")) {
        throw new ElseWhere(SIGN_IN + SignInPage.backTo(ctx));
      }
      Mistake why = door.accounts() ? DeskText.SIGNED_OUT : DeskText.KEY;
      throw changes ? Refused.tooLate(why) : new Refused(HttpStatus.FORBIDDEN, why);
    }
    session.get().asks(ctx);
    if (changes && !Sessions.same(session.get().token(), token(ctx))) {
      throw Refused.tooLate(DeskText.FORM);
    }
    mayDo(session.get(), method, path);
  }

  private static void mayDo(Session session, String method, String path) {
    if (session.account().filter(Account::first).isPresent() && !FIRST.contains(path)) {
      throw new ElseWhere(ACCOUNT);
    }
    if (Rights.roles(method, path).isEmpty()) {
      throw new Refused(HttpStatus.NOT_FOUND, DeskText.NOTHING_THERE);
    }
    if (!Rights.may(session.roles(), method, path)) {
      if (path.equals(HOME)) {
        throw new ElseWhere("/packs");
      }
      throw new Refused(
          HttpStatus.FORBIDDEN,
          DeskText.ROLE.with(
              Rights.roles(method, path).orElse(Set.of()).stream()
                  .map(Account.Role::toString)
                  .sorted()
                  .toList()));
    }
  }

  /** The session, as long as its account is as it was when it came in. */
  private Optional<Session> still(Session session, boolean now, Context ctx) {
    if (session.account().isEmpty()) {
      return Optional.of(session);
    }
    try {
      if (signIn.still(session.account().get(), now).isPresent()) {
        return Optional.of(session);
      }
    } catch (RegisterException e) {
      throw new Refused(
          HttpStatus.SERVICE_UNAVAILABLE, DeskText.WENT_WRONG.with(String.valueOf(e.getMessage())));
    }
    sessions.end(ctx);
    return Optional.empty();
  }

  /** Takes the key, and gives a session that nobody knew before. */
  public void enter(Context ctx) {
    if (door.accounts()
        || !Sessions.same(key, Optional.ofNullable(ctx.queryParam("key")).orElse(""))) {
      throw new Refused(HttpStatus.FORBIDDEN, DeskText.KEY);
    }
    sessions.begin(ctx, Optional.empty());
    // Not by a redirect: a browser that came from another site would not send the cookie along.
    ctx.header("Refresh", "0; url=" + HOME);
  }

  static String token(Context ctx) {
    return Optional.ofNullable(ctx.header("X-Form-Token"))
        .or(() -> Optional.ofNullable(ctx.formParam("token")))
        .orElse("");
  }

  /** No sign that the form stood on another site. */
  private boolean isFromHere(Context ctx) {
    String site = Optional.ofNullable(ctx.header("Sec-Fetch-Site")).orElse("same-origin");
    boolean own =
        Optional.ofNullable(ctx.header("Origin"))
            .map(
                o ->
                    o.startsWith(door.scheme())
                        && door.isOurs(o.substring(door.scheme().length()), port.getAsInt()))
            .orElse(true);
    return site.equals("same-origin") && own;
  }
}
