package gradepost.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Property: an issue that is not in use is neither handed out nor built on without a word. */
@Tag("slow")
class IssuesInUseTest {
  @TempDir Path folder;
  private Clerk clerk;

  @BeforeEach
  void office() throws Exception {
    clerk = new Clerk(folder).at("2026-11-29T09:00");
    clerk.enter();
  }

  private String handOut(int code, String issue, String copy, String... more) {
    String[] words = {"hand-out", issue, "--copy", copy, "--to", "Elm"};
    String[] all = new String[words.length + more.length];
    System.arraycopy(words, 0, all, 0, words.length);
    System.arraycopy(more, 0, all, words.length, more.length);
    return clerk.register(code, all);
  }

  private String signOff(int code, String issue, String lapses, String... more) {
    String words = "sign-off %s --person Elm --direction Out --assessor Rowe --lapses %s %s";
    return clerk.register(
        code, words.formatted(issue, lapses, String.join(" ", more)).strip().split(" "));
  }

  /** The paper of an issue beside the register. */
  private String verify(int code, int issue) {
    String paper = clerk.papers() + "/0000-issue-" + issue + "/0000-out-3-car.html";
    String register = folder.resolve("register.db").toString();
    return clerk.types(code, "verify", paper, "--register", register);
  }

  @Test
  void whatIsRecalledIsToldWhereItIsHandedOutAndWhereItIsBuiltOn() throws Exception {
    clerk.notice(0, "n1", Clerk.entry("T 1", 900, 1100, 30, "2026-11-28 04:00", "further notice"));
    clerk.register(0, "checked", "0000/2", "--by", "Another Clerk", "--out", clerk.papers());
    clerk.register(0, "recall", "0000/2", "--reason", "notice 1 was wrong");
    handOut(1, "0000/2", "1");
    assertThat(clerk.err)
        .isEqualTo(
            "error: 0000/2 is recalled and not to be handed out: notice 1 was wrong; allowed: an"
                + " issue that is in use; or, if this one is meant, the same with --confirm\n");
    assertThat(handOut(0, "0000/2", "1", "--confirm")).contains("copy 1 handed out to Elm");
    signOff(1, "0000/2", "2027-07-01");
    assertThat(clerk.err)
        .startsWith(
            "error: 0000/2 is recalled, and nobody is to be signed off on it: notice 1 was");
    handOut(1, "0000/1", "1");
    assertThat(clerk.err)
        .contains("0000/1 is not to be handed out: superseded by issue 2")
        .as("that one is recalled")
        .doesNotContain("Maybe");

    clerk.notice(0, "n2", Clerk.entry("T 2", 1500, 1600, 30, "2026-11-28 04:00", "further notice"));
    assertThat(clerk.out)
        .contains("0000: warning: the new issue is built on 0000/2, which was recalled (notice 1")
        .contains("it still holds what 0000/2 took in: T 1; if that was wrong, withdraw it");
  }

  /** One confirmation is for all of it: whoever gives it has seen it all. */
  @Test
  void allThatIsUnusualInOneActIsTold() throws Exception {
    handOut(0, "0000/1", "1");
    clerk.register(0, "recall", "0000/1", "--reason", "misprint");
    handOut(1, "0000/1", "2");
    assertThat(clerk.err)
        .startsWith("error: 0000/1 is recalled and not to be handed out: misprint;")
        .contains("\nerror: Elm already holds copy 1 of 0000/1; allowed: one copy of an issue");
    Path table = folder.resolve("table.csv");
    Files.writeString(table, "issue,person\n0000/1,Rowan\n0000/1,ROWAN\n");
    clerk.register(1, "batch", "hand-out", table.toString());
    assertThat(clerk.err)
        .contains(":2:1: error: 0000/1 is recalled", ":3:1: error: 0000/1 is recalled")
        .contains(":3:1: error: ROWAN already holds copy 2 of 0000/1")
        .endsWith("error: nothing was entered\n");
    assertThat(clerk.register(0, "out")).doesNotContain("Rowan", "ROWAN");
    clerk.at("2027-06-01T09:00");
    handOut(1, "0000/1", "2");
    assertThat(clerk.err.lines()).filteredOn(line -> line.startsWith("error: ")).hasSize(3);
    signOff(1, "0000/1", "2027-07-01");
    assertThat(clerk.err)
        .startsWith("error: 0000/1 is recalled, and nobody is to be signed off on it: misprint")
        .contains("\nerror: 0000/1 expired on 2027-05-31 04:00, and nobody is to be signed off");
    clerk.register(0, "batch", "hand-out", table.toString(), "--confirm");
  }

