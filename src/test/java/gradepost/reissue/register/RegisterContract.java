package gradepost.reissue.register;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;

import gradepost.reissue.register.Entry.Kept;
import gradepost.reissue.register.Entry.Sheet;
import gradepost.reissue.register.Register.By;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;

/** Property: what the register promises, whatever database it is in. */
abstract class RegisterContract extends AccountsContract {
  private static Entry entry(String pack, int number, Optional<Integer> base) {
    return new Entry(
        pack,
        number,
        "%064x".formatted(pack.hashCode() * 100L + number),
        "a version",
        NOON.plusDays(number),
        NOON.plusDays(number),
        NOON.plusDays(30),
        base,
        base.isPresent() ? "digest" : "",
        true,
        List.of(new Kept("pack.yaml", "aa"), new Kept("../b.yaml", "bb")),
        List.of(new Kept("b.yaml", "cc")),
        List.of(new Kept("x.pdf", "dd")),
        List.of(new Sheet("x", "p1 tables", "Tables", "ee", 2, number)));
  }

  @Test
  void anIssueIsReadAsItWasRegisteredAndRecallsTheOneBefore() throws Exception {
    try (Register register = Register.open(url())) {
      Entry one = entry("valley", 1, Optional.empty());
      Entry two = entry("valley", 2, Optional.of(1));
      register.takeIn(CLERK, one);
      register.issue(CLERK, two);
      assertThat(register.issue("valley", 1)).contains(one);
      assertThat(register.latest("valley")).contains(two);
      assertThat(register.find("valley/2")).contains(two);
      assertThat(register.find(two.fingerprint().substring(0, 64))).contains(two);
      assertThat(register.find("valley/3")).isEmpty();
      assertThat(register.latest("coast")).isEmpty();
      assertThat(register.isDelivered(two)).isFalse();
      assertThat(register.undelivered()).containsExactly("valley");
      assertThat(register.withNotice("valley", "digest")).contains(2);
      assertThat(register.withNotice("valley", "another")).isEmpty();
      assertThat(register.withNotice("valley", "")).isEmpty();
      register.delivered(CLERK, two);
      assertThat(register.undelivered()).isEmpty();
      assertThat(register.isDelivered(two)).isTrue();
      assertThat(register.list(Question.issues()).rows().get(0).get(5))
          .isEqualTo("superseded by issue 2 from 2026-11-27 12:00");
      assertThatThrownBy(() -> register.issue(CLERK, two)).isInstanceOf(RegisterException.class);
      assertThat(register.list(Question.issues()).rows()).hasSize(2);
    }
  }

  /** What was superseded ends at its hour, whatever becomes of the issue that supersedes it. */
  @Test
  void aRecallLeavesATimeInWhichNothingIsInForce() throws Exception {
    try (Register register = Register.open(url())) {
      LocalDateTime first = NOON.plusDays(1);
      register.issue(CLERK, entry("valley", 1, Optional.empty()));
      assertThat(register.gap("valley", first))
          .isEqualTo(new Gap(NOON.plusDays(30), Optional.empty()));
      assertThat(register.gap("valley", NOON)).isEqualTo(new Gap(NOON, Optional.of(first)));
      Entry two = entry("valley", 2, Optional.of(1));
      register.issue(CLERK, two);
      assertThat(register.gap("valley", first).from()).isEqualTo(NOON.plusDays(30));
      register.recall(CLERK, two, "wrong mileage");
      assertThat(register.gap("valley", first))
          .isEqualTo(new Gap(NOON.plusDays(2), Optional.empty()));
      register.issue(CLERK, entry("valley", 3, Optional.of(2)));
      assertThat(register.gap("valley", first))
          .isEqualTo(new Gap(NOON.plusDays(2), Optional.of(NOON.plusDays(3))));
      register.recall(CLERK, entry("valley", 1, Optional.empty()), "misprint");
      assertThat(register.gap("valley", first))
          .isEqualTo(new Gap(first, Optional.of(NOON.plusDays(3))));
    }
  }

  /** A hand-over says nothing of a draft: it is the same before and after the check. */
  @Test
  void aPaperThatTheCheckDidNotChangeIsNoDraft() throws Exception {
    try (Register register = Register.open(url())) {
      Entry one = entry("valley", 1, Optional.empty());
      register.issue(CLERK, one, Optional.empty());
      register.checks().checked(new By("another", NOON), one, one.papers());
      assertThat(register.list(Question.paper("dd")).rows())
          .extracting(row -> row.get(2))
          .containsExactly("paper", "draft");
    }
  }

