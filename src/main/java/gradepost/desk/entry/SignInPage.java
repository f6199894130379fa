package gradepost.desk.entry;

import gradepost.app.account.AccountDesk;
import gradepost.app.account.Passwords;
import gradepost.app.account.SignIn;
import gradepost.app.store.Answer;
import gradepost.app.store.Store;
import gradepost.desk.page.Asked;
import gradepost.desk.page.DeskText;
import gradepost.desk.page.Refused;
import gradepost.desk.page.Screens;
import gradepost.desk.page.Session;
import gradepost.reissue.register.Account;
import gradepost.reissue.register.RegisterException;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Signing in and out, and changing one's password. */
public final class SignInPage {
  private static final String TO = "to";

  private final Screens screens;
  private final Door door;
  private final SignIn signIn;
  private final Sessions sessions;
  private final Store store;
  private final Clock clock;

  public SignInPage(
      Screens screens, Door door, SignIn signIn, Sessions sessions, Store store, Clock clock) {
    this.screens = screens;
    this.door = door;
    this.signIn = signIn;
    this.sessions = sessions;
    this.store = store;
    this.clock = clock;
  }

  /** What is added to the address of this page, so that it leads back to what was asked for. */
  static String backTo(Context ctx) {
    String asked = ctx.path() + Optional.ofNullable(ctx.queryString()).map("?"::concat).orElse("");
    return asked.equals("/")
        ? ""
        : "?" + TO + "=" + URLEncoder.encode(asked, StandardCharsets.UTF_8);
  }

  /** The form. */
  public void form(Context ctx) {
    show(ctx, "", List.of(), Optional.ofNullable(ctx.queryParam(TO)).orElse("/"));
  }

  /** Name and password are handed in. */
  public void enter(Context ctx) throws RegisterException {
    if (!sessions.isGuests(ctx, Gate.token(ctx))) {
      throw new Refused(HttpStatus.FORBIDDEN, DeskText.FORM);
    }
    String name = Asked.field(ctx, "name");
    String password = Optional.ofNullable(ctx.formParam("password")).orElse("");
    String to = own(Asked.field(ctx, TO));
    String address = Asker.address(door, ctx);
    SignIn.Tried tried = signIn.tried(name, password, address);
    if (tried.account().isPresent()) {
      signIn.comesIn(tried.account().get(), address);
      sessions.begin(ctx, tried.account());
      ctx.redirect(tried.account().get().first() ? "/account" : to, HttpStatus.SEE_OTHER);
      return;
    }
    if (tried.waitS() > 0) {
      ctx.status(HttpStatus.TOO_MANY_REQUESTS).header("Retry-After", String.valueOf(tried.waitS()));
      show(ctx, name, DeskText.WAIT.with(tried.waitS()).inWords().lines().toList(), to);
      return;
    }
    ctx.status(HttpStatus.FORBIDDEN);
    show(
        ctx,
        name,
        (tried.lapsed() ? DeskText.LAPSED : DeskText.WRONG).inWords().lines().toList(),
        to);
  }

  /** A page of this desk, and of no other. */
  private static String own(String to) {
    return to.matches("/([\\w.%?=&+-][\\w./%?=&+-]*)?") ? to : "/";
  }

  private void show(Context ctx, String name, List<String> faults, String to) {
    screens.show(
        ctx,
        "sign-in",
        "Sign in",
        Map.of("guest", sessions.guestToken(ctx), "name", name, "faults", faults, TO, own(to)));
  }

  /** Signs out. */
  public void leave(Context ctx) throws RegisterException {
    Account mine = mine(ctx);
    sessions.end(ctx);
    signIn.goes(mine);
    ctx.redirect("/", HttpStatus.SEE_OTHER);
  }

  /** One's own account. */
  public void account(Context ctx) {
    account(ctx, List.of());
  }

  /** Changes one's password: all sessions end, and a new one begins. */
  public void change(Context ctx) throws RegisterException {
    Account mine = mine(ctx);
    String old = raw(ctx, "old");
    SignIn.Tried tried = signIn.tried(mine.name(), old, Asker.address(door, ctx));
    AccountDesk desk = new AccountDesk(store, clock, mine.name());
    Answer answer =
        tried.waitS() > 0
            ? Answer.refused(DeskText.WAIT.with(tried.waitS()).inWords())
            : desk.change(old, raw(ctx, "new"), raw(ctx, "again"));
    if (!answer.good()) {
      ctx.status(HttpStatus.BAD_REQUEST);
      account(ctx, answer.problems().stream().flatMap(String::lines).toList());
      return;
    }
    sessions.begin(ctx, desk.all().stream().filter(a -> a.name().equals(mine.name())).findFirst());
    ctx.redirect("/", HttpStatus.SEE_OTHER);
  }

  private static String raw(Context ctx, String name) {
    return Optional.ofNullable(ctx.formParam(name)).orElse("");
  }

  private static Account mine(Context ctx) {
    return Session.of(ctx).account().orElseThrow(Asked::nothing);
  }

  private void account(Context ctx, List<String> faults) {
    screens.show(
        ctx,
        "account",
        "Your account",
        Map.of("account", mine(ctx), "faults", faults, "shortest", Passwords.SHORTEST));
  }
}