  /** The mileage alone fits many lines, and an extension needs something to extend. */
  @Test
  void aNoticeThatMayBeAMistakeIsRefusedUntilItIsConfirmed() throws Exception {
    String astray =
        Clerk.entry("T 1", 900, 1100, 30, "2026-11-28 04:00", "further notice")
            .replace("route: Invented line 000, ", "");
    clerk.notice(1, "n1", astray);
    assertThat(clerk.err)
        .contains("pack-0000.yaml: error: the notice may be a mistake\n  T 1: it names no route,")
        .contains("Invented line 000: its mileage may be another line's", "--confirm \"T 1\"\n")
        .contains("error: nothing was issued: the notice has to be confirmed");
    String extended = Clerk.entry("T 7", 900, 1100, 30, "2026-11-28 04:00", "2026-12-28 04:00");
    clerk.notice(1, "n7", extended.replace("in force", "extended"));
    assertThat(clerk.err)
        .contains("  T 7: it is extended, but no pack has it: it would be taken as new\n");
    assertThat(clerk.register(0, "issues")).doesNotContain("0000/2");
    clerk.notice(0, "n1", astray, "--confirm", "T 1");
    assertThat(clerk.out).contains("0000: issue 2 takes the place of 1");
  }

  /** Nobody tells them apart on paper: an easing of the one would leave the other in force. */
  @Test
  void aReferenceThatLooksLikeAnotherIsRefusedUntilItIsConfirmed() throws Exception {
    String hour = "2026-11-28 04:00";
    clerk.notice(0, "n1", Clerk.entry("T 1", 900, 1100, 30, hour, "further notice"));
    for (String alike : List.of("T  1", "t 1", "\u0422 1")) {
      clerk.notice(1, "n2", Clerk.entry(alike, 1500, 1600, 30, hour, "further notice"));
      assertThat(clerk.err)
          .contains("\n  " + alike + ": it looks like T 1, but is typed otherwise: it would be")
          .contains("--confirm \"" + alike + "\"\n", "nothing was issued");
    }
    String both =
        Clerk.entry("T 2", 1500, 1600, 30, hour, "further notice")
            + Clerk.entry("T  2", 1700, 1800, 30, hour, "further notice");
    clerk.notice(1, "n3", both);
    assertThat(clerk.err).contains("\n  T 2: it looks like T  2,", "\n  T  2: it looks like T 2,");
    String extended = Clerk.entry("T  1", 1500, 1600, 30, hour, "further notice");
    clerk.notice(1, "n4", extended.replace("in force", "extended"));
    assertThat(clerk.err)
        .as("one confirmation is for all that is told")
        .contains("  T  1: it is extended, but no pack has it", "  T  1: it looks like T 1,");
    clerk.notice(0, "n2", extended, "--confirm", "T  1");
    assertThat(clerk.out).contains("0000: issue 3 takes the place of 2");
  }

  /** A mistyped day in an extension would end a restriction that is to continue. */
  @Test
  void anExtensionThatEndsSoonerIsRefusedUntilItIsConfirmed() throws Exception {
    String hour = "2026-11-28 04:00";
    clerk.notice(0, "n1", Clerk.entry("T 1", 900, 1100, 30, hour, "2027-01-15 04:00"));
    String sooner =
        Clerk.entry("T 1", 900, 1100, 30, hour, "2026-12-20 04:00").replace("in force", "extended");
    clerk.notice(1, "n2", sooner);
    assertThat(clerk.err)
        .contains("  T 1: it is extended, but would end on 2026-12-20 04:00, before the pack has")
        .contains("--confirm \"T 1\"\n", "nothing was issued");
    clerk.notice(0, "n2", sooner, "--confirm", "T 1");
    clerk.notice(0, "n3", sooner.replace("2026-12-20", "2027-02-20"));
    assertThat(clerk.out).contains("0000: issue 4 takes the place of 3");
  }

  /** A mistyped speed in an easing would tighten the restriction. */
  @Test
  void whatIsEasedToALowerSpeedIsRefusedUntilItIsConfirmed() throws Exception {
    String hour = "2026-11-28 04:00";
    clerk.notice(0, "n1", Clerk.entry("T 1", 900, 1100, 30, hour, "further notice"));
    String slower =
        Clerk.entry("T 1", 900, 1100, 20, hour, "further notice").replace("in force", "eased");
    clerk.notice(1, "n2", slower);
    assertThat(clerk.err)
        .contains("  T 1: it is eased, but its speed is lower than the pack has\n")
        .contains("--confirm \"T 1\"\n", "nothing was issued");
    clerk.notice(0, "n2", slower, "--confirm", "T 1");
    assertThat(clerk.out).contains("0000: issue 3 takes the place of 2");
    clerk.notice(0, "n3", slower.replace("20 km/h", "60 km/h"));
    assertThat(clerk.out).contains("0000: issue 4 takes the place of 3");
  }