  /** One that was to end later, by an issue that is recalled, does not go on beside the next. */
  @Test
  void anEarlierIssueEndsAnIssueEarlier() throws Exception {
    try (Register register = Register.open(url())) {
      Entry one = entry("valley", 1, Optional.empty());
      Entry two = entry("valley", 2, Optional.of(1));
      register.issue(CLERK, one);
      register.issue(CLERK, two);
      register.recall(CLERK, two, "wrong mileage");
      LocalDateTime hour = NOON.plusHours(1);
      Entry three = entry("valley", 3, Optional.of(2));
      register.issue(CLERK, validFrom(three, hour));
      assertThat(register.recalled(one, NOON)).isEmpty();
      assertThat(register.recalled(one, hour))
          .contains("superseded by issue 3 from 2026-11-25 13:00");
      assertThat(register.list(Question.issues()).rows())
          .extracting(row -> row.get(0) + " " + row.get(5))
          .containsExactly(
              "valley/1 superseded by issue 3 from 2026-11-25 13:00",
              "valley/2 recalled: wrong mileage",
              "valley/3 ");
      register.issue(new By("a clerk", hour), entry("valley", 4, Optional.of(3)));
      assertThat(register.recalled(one, hour)).as("as before").get().asString().contains("issue 3");
    }
  }

  private static Entry validFrom(Entry e, LocalDateTime from) {
    return new Entry(
        e.pack(),
        e.number(),
        e.fingerprint(),
        e.maker(),
        e.issued(),
        from,
        e.validTo(),
        e.base(),
        e.notice(),
        e.urgent(),
        e.inputs(),
        e.found(),
        e.papers(),
        e.sheets());
  }

  /** An act that enters some words. */
  private interface Entering {
    void of(Register register, Entry issue, String words) throws RegisterException;
  }

  @Test
  void wordsThatNoPaperCanPrintAreNotEntered() throws Exception {
    List<Entering> acts =
        List.of(
            (r, i, words) -> r.handOut(CLERK, i, "1", words),
            (r, i, words) -> r.handOut(CLERK, i, words, "learning room"),
            (r, i, words) -> r.acknowledge(CLERK, i, words),
            (r, i, words) ->
                r.signOff(CLERK, i, new Signature(words, "Down", "R Ames", NOON.toLocalDate())),
            (r, i, words) ->
                r.signOff(CLERK, i, new Signature("M Ash", "Down", words, NOON.toLocalDate())),
            (r, i, words) -> r.recall(CLERK, i, words),
            (r, i, words) -> r.delivered(new By(words, NOON), i),
            (r, i, words) -> r.written(CLERK, i, words, "Ash"));
    List<String> bad =
        List.of(
            "日本", "\uD83D\uDE82", "A\u202Esh", "A\u001Bsh", "A\nsh", "", " ", ".", "a".repeat(201));
    try (Register register = Register.open(url())) {
      Entry one = entry("valley", 1, Optional.empty());
      register.issue(CLERK, one);
      int before = register.list(Question.acts()).rows().size();
      for (Entering act : acts) {
        for (String words : bad) {
          assertThatThrownBy(() -> act.of(register, one, words))
              .as(words)
              .isInstanceOf(RegisterException.class)
              .hasMessageContaining("; allowed: ");
        }
      }
      assertThat(register.list(Question.acts()).rows()).hasSize(before);
      assertThatThrownBy(() -> register.acknowledge(CLERK, one, "日本"))
          .hasMessage(
              "the person's name \"日本\" has 日 (U+65E5) in it, which the papers cannot print;"
                  + " allowed: Latin, Greek and Cyrillic letters, figures and usual signs, on one"
                  + " line\n  Maybe the name in Latin letters with --latin-name beside it");
      assertThatThrownBy(() -> register.acknowledge(CLERK, one, "M\nAsh"))
          .hasMessageEndingWith("\n  Maybe M Ash");
      for (String name : List.of("Zoë Nguyễn-O’Hara", "Ελένη Παππά", "Жанна Орлова", "desk 4")) {
        register.acknowledge(CLERK, one, name);
      }
      register.written(CLERK, one, "Nihon", "日本");
      assertThatThrownBy(() -> register.written(CLERK, one, "Nihon", "日\u202E本"))
          .hasMessageContaining("日U+202E本");
      assertThat(register.list(Question.acts()).rows())
          .anyMatch(row -> row.get(2).equals("noted that Nihon is written 日本"));
    }
  }

