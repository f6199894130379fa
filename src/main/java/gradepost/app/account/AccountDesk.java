package gradepost.app.account;

import gradepost.app.store.Answer;
import gradepost.app.store.IoErrorText;
import gradepost.app.store.Store;
import gradepost.reissue.register.Account;
import gradepost.reissue.register.Accounts;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.RegisterException;
import gradepost.text.Mistake;
import java.io.IOException;
import java.time.Clock;
import java.util.List;
import java.util.Optional;

/** What is done with accounts, under the name of whoever does it. */
public final class AccountDesk {
  private final Store store;
  private final Clock clock;
  private final String who;

  /**
   * @param who does it, for the log of the register
   */
  public AccountDesk(Store store, Clock clock, String who) {
    this.store = store;
    this.clock = clock;
    this.who = who;
  }

  private interface Act {
    void on(Accounts accounts, Register.By by) throws RegisterException;
  }

  /** Enters an account with a first password. A register is begun where there is none. */
  public Answer add(String name, Account.Role role, String password) {
    return with(
        name,
        password,
        hash -> enter((accounts, by) -> accounts.add(by, name, role, hash), name + " added"));
  }

  /** Gives a new first password; opens an account that was shut. */
  public Answer reset(String name, String password) {
    return with(
        name,
        password,
        hash ->
            enter((accounts, by) -> accounts.reset(by, name, hash), name + " has a new password"));
  }

  /** Nobody comes in by it until it is reset. */
  public Answer shut(String name) {
    return enter((accounts, by) -> accounts.shut(by, name), name + " shut");
  }

  /** Whoever came in by it comes in again. */
  public Answer endSessions(String name) {
    return enter((accounts, by) -> accounts.endSessions(by, name), name + " signed out everywhere");
  }

  /**
   * Its bearer changes the password.
   *
   * @param again the new one once more
   */
  public Answer change(String old, String password, String again) {
    if (!password.equals(again)) {
      return refused(AccountText.TWICE);
    }
    if (password.equals(old)) {
      return refused(AccountText.SAME);
    }
    return with(
        who,
        password,
        hash ->
            enter(
                (accounts, by) -> {
                  Optional<Accounts.Hashed> mine = accounts.called(who);
                  if (mine.isEmpty() || !Passwords.is(old, mine.get().hash())) {
                    throw new RegisterException(AccountText.WRONG_OLD);
                  }
                  accounts.password(by, hash);
                },
                "The password is changed."));
  }

  /** All of them, by name; none where there is no register. */
  public List<Account> all() throws RegisterException {
    if (!store.exists()) {
      return List.of();
    }
    try (Register register = store.open()) {
      return register.accounts().all();
    }
  }

  private interface Hashed {
    Answer by(String hash);
  }

  private static Answer with(String name, String password, Hashed act) {
    Optional<Mistake> obstacle = Passwords.obstacle(name, password);
    return obstacle.isPresent() ? refused(obstacle.get()) : act.by(Passwords.hash(password));
  }

  private static Answer refused(Mistake why) {
    return Answer.refused("error: " + why.inWords());
  }

  private Answer enter(Act act, String done) {
    if (!store.exists() && !store.isFree()) {
      return store.missing();
    }
    try (Register register = store.begin()) {
      act.on(register.accounts(), store.by(who, clock));
      return Answer.said(done);
    } catch (IOException e) {
      return Answer.refused(IoErrorText.inWords(e));
    } catch (RegisterException e) {
      return Answer.refused("error: " + e.getMessage());
    }
  }
}
