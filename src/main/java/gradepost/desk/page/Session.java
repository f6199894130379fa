package gradepost.desk.page;

import gradepost.reissue.register.Account;
import io.javalin.http.Context;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/**
 * One browser that was let in. It lives as long as the program: after a restart everybody comes in
 * again.
 */
public final class Session {
  private static final String ATTRIBUTE = "session";

  private final String token;
  private final Optional<Account> account;
  private volatile String typedName = "";

  /**
   * @param token stands in every form that changes something
   * @param account whose it is; empty where it came in by the key of this machine
   */
  public Session(String token, Optional<Account> account) {
    this.token = token;
    this.account = account;
  }

  /** The session of a request that was let in. */
  public static Session of(Context ctx) {
    return Objects.requireNonNull(ctx.<Session>attribute(ATTRIBUTE));
  }

  /** The same where it may be that nobody was let in. */
  public static Optional<Session> perhaps(Context ctx) {
    return Optional.ofNullable(ctx.<Session>attribute(ATTRIBUTE));
  }

  /** Notes whose request it is. */
  public void asks(Context ctx) {
    ctx.attribute(ATTRIBUTE, this);
  }

  /** What stands in every form that changes something. */
  public String token() {
    return token;
  }

  /** Whose it is; empty where it came in by the key of this machine. */
  public Optional<Account> account() {
    return account;
  }

  /** What may be done: all of it by whoever has the key of this machine. */
  public Set<Account.Role> roles() {
    return account.map(a -> Set.of(a.role())).orElse(Set.of(Account.Role.values()));
  }

  /**
   * The name under which acts are entered: that of the account; by the key, the one that is typed,
   * or was typed last.
   */
  public String by(Context ctx) {
    if (account.isPresent()) {
      return account.get().name();
    }
    Optional.ofNullable(ctx.formParam("by")).ifPresent(typed -> typedName = typed.strip());
    return typedName;
  }
}