  @Test
  void copiesAndSignaturesAreKeptTrackOf() throws Exception {
    try (Register register = Register.open(url())) {
      Entry one = entry("valley", 1, Optional.empty());
      register.issue(CLERK, one);
      register.handOut(CLERK, one, "1", "learning room");
      register.handOut(CLERK, one, "2", "N Thorne");
      assertThatThrownBy(() -> register.handOut(CLERK, one, "2", "another"))
          .hasMessage("copy 2 of valley/1 is already handed out to N Thorne");
      register.takeBack(CLERK, one, "1");
      assertThatThrownBy(() -> register.takeBack(CLERK, one, "1"))
          .hasMessage("copy 1 of valley/1 is not out; out of it: copy 2, N Thorne");
      register.acknowledge(CLERK, one, "T Rowan");
      assertThatThrownBy(() -> register.acknowledge(CLERK, one, "T Rowan"))
          .hasMessage("T Rowan has already acknowledged valley/1");
      assertThatThrownBy(() -> register.acknowledge(CLERK, one, "Rowan, T."))
          .hasMessage("Rowan, T. has already acknowledged valley/1");
      register.signOff(
          CLERK, one, new Signature("M Ash", "Down", "R Ames", LocalDate.of(2026, 12, 1)));
      register.signOff(
          CLERK, one, new Signature("M Ash", "Up", "R Ames", LocalDate.of(2027, 12, 1)));
      assertThat(register.toBrief(CLERK.when()))
          .extracting(ToBrief::person)
          .containsExactly("N Thorne");

      Entry two = entry("valley", 2, Optional.of(1));
      register.issue(CLERK, two);
      assertThat(register.list(Question.out()).rows())
          .containsExactly(
              List.of(
                  "valley/1",
                  "2",
                  "N Thorne",
                  "2026-11-25T12:00",
                  "a clerk",
                  "superseded by issue 2 from 2026-11-27 12:00",
                  ""));
      assertThat(register.list(Question.toRecall("valley")).rows()).hasSize(1);
      assertThat(register.list(Question.outOf("valley")).rows()).hasSize(1);
      String made = two.issued().toString();
      assertThat(register.list(Question.toBrief(CLERK.when())).rows())
          .containsExactly(
              List.of("M Ash", "valley/2", made, "", "1"),
              List.of("N Thorne", "valley/2", made, "copy 2 of valley/1", ""),
              List.of("T Rowan", "valley/2", made, "", "1"));
      register.acknowledge(CLERK, two, "Ash, M");
      assertThat(register.toBrief(CLERK.when()))
          .extracting(ToBrief::person)
          .containsExactly("N Thorne", "T Rowan");
      assertThat(register.list(Question.lapsing(LocalDate.of(2026, 12, 1))).rows())
          .containsExactly(List.of("sign-off, Down", "valley/1", "M Ash", "2026-12-01"));
      assertThat(register.list(Question.lapsing(LocalDate.of(2027, 1, 1))).rows()).hasSize(2);
      register.recall(CLERK, two, "wrong stop mark");
      assertThatThrownBy(() -> register.recall(CLERK, two, "again"))
          .hasMessage("valley/2 is already recalled: wrong stop mark");
      assertThat(register.toBrief(CLERK.when()))
          .extracting(each -> each.person() + " " + each.issue())
          .containsExactly("N Thorne valley/1");
      // An issue that was recalled lapses no more.
      assertThat(register.list(Question.lapsing(LocalDate.of(2027, 1, 1))).rows()).hasSize(1);
      // The first one ends then all the same: there is nothing to be briefed on.
      assertThat(register.toBrief(two.validFrom())).isEmpty();
      assertThat(register.list(Question.acts()).rows()).hasSize(10);
    }
  }

