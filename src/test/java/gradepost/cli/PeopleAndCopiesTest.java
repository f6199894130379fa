package gradepost.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Property: a clerk deals with many people at once, and puts right what was entered wrongly. */
@Tag("slow")
class PeopleAndCopiesTest extends BegunRegister {
  /** As a spreadsheet saves it: with ";" between the cells, and not in UTF-8. */
  @Test
  void aTableOfASpreadsheetIsRead() throws Exception {
    Path table = folder.resolve("table.csv");
    Files.write(
        table, "issue;person\r\n0000;Zo\u00eb\r\n".getBytes(Charset.forName("windows-1252")));
    assertThat(run(0, "batch", "hand-out", table.toString()))
        .isEqualTo("0000/1: copy 1 handed out to Zo\u00eb\n");
    assertThat(err).contains("table.csv:1:1: note: ").contains("Windows-1252");
  }

  @Test
  void manyAreEnteredAtOnceAndNumberedByTheRegister() throws Exception {
    assertThat(batch(0, "hand-out", "issue,person\n0000,Elm\n0000,Rowan\n0001/1,Elm\n"))
        .isEqualTo(
            "0000/1: copy 1 handed out to Elm\n0000/1: copy 2 handed out to Rowan\n"
                + "0001/1: copy 1 handed out to Elm\n");
    assertThat(run(0, "hand-out", "0000/1", "--to", "Sallow"))
        .isEqualTo("0000/1: copy 3 handed out to Sallow\n");
    run(0, "return", "0000/1", "--copy", "3");
    assertThat(run(0, "hand-out", "0000/1", "--to", "Sallow")).contains("copy 4");
    assertThat(batch(0, "acknowledge", "person;issue\nElm;0000\nRowan;0000\n"))
        .isEqualTo("0000/1: acknowledged by Elm\n0000/1: acknowledged by Rowan\n");
    String lapses = LocalDate.now(ZoneId.systemDefault()).plusDays(30).toString();
    assertThat(
            batch(
                0,
                "sign-off",
                "issue,person,direction,assessor,lapses\n0000,Elm,Out,Rowe," + lapses + "\n"))
        .isEqualTo("0000/1: Elm signed off, Out, until " + lapses + "\n");
    assertThat(batch(0, "return", "issue,person,destroyed\n0000/1,Elm,\n0000/1,Rowan,yes\n"))
        .isEqualTo("0000/1: copy 1 of Elm is back\n0000/1: copy 2 of Rowan is destroyed\n");
    assertThat(run(0, "to-brief", "--csv").lines().map(l -> l.replaceAll("\\d{4}-[^,]*", "*")))
        .containsExactly(
            "person,issue,issued,holds,last known issue",
            "Elm,0001/1,*,copy 1 of 0001/1,",
            "Sallow,0000/1,*,copy 4 of 0000/1,");
  }

  @Test
  void aTableThatIsEnteredTwiceGivesNobodyASecondCopyUnlessThatIsMeant() throws Exception {
    String table = "issue,person\n0000,Elm\n0000,Bob Rowan\n";
    batch(0, "hand-out", table);
    String out = run(0, "out");
    batch(1, "hand-out", table + "0000,Sallow\n");
    String file = folder.resolve("table.csv").toString();
    assertThat(err)
        .isEqualTo(
            file
                + ":2:1: error: Elm already holds copy 1 of 0000/1; allowed: one copy of an issue"
                + " for each person; or, if one more is meant, the same with --confirm\n"
                + file
                + ":3:1: error: Bob Rowan already holds copy 2 of 0000/1; allowed: one copy of an"
                + " issue for each person; or, if one more is meant, the same with --confirm\n"
                + "error: nothing was entered\n");
    run(1, "hand-out", "0000/1", "--to", "Rowan, Bob");
    assertThat(err).startsWith("error: Rowan, Bob already holds copy 2 of 0000/1; allowed: one");
    assertThat(run(0, "out")).isEqualTo(out);
    assertThat(run(0, "hand-out", "0000/1", "--to", "Rowan, Bob", "--confirm")).contains("copy 3");
    assertThat(run(0, "batch", "hand-out", table(table).toString(), "--confirm"))
        .isEqualTo("0000/1: copy 4 handed out to Elm\n0000/1: copy 5 handed out to Bob Rowan\n");
    batch(1, "hand-out", "issue,person\n0001,Ash\n0001,ASH\n");
    assertThat(err).contains(":3:1: error: ASH already holds copy 1 of 0001/1");
    assertThat(run(0, "out", "--pack", "0001")).isEqualTo("NONE\n");
  }

