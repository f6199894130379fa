package gradepost.app;

import gradepost.app.issue.NamedPapers;
import gradepost.app.store.Answer;
import gradepost.app.store.Store;
import gradepost.pack.PersonName;
import gradepost.reissue.register.Gap;
import gradepost.reissue.register.Question;
import gradepost.reissue.register.Register;
import gradepost.reissue.register.Register.By;
import gradepost.reissue.register.RegisterException;
import java.time.Clock;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;

/** Entries of the log that are taken back, issues that are called back, and the list of staff. */
public final class Entries {
  private final Store store;
  private final Clock clock;
  private final String who;

  public Entries(Store store, Clock clock, String who) {
    this.store = store;
    this.clock = clock;
    this.who = who;
  }

  /** An entry is taken back by another, which says why. */
  public Answer undo(long entry, String reason) {
    return OnRegister.of(
        store,
        register ->
            Answer.said(
                AppText.TAKEN_BACK
                    .with(
                        String.valueOf(entry),
                        register.undoing().undo(store.by(who, clock), entry, reason))
                    .inWords()));
  }

  /**
   * What is kept of people who left the list of staff is removed when its time is over: so many
   * months after they left as the policy of the latest issue of the pack has it. Archived slips and
   * lists that name them go too, unless they are of the latest issue.
   *
   * @param dryRun whether it is only told
   */
  public Answer forget(boolean dryRun) {
    return OnRegister.of(
        store,
        register -> {
          LocalDate today = store.by(who, clock).when().toLocalDate();
          Retention retention = new Retention(store, register, today);
          NamedPapers papers = new NamedPapers(store.kept(), register, retention.due());
          if (!dryRun && !retention.due().isEmpty()) {
            // The papers first: by the register a run that was killed finds them again.
            papers.remove();
            register.leavers().forget(store.by(who, clock), retention.due());
          }
          return retention
              .told(dryRun)
              .and(new Answer(papers.told(dryRun), List.of(), List.of(), true));
        });
  }

  /** People or places join the list of staff, or leave it: all of them, or none. */
  public Answer staff(List<String> names, boolean leave) {
    return OnRegister.of(
        store,
        register -> {
          register.together(
              () -> {
                for (String name : names) {
                  if (leave) {
                    register.staff().leave(store.by(who, clock), name);
                  } else {
                    register.staff().add(store.by(who, clock), name);
                  }
                }
              });
          Answer done =
              Answer.said((leave ? AppText.LEFT : AppText.JOINED).with(names.size()).inWords());
          return leave ? done.and(stillOut(register, names)) : done;
        });
  }

  /** What those who left have to give back. */
  private static Answer stillOut(Register register, List<String> names) throws RegisterException {
    Answer out = Answer.GOOD;
    for (List<String> row : register.list(Question.out()).rows()) {
      if (names.stream().anyMatch(name -> PersonName.same(name, row.get(2)))) {
        out = out.and(Answer.said(AppText.STILL_HELD.of(row)));
      }
    }
    return out;
  }

  /**
   * An issue is called back though nothing supersedes it. The issue before it, which it has
   * superseded, does not come into force again: where nothing is in force then, that is told, also
   * where nothing was before.
   */
  public Answer recall(String called, String reason) {
    return OnRegister.of(
        store,
        called,
        (register, issue) -> {
          String pack = issue.pack();
          By by = store.by(who, clock);
          LocalDateTime now = by.when();
          Gap before = register.gap(pack, now);
          register.recall(by, issue, reason);
          Gap after = register.gap(pack, now);
          Answer done = Answer.said(issue.name() + ": " + AppText.RECALLED.with(reason).inWords());
          return after.from().equals(now) || !after.equals(before)
              ? done.and(Answer.said(nothingInForce(pack, after, now)))
              : done;
        });
  }

  private static String nothingInForce(String pack, Gap gap, LocalDateTime now) {
    Optional<LocalDateTime> to = gap.to();
    return to.isPresent()
        ? AppText.NOTHING_BETWEEN.with(pack, gap.from(), to.get()).inWords()
        : gap.from().equals(now)
            ? AppText.NOTHING_NOW.with(pack).inWords()
            : AppText.NOTHING_FROM.with(pack, gap.from()).inWords();
  }
}