  /** Each formation is signed by itself, and nobody signs himself off. */
  @Test
  void aSignatureSaysWhatItCoversAndRestsOn() throws Exception {
    try (Register register = Register.open(url())) {
      Entry one = entry("valley", 1, Optional.empty());
      register.issue(CLERK, one);
      for (String formation : List.of("4-car", "8-car")) {
        register.signOff(
            CLERK,
            one,
            new Signature(
                "M Ash", "Down", formation, "R Ames", day(2027, 5, 1), "21 of 24", "3", "night"));
      }
      assertThatThrownBy(
              () ->
                  register.signOff(
                      CLERK, one, new Signature("M Ash", "Up", "Ash, M.", day(2027, 5, 1))))
          .hasMessage(
              "Ash, M. cannot sign off M Ash: they are the same person; allowed: another person as"
                  + " assessor");
      assertThat(register.list(Question.signed()).rows())
          .extracting(row -> row.get(3) + ", " + row.get(7) + ", " + row.get(8) + ", " + row.get(9))
          .containsExactly("4-car, 21 of 24, 3, night", "8-car, 21 of 24, 3, night");
      assertThat(register.list(Question.lapsing(day(2027, 5, 1))).rows())
          .extracting(row -> row.get(0))
          .contains("sign-off, Down, 4-car", "sign-off, Down, 8-car");
      // However the name is spelt, the later one stands in for the one before.
      register.signOff(
          CLERK,
          one,
          new Signature("Ash, M.", "Down", "4-car", "R Ames", day(2027, 8, 1), "", "", ""));
      assertThat(register.list(Question.signed()).rows()).hasSize(2);
      assertThat(register.list(Question.lapsing(day(2027, 5, 1))).rows())
          .extracting(row -> row.get(0))
          .contains("sign-off, Down, 8-car")
          .doesNotContain("sign-off, Down, 4-car");
    }
  }

  /** Order is by what was done, never by what a clock said. */
  @Test
  void aClockThatJumpsBackChangesNoOrder() throws Exception {
    By early = new By("a clerk", NOON.minusDays(40));
    try (Register register = Register.open(url())) {
      register.issue(CLERK, entry("valley", 1, Optional.empty()));
      register.signOff(
          CLERK,
          entry("valley", 1, Optional.empty()),
          new Signature("M Ash", "Down", "R", day(2026, 12, 1)));
      Entry two = entry("valley", 2, Optional.of(1));
      register.issue(early, two);
      register.signOff(early, two, new Signature("M Ash", "Down", "R", day(2027, 12, 1)));
      assertThat(register.latest("valley")).contains(two);
      assertThat(register.list(Question.acts()).rows())
          .extracting(row -> row.get(0))
          .containsExactly(
              "2026-11-25T12:00", "2026-11-25T12:00", "2026-10-16T12:00", "2026-10-16T12:00");
      assertThat(register.list(Question.lapsing(day(2026, 12, 1))).rows()).isEmpty();
      assertThat(register.list(Question.lapsing(day(2027, 12, 1))).rows())
          .extracting(row -> row.get(0) + " " + row.get(1))
          .contains("sign-off, Down valley/2");
      assertThat(register.list(Question.issues()).rows())
          .extracting(row -> row.get(0) + " " + row.get(5))
          .containsExactly("valley/1 superseded by issue 2 from 2026-11-27 12:00", "valley/2 ");
    }
  }

  private static LocalDate day(int year, int month, int day) {
    return LocalDate.of(year, month, day);
  }

  @Test
  void figuresThatCannotBeAreNotEntered() throws Exception {
    try (Register register = Register.open(url())) {
      Entry one = entry("valley", 1, Optional.empty());
      register.issue(CLERK, one);
      for (String copy : List.of("-1", "007", "0", "+3", "1.5", "3-5", "A3", "9999999999")) {
        assertThatThrownBy(() -> register.handOut(CLERK, one, copy, "Elm"))
            .isInstanceOf(RegisterException.class)
            .hasMessage(
                "\"%s\" is not the number of a copy; allowed: a whole number from 1 to 999999999,"
                    + " without zeros before it",
                copy);
      }
      for (String score : List.of("99 of 24", "-3 of 24", "-5", "0 of 0", "good", "21/24")) {
        assertThatThrownBy(() -> register.signOff(CLERK, one, signature(score)))
            .isInstanceOf(RegisterException.class)
            .hasMessage(
                "\"%s\" is not the score of a knowledge paper; allowed: how many answers were right"
                    + " of how many, such as 21 of 24",
                score);
      }
      assertThat(register.list(Question.acts()).rows()).hasSize(1);
      register.handOut(CLERK, one, "7", "Elm");
      for (String score : List.of("", "24 of 24", "0 of 24")) {
        register.signOff(CLERK, one, signature(score));
      }
    }
  }

  private static Signature signature(String score) {
    LocalDate lapses = NOON.toLocalDate().plusDays(30 + score.length());
    return new Signature("M Ash", "Down", "", "R Ames", lapses, score, "", "");
  }