  @Test
  void allThatIsWrongInATableIsToldAndThenNothingIsEntered() throws Exception {
    String log = run(0, "log");
    Path file = folder.resolve("table.csv");
    batch(
        1,
        "hand-out",
        "issue,person,copy\n0000,Elm,7\n0009,Elm,\n0000,,\n0000,Rowan,7\n0000,A\u001Bsh,\n");
    assertThat(err)
        .startsWith(
            file
                + ":3:1: error: the register has no issue 0009; allowed: an issue, such as valley/4,"
                + " or the name of a pack for its latest issue\n"
                + file
                + ":4:1: error: the cell of the column person is empty\n"
                + file
                + ":5:1: error: copy 7 of 0000/1 is already handed out to Elm\n"
                + file
                + ":6:1: error: the holder's name ")
        .endsWith("error: nothing was entered\n");
    batch(1, "hand-out", "isue,person\n0000,Elm\n");
    assertThat(err)
        .isEqualTo(
            file
                + ":1:1: error: there is no column isue; allowed: issue, person, copy\n  Maybe issue\n"
                + file
                + ":1:1: error: the column issue is missing; allowed: a table with the columns issue,"
                + " person\n");
    batch(1, "return", "issue,person\n0000,Elm\n");
    assertThat(err).contains(":2:1: error: Elm holds no copy of 0000/1\n");
    batch(1, "sign-off", "issue,person,direction,assessor,lapses\n0000,Elm,Out,ELM,2027-01-04\n");
    assertThat(err).contains(":2:1: error: ELM cannot sign off Elm: they are the same person");
    assertThat(run(0, "log")).isEqualTo(log);
  }

  @Test
  void whoIsNotOnTheListOfStaffIsAskedFor() throws Exception {
    assertThat(batch(0, "staff", "person\nA Brannock\nR Elm\nmess room\n"))
        .endsWith("mess room joined the list of staff\n");
    run(1, "hand-out", "0000/1", "--to", "A Brannok");
    assertThat(err)
        .isEqualTo(
            "error: A Brannok is not on the list of staff; allowed: a name on the list; for a new"
                + " one, first: gradepost register staff add NAME\n  Maybe A Brannock\n");
    run(0, "staff", "add", "A Brannok");
    run(0, "hand-out", "0000/1", "--to", "A Brannok");
    run(0, "acknowledge", "0000/1", "--person", "R Elm");
    assertThat(run(0, "to-brief", "--csv")).contains("A Brannok,0000/1,");
    run(1, "hand-out", "0000/1", "--to", "Elm, R.");
    assertThat(err).endsWith("Maybe R Elm\n");
    assertThat(run(0, "staff", "leave", "A Brannok"))
        .isEqualTo("1 left the list of staff\nwarning: A Brannok still holds copy 1 of 0000/1\n");
    assertThat(run(0, "to-brief")).isEqualTo("NONE\n");
    assertThat(run(0, "out")).contains("A Brannok");
    assertThat(run(0, "staff", "list", "--csv"))
        .contains("A Brannock,", "R Elm,", "mess room,")
        .doesNotContain("A Brannok,");
    run(1, "staff", "add", "r  elm");
    assertThat(err).isEqualTo("error: r  elm is already on the list of staff\n");
  }