  /** A mistyped reference would take out a restriction that the notice is not about. */
  @Test
  void aNoticeThatIsForAnotherPlaceThanItsReferenceIsRefusedUntilItIsConfirmed() throws Exception {
    String hour = "2026-11-28 04:00";
    clerk.notice(0, "n1", Clerk.entry("T 1", 900, 1100, 30, hour, "further notice"));
    String over = Clerk.entry("T 1", 1500, 1600, 30, hour, "further notice");
    String withdrawn = over.replace("in force", "withdrawn");
    clerk.notice(1, "n2", withdrawn);
    assertThat(clerk.err)
        .contains("pack-0000.yaml: error: the notice may be a mistake\n  T 1: it is for 1.50 km to")
        .contains("1.60 km, but the pack has it for 0.90 km to 1.10 km, which is another place\n")
        .contains("--confirm \"T 1\"\n", "nothing was issued");
    clerk.notice(1, "n3", over);
    assertThat(clerk.register(0, "issues")).contains("0000/2").doesNotContain("0000/3");
    clerk.notice(0, "n2", withdrawn, "--confirm", "T 1");
    assertThat(clerk.out).contains("0000: issue 3 takes the place of 2");
    clerk.notice(0, "n3", over);
    assertThat(clerk.out).as("withdrawn before").contains("0000: issue 4 takes the place of 3");
  }

  /** The ride may have been before the next issue; but nobody signs by the old one unawares. */
  @Test
  void aSignOffOnASupersededIssueIsAskedFor() throws Exception {
    clerk.notice(0, "n1", Clerk.entry("T 1", 900, 1100, 30, "2026-11-28 04:00", "further notice"));
    clerk.register(0, "checked", "0000/2", "--by", "Another Clerk", "--out", clerk.papers());
    signOff(1, "0000/1", "2027-01-04");
    assertThat(clerk.err)
        .isEqualTo(
            "error: 0000/1 is no longer in use, and nobody is to be signed off on it: superseded by"
                + " issue 2; allowed: an issue that is in use; or, if the ride was made by this one,"
                + " the same with --confirm\n  Maybe 0000/2\n");
    Path table = folder.resolve("table.csv");
    Files.writeString(
        table, "issue,person,direction,assessor,lapses\n0000/1,Elm,Out,Rowe,2027-01-04\n");
    clerk.register(1, "batch", "sign-off", table.toString());
    assertThat(clerk.err).contains(":2:1: error: 0000/1 is no longer in use");
    assertThat(clerk.register(0, "signed")).isEqualTo("NONE\n");
    assertThat(signOff(0, "0000/1", "2027-01-04", "--confirm")).contains("Elm signed off, Out");
    assertThat(signOff(0, "0000/2", "2027-01-04")).contains("Elm signed off, Out");
  }

  @Test
  void whatIsWrongIsSaidOfWhatIsWrong() throws Exception {
    Path other = Files.copy(clerk.pack, clerk.pack.resolveSibling("pack-0009.yaml"));
    String wrong = Clerk.entry("T 1", 99_000, 99_100, 30, "2026-11-28 04:00", "further notice");
    clerk.notice(1, "n1", wrong);
    assertThat(clerk.out)
        .contains("2 packs: 2 for which the notice is wrong\n")
        .doesNotContain("cannot be read");
    Files.delete(other);
    clerk.notice(0, "n2", wrong.replace("99.", "1."));
    clerk.register(1, "recall", "0000/1", "--reason", "misprint");
    assertThat(clerk.err)
        .isEqualTo(
            "error: 0000/1 is already out of use: superseded by issue 2; allowed: an issue that is in"
                + " force, or is to be\n");
    String folder = this.folder.resolve("none").toString();
    clerk.register(1, "backup", folder + "/b.zip");
    assertThat(clerk.err)
        .isEqualTo(
            folder + ": error: there is no such folder\n  Maybe make it first, or name another\n");
  }

  /** Nor is a notice listed that is on no other paper. */
  @Test
  void nobodyIsBriefedOnAnIssueThatWasCalledBack() throws Exception {
    clerk.register(0, "hand-out", "0000/1", "--to", "Elm");
    clerk.notice(0, "n1", Clerk.entry("T 1", 900, 1100, 30, "2026-11-28 04:00", "further notice"));
    assertThat(clerk.register(0, "to-brief")).contains("Elm", "0000/2");
    assertThat(clerk.register(0, "notices")).contains("T 1", "0000/2");
    assertThat(clerk.register(0, "recall", "0000/2", "--reason", "wrong mileage"))
        .contains(
            "warning: nothing of 0000 is in force now\n  Maybe put the data right and reissue. Or raise");
    assertThat(clerk.register(0, "to-brief")).isEqualTo("NONE\n");
    assertThat(clerk.register(0, "notices")).isEqualTo("NONE\n");
  }

