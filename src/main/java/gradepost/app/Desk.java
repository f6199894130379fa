package gradepost.app;

import gradepost.app.InUse.Doubts;
import gradepost.app.store.Answer;
import gradepost.app.store.Store;
import gradepost.reissue.register.Entry;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.Register.By;
import gradepost.reissue.register.RegisterException;
import gradepost.reissue.register.Signature;
import gradepost.text.Mistake;
import java.io.IOException;
import java.time.Clock;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Function;
import java.util.function.Supplier;

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

  /** Does one act for the issue that is called so; {@code done} is said of it, with its name. */
  public Answer act(String called, String done, Act act) {
    return act(called, Doubts.NONE, () -> done, act);
  }

  private Answer act(String called, Doubts doubts, Supplier<String> done, Act act) {
    return OnRegister.of(
        store,
        called,
        (register, issue) -> {
          By by = store.by(who, clock);
          List<Mistake> all = doubts.of(new InUse(register, by.when()), issue);
          if (!all.isEmpty()) {
            return InUse.refused(all);
          }
          act.on(register, by, issue);
          return Answer.said(issue.name() + ": " + done.get());
        });
  }

  /** An act upon an issue by or for somebody, by the name that is printed. */
  private interface ActFor {
    void on(Register register, By by, Entry issue, String name)
        throws RegisterException, IOException;
  }

  /** Entered is the name in Latin letters, where there is one; the other goes in the log. */
  private Answer act(
      String called,
      String name,
      Optional<String> latin,
      Doubts doubts,
      Function<String, Mistake> done,
      ActFor act) {
    String entered = latin.orElse(name);
    return act(
        called,
        doubts,
        () -> done.apply(entered).inWords(),
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
   * @param copy its number; the next one of the issue where empty
   * @param confirmed whether it may be an issue that is not in use, or a second copy
   */
  public Answer handOut(
      String called,
      Optional<String> copy,
      String holder,
      Optional<String> latin,
      boolean confirmed) {
    AtomicReference<String> number = new AtomicReference<>(copy.orElse(""));
    return act(
        called,
        holder,
        latin,
        Doubts.unless(confirmed, (use, issue) -> use.toHandOut(issue, latin.orElse(holder))),
        name -> AppText.HANDED_OUT.with(Objects.requireNonNull(number.get()), name),
        (register, by, issue, name) -> {
          if (copy.isPresent()) {
            register.handOut(by, issue, copy.get(), name);
          } else {
            number.set(register.handOutNext(by, issue, name));
          }
        });
  }

  /** A slip came back signed. */
  public Answer acknowledge(String called, String person, Optional<String> latin) {
    return act(
        called, person, latin, Doubts.NONE, AppText.ACKNOWLEDGED::with, Register::acknowledge);
  }

  /**
   * A driver is signed off for a direction of the pack, for no longer than its policy lets him.
   *
   * @param confirmed whether the issue may be one that is not in use
   */
  public Answer signOff(
      String called, Optional<String> latin, Signature signature, boolean confirmed) {
    return act(
        called,
        signature.person(),
        latin,
        Doubts.unless(confirmed, InUse::toSignOff),
        name -> AppText.SIGNED_OFF.with(name, signature.covers(), signature.lapses()),
        (register, by, issue, name) -> {
          SignOffTerms.of(store, issue, by.when().toLocalDate()).require(issue, signature);
          register.signOff(by, issue, signature.by(name));
        });
  }
}