  @Test
  void anEntryIsTakenBackByAnotherThatSaysWhy() throws Exception {
    run(0, "hand-out", "0000/1", "--copy", "7", "--to", "Elm");
    run(0, "return", "0000/1", "--copy", "7");
    run(0, "acknowledge", "0000/1", "--person", "Elm");
    run(0, "recall", "0000/1", "--reason", "misprint");
    List<String> log =
        run(0, "log", "--csv").lines().map(l -> l.replaceFirst("(.*),([^,]*),$", "$2 $1")).toList();
    String out = entry(log, "handed out copy 7 to Elm");
    String back = entry(log, "took back copy 7");
    run(1, "undo", out, "--reason", "wrong person");
    assertThat(err)
        .isEqualTo(
            "error: entry %s (handed out copy 7 to Elm) cannot be taken back while the copy is entered as back, by entry %s\n  Maybe take that entry back first\n"
                .formatted(out, back));
    assertThat(run(0, "undo", back, "--reason", "it was copy 6"))
        .isEqualTo("took back entry " + back + ", 0000/1: took back copy 7\n");
    assertThat(run(0, "out")).contains("7", "Elm");
    run(0, "undo", out, "--reason", "wrong person");
    assertThat(run(0, "out")).isEqualTo("NONE\n");
    run(0, "undo", entry(log, "recalled: misprint"), "--reason", "it was the other issue");
    assertThat(run(0, "hand-out", "0000/1", "--copy", "7", "--to", "Rowan")).contains("copy 7");
    run(0, "undo", entry(log, "Elm acknowledged"), "--reason", "another's slip");
    run(0, "acknowledge", "0000/1", "--person", "Elm");
    assertThat(run(0, "issues", "--in-force", "--csv")).contains("0000/1,");
    run(1, "undo", out, "--reason", "again");
    assertThat(err).startsWith("error: entry " + out + " (handed out copy 7 to Elm) is already");
    run(1, "undo", entry(log, "issued"), "--reason", "no");
    assertThat(err).contains("(issued) cannot be taken back; allowed: a hand-out, a return,");
    run(1, "undo", "9999", "--reason", "no");
    assertThat(err).startsWith("error: the register has no entry 9999; allowed: ");
    run(1, "undo", back, "--reason", " ");
    assertThat(err).startsWith("error: the reason is blank");
    assertThat(run(0, "log", "--csv"))
        .contains("took back entry " + out + ", handed out copy 7 to Elm: wrong person");
    assertThat(run(0, "log", "--in-force")).doesNotContain("\u0000").contains("Rowan");
    assertThat(run(0, "log", "--in-force", "--csv").lines())
        .noneMatch(l -> l.contains(",handed out copy 7 to Elm,"));
  }

  @Test
  void listsAreNarrowedDown() throws Exception {
    batch(0, "hand-out", "issue,person\n0000,Elm\n0000,Rowan\n0001/1,Elm\n");
    String tomorrow = LocalDate.now(ZoneId.systemDefault()).plusDays(1).toString();
    assertThat(run(0, "out", "--csv", "--pack", "0001").lines()).hasSize(2);
    assertThat(run(0, "out", "--csv", "--person", "elm").lines()).hasSize(3);
    assertThat(run(0, "out", "--csv", "--person", "Elm", "--pack", "0000").lines()).hasSize(2);
    assertThat(run(0, "out", "--since", tomorrow)).isEqualTo("NONE\n");
    assertThat(run(0, "log", "--csv", "--person", "Rowan").lines()).hasSize(2);
    assertThat(run(0, "to-brief", "--csv", "--person", "Elm").lines()).hasSize(3);
    assertThat(run(0, "issues", "--csv", "--in-force").lines().skip(1))
        .allMatch(l -> l.endsWith(",driver instructor,North"));
    run(0, "recall", "0000/1", "--reason", "misprint");
    assertThat(run(0, "issues", "--csv", "--in-force").lines()).hasSize(2);
    assertThat(run(0, "out", "--csv", "--in-force").lines()).hasSize(2);
    assertThat(run(0, "staff", "list", "--pack", "0000")).isEqualTo("NONE\n");
    assertThat(run(0, "notices", "--pack", "0000", "--person", "Elm")).isEqualTo("NONE\n");
    run(1, "out", "--pack", "00000");
    assertThat(err).startsWith("error: the register has no pack 00000\n");
    run(1, "to-brief", "--person", "Rowam");
    assertThat(err).isEqualTo("error: nobody in the register is called Rowam\n  Maybe Rowan\n");
  }
}