  @Test
  void actsOfManyAtOnceAreAllThere() throws Exception {
    String url = url();
    try (Register register = Register.open(url)) {
      register.issue(CLERK, entry("valley", 1, Optional.empty()));
    }
    ExecutorService pool = Executors.newFixedThreadPool(4);
    List<Callable<Void>> work = new ArrayList<>();
    for (int i = 0; i < 4; i++) {
      int clerk = i;
      work.add(
          () -> {
            try (Register register = Register.open(url)) {
              Entry issue = register.issue("valley", 1).orElseThrow();
              for (int copy = 0; copy < 10; copy++) {
                register.handOut(
                    CLERK, issue, String.valueOf(clerk * 10 + copy + 1), "clerk " + clerk);
              }
            }
            return Optional.<Void>empty().orElse(null);
          });
    }
    for (Future<Void> done : pool.invokeAll(work)) {
      done.get();
    }
    pool.shutdown();
    try (Register register = Register.open(url)) {
      assertThat(register.list(Question.out()).rows()).hasSize(40);
      assertThat(register.list(Question.acts()).rows()).hasSize(41);
    }
  }

  @Test
  void recordsOfWhoLeftAreRemovedWithTheNames() throws Exception {
    try (Register register = Register.open(url())) {
      Entry one = entry("valley", 1, Optional.empty());
      register.issue(CLERK, one);
      register.handOut(new By("M Ash", NOON), one, "1", "M Ash");
      register.takeBack(CLERK, one, "1");
      register.acknowledge(new By("M Ash", NOON), one, "M Ash");
      register.acknowledge(CLERK, one, "M Ashby");
      register.signOff(CLERK, one, new Signature("M Ash", "Down", "R Ames", NOON.toLocalDate()));
      register.signOff(CLERK, one, new Signature("M Ashby", "Down", "M Ash", NOON.toLocalDate()));
      register.staff().add(CLERK, "m  ash");
      register.staff().add(CLERK, "M Ashby");
      assertThat(register.leavers().held()).isEmpty();
      register.staff().leave(new By("a clerk", NOON.plusDays(3)), "m  ash");
      register.accounts().signedIn(new By("M Ash", NOON), "10.0.0.7", 0);
      register.accounts().refused(CLERK, Optional.of("m ash"), "wrong password", 1, "10.0.0.7");
      register.accounts().signedOut(new By("M Ashby", NOON));
      List<Leavers.Held> held = register.leavers().held();
      assertThat(held)
          .extracting(Leavers.Held::person, Leavers.Held::left, Leavers.Held::words)
          .containsExactly(
              tuple("M Ash", LocalDate.of(2026, 11, 28), "name beside copy 1 of valley/1"),
              tuple("M Ash", LocalDate.of(2026, 11, 28), "acknowledgement of valley/1"),
              tuple(
                  "M Ash",
                  LocalDate.of(2026, 11, 28),
                  "sign-off on valley/1, Down, with its score"));
      register.leavers().forget(CLERK, held.subList(1, 2));
      assertThat(register.leavers().held()).hasSize(2);
      assertThatThrownBy(() -> register.leavers().forget(CLERK, held))
          .isInstanceOf(RegisterException.class)
          .hasMessageContaining("meanwhile");
      assertThat(register.leavers().held()).hasSize(2);
      register.leavers().forget(CLERK, register.leavers().held());
      assertThat(register.leavers().held()).isEmpty();
      assertThat(register.list(Question.acts()).rows())
          .extracting(row -> row.get(1) + ": " + row.get(2))
          .containsExactly(
              "a clerk: issued",
              "(name removed): handed out copy 1 to (name removed)",
              "a clerk: took back copy 1",
              "(name removed): (name removed) acknowledged",
              "a clerk: M Ashby acknowledged",
              "a clerk: (name removed) signed off, Down",
              "a clerk: M Ashby signed off, Down",
              "a clerk: (name removed) joined the list",
              "a clerk: M Ashby joined the list",
              "a clerk: (name removed) left the list",
              "(name removed): signed in from 10.0.0.7",
              "a clerk: refused (name removed) from 10.0.0.7: wrong password (1 in a row)",
              "M Ashby: signed out",
              "a clerk: removed records of people who left: 1",
              "a clerk: removed records of people who left: 2");
      assertThat(register.list(Question.signed()).rows())
          .singleElement()
          .satisfies(row -> assertThat(row).contains("M Ashby", "M Ash"));
      String returned = register.list(Question.acts()).rows().get(2).get(5);
      assertThatThrownBy(() -> register.undoing().undo(CLERK, Long.parseLong(returned), "a slip"))
          .hasMessageStartingWith(
              "entry " + returned + " (took back copy 1) cannot be taken back:");
    }
  }
}