  /** What is in force today stands on the issue of today, though the next is made already. */
  @Test
  void noticesOfTheIssueInForceAndOfTheOneToComeAreListed() throws Exception {
    clerk.notice(
        0, "n0", Clerk.entry("T 0", 900, 1100, 30, "2026-11-28 04:00", "2026-12-02 04:00"));
    clerk.notice(
        0,
        "n1",
        Clerk.entry("T 1", 1500, 1600, 30, "2026-12-07 04:00", "further notice"),
        "--valid-from",
        "2026-12-07 04:00");
    assertThat(clerk.register(0, "notices", "--csv").lines())
        .anyMatch(l -> l.startsWith("T 0,") && l.contains(",in force,0000/2"))
        .anyMatch(l -> l.startsWith("T 1,") && l.endsWith(",begins,0000/3"));
    assertThat(clerk.register(0, "recall", "0000/3", "--reason", "not on that day"))
        .as("what it superseded ends all the same")
        .isEqualTo(
            "0000/3: recalled: not on that day\n"
                + "warning: from 2026-12-07 04:00 nothing of 0000 is in force\n"
                + "  Maybe put the data right before then, and reissue. Or raise the number in the pack"
                + " file, then: gradepost register enter PACK.yaml\n");
    assertThat(clerk.register(0, "notices")).contains("T 0").doesNotContain("T 1");
  }

  /** Whoever recalls the last of what was to come has to know that nothing is left. */
  @Test
  void everyRecallTellsThatNothingIsInForce() throws Exception {
    String hour = "2026-12-07 04:00";
    clerk.notice(
        0, "n1", Clerk.entry("T 1", 900, 1100, 30, hour, "further notice"), "--valid-from", hour);
    assertThat(clerk.register(0, "recall", "0000/1", "--reason", "misprint"))
        .contains("warning: from 2026-11-29 09:00 to 2026-12-07 04:00 nothing of 0000 is in force");
    assertThat(clerk.register(0, "recall", "0000/2", "--reason", "misprint as well"))
        .contains("warning: nothing of 0000 is in force now\n");
  }

  @Test
  void anIssueIsInForceUntilTheNextIsValid() throws Exception {
    Path file = folder.resolve("n1.yaml");
    Files.writeString(
        file,
        "gradepost: restrictions\nnotices:\n"
            + Clerk.entry("T 1", 900, 1100, 30, "2026-12-07 04:00", "further notice"));
    clerk.office(
        0,
        "reissue",
        clerk.routes.toString(),
        "--notice",
        file.toString(),
        "--out",
        clerk.papers(),
        "--valid-from",
        "2026-12-07 04:00");
    assertThat(clerk.register(0, "issues")).contains("superseded by issue 2 from 2026-12-07 04:00");
    assertThat(clerk.register(0, "issues", "--in-force")).contains("0000/1");
    handOut(0, "0000/1", "1");
    assertThat(verify(0, 1))
        .contains("genuine, ")
        .endsWith("  0000/1 is still in force: superseded by issue 2 from 2026-12-07 04:00\n");
    assertThat(clerk.register(0, "out", "--in-force")).contains("0000/1");
    clerk.register(0, "checked", "0000/2", "--by", "Another Clerk", "--out", clerk.papers());
    handOut(0, "0000/2", "1");
    assertThat(verify(0, 2)).endsWith("  0000/2 is in force only from 2026-12-07 04:00\n");
    clerk.at("2026-12-07T04:00");
    verify(1, 1);
    assertThat(clerk.err).contains("error: 0000/1 is not in force any more: superseded by issue 2");
    handOut(1, "0000/1", "2");
    assertThat(clerk.err).contains("Maybe 0000/2");
    assertThat(clerk.register(0, "issues", "--in-force")).doesNotContain("0000/1");
    clerk.at("2027-06-01T09:00");
    handOut(1, "0000/2", "2");
    assertThat(clerk.err).contains("0000/2 expired on 2027-05-31 04:00, and is not to be handed");
    signOff(1, "0000/2", "2027-07-01");
    assertThat(clerk.err)
        .contains("0000/2 expired on 2027-05-31 04:00, and nobody is to be signed off on it");
    assertThat(signOff(0, "0000/2", "2027-07-01", "--confirm")).contains("Elm signed off, Out");
    verify(1, 2);
    assertThat(clerk.err).contains("error: 0000/2 expired on 2027-05-31 04:00");
    assertThat(clerk.types(2, "reissue", "x", "--valid-from", "2027-02-30 04:00")).isEmpty();
    assertThat(clerk.err).contains("2027-02-30 04:00\" is not a date and hour");
  }
}
