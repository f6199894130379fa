package gradepost.app;

import gradepost.app.store.Answer;
import gradepost.app.store.IoErrorText;
import gradepost.app.store.Store;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Question;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.Register.By;
import gradepost.reissue.register.RegisterException;
import gradepost.reissue.register.Signature;
import java.io.IOException;
import java.time.Clock;
import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.Optional;

/** What a clerk does with the register. */
public final class Desk {
  private final Store store;
  private final Clock clock;
  private final String who;

  public Desk(Store store, Clock clock, String who) {
    this.store = store;
    this.clock = clock;
    this.who = who;
  }

  /** An act upon an issue. */
  public interface Act {
    /** Enters the act for one issue, under the name of whoever does it. */
    void on(Register register, By by, Entry issue) throws RegisterException, IOException;
  }

  /**
   * Does one act for the issue that is called so; {@code done} is what is said of it, with its
   * name.
   */
  public Answer act(String called, String done, Act act) {
    if (!store.exists()) {
      return store.missing();
    }
    try (Register register = store.open()) {
      Optional<Entry> issue = register.find(called);
      if (issue.isEmpty()) {
        return Store.unknown(called);
      }
      act.on(register, by(), issue.get());
      return Answer.said(issue.get().name() + ": " + done);
    } catch (IOException e) {
      return Answer.refused(IoErrorText.inWords(e));
    } catch (RegisterException e) {
      return Answer.refused("error: " + e.getMessage());
    }
  }

  /** An act upon an issue by or for somebody, by the name that is printed. */
  private interface ActFor {
    void on(Register register, By by, Entry issue, String name)
        throws RegisterException, IOException;
  }

  /**
   * What is entered is the name in Latin letters, where there is one; the other goes in the log.
   */
  private Answer act(String called, String name, Optional<String> latin, String done, ActFor act) {
    String entered = latin.orElse(name);
    return act(
        called,
        done.formatted(entered),
        (register, by, issue) -> {
          act.on(register, by, issue, entered);
          if (!entered.equals(name)) {
            register.written(by, issue, entered, name);
          }
        });
  }

  /**
   * A copy is handed out.
   *
   * @param confirmed whether the clerk knows that the issue is not in use; else one that is
   *     recalled, superseded, expired or not in force yet is not handed out
   */
  public Answer handOut(
      String called, String copy, String holder, Optional<String> latin, boolean confirmed) {
    return act(
        called,
        holder,
        latin,
        "copy %s handed out to %%s".formatted(copy.replace("%", "%%")),
        (register, by, issue, name) -> {
          if (!confirmed) {
            InUse.require(register, issue, by.when());
          }
          register.handOut(by, issue, copy, name);
        });
  }

  /** A slip came back signed. */
  public Answer acknowledge(String called, String person, Optional<String> latin) {
    return act(called, person, latin, "acknowledged by %s", Register::acknowledge);
  }

  /** A driver is signed off for a direction of the pack, for no longer than its policy lets him. */
  public Answer signOff(String called, Optional<String> latin, Signature signature) {
    return act(
        called,
        signature.person(),
        latin,
        "%%s signed off, %s, until %s"
            .formatted(signature.covers().replace("%", "%%"), signature.lapses()),
        (register, by, issue, name) -> {
          SignOffTerms.of(store, issue, by.when().toLocalDate()).require(issue, signature);
          register.signOff(by, issue, signature.by(name));
        });
  }

  private By by() {
    return new By(who, LocalDateTime.now(clock).truncatedTo(ChronoUnit.MINUTES));
  }

  /** The moment by the clock that was handed in. */
  public LocalDateTime now() {
    return LocalDateTime.now(clock);
  }

  /** Asks the register a question; where there is no register yet, says so. */
  public Found list(Question question) {
    if (!store.exists()) {
      return new Found.Nothing(store.missing());
    }
    try (Register register = store.open()) {
      return new Found.Rows(register.list(question));
    } catch (IOException e) {
      return new Found.Nothing(Answer.refused(IoErrorText.inWords(e)));
    } catch (RegisterException e) {
      return new Found.Nothing(Answer.refused("error: " + e.getMessage()));
    }
  }
}
