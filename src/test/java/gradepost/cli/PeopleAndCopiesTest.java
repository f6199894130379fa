package gradepost.cli;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.SyntheticNetwork;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Property: a clerk deals with many people at once, and puts right what was entered wrongly. */
@Tag("slow")
class PeopleAndCopiesTest {
  @TempDir static Path begun;
  @TempDir Path folder;
  private String err = "";
  private Clock clock = Clock.system(ZoneId.systemDefault());

  /** One register with two packs, copied for each test. */
  @BeforeAll
  static void enter() throws Exception {
    Path routes = begun.resolve("routes");
    new SyntheticNetwork(routes, 2).packs(2, 7);
    StringWriter told = new StringWriter();
    int code =
        Main.run(
            new PrintWriter(told),
            new PrintWriter(told),
            "register",
            "enter",
            routes.toString(),
            "--by",
            "Ash",
            "--depot",
            "North",
            "--out",
            begun.resolve("papers").toString(),
            "--register",
            begun.resolve("reg/register.db").toString());
    assertThat(code).as(told::toString).isZero();
  }

  @AfterAll
  static void nothingElseWasChanged() {
    assertThat(begun.resolve("papers/0000-issue-1")).isDirectory();
  }

  @BeforeEach
  void copy() throws Exception {
    Files.createDirectories(folder.resolve("reg"));
    Files.copy(begun.resolve("reg/register.db"), folder.resolve("reg/register.db"));
  }

  private String run(int code, String... words) {
    StringWriter out = new StringWriter();
    StringWriter told = new StringWriter();
    List<String> args = new ArrayList<>(List.of("register"));
    args.addAll(List.of(words));
    args.addAll(List.of("--register", folder.resolve("reg/register.db").toString()));
    args.addAll(List.of("--archive", begun.resolve("reg/archive").toString()));
    int done =
        Main.run(clock, new PrintWriter(out), new PrintWriter(told), args.toArray(new String[0]));
    err = told.toString();
    assertThat(done).as(() -> String.join(" ", words) + ": " + out + err).isEqualTo(code);
    return out.toString();
  }

  private Path table(String text) throws Exception {
    return Files.writeString(folder.resolve("table.csv"), text);
  }

  private String batch(int code, String act, String text) throws Exception {
    return run(code, "batch", act, table(text).toString());
  }

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
    assertThat(err).contains(":2:1: error: Elm cannot sign off Elm");
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
    run(0, "staff", "leave", "A Brannok");
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

  private static String entry(List<String> log, String what) {
    return log.stream()
        .filter(l -> l.contains("," + what + ","))
        .findFirst()
        .map(l -> l.split(" ", -1)[0])
        .orElseThrow();
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

  private String verify(int code, Path paper, String register) {
    StringWriter out = new StringWriter();
    StringWriter told = new StringWriter();
    int done =
        Main.run(
            new PrintWriter(out),
            new PrintWriter(told),
            "verify",
            paper.toString(),
            "--pack",
            begun.resolve("routes/line-000").toString(),
            "--register",
            folder.resolve(register).toString());
    assertThat(done).as(() -> out.toString() + told).isEqualTo(code);
    return out.toString() + told;
  }

  @Test
  void aChangedPaperIsToldFromAGenuineOne() throws Exception {
    String here = "reg/register.db";
    Path issue = begun.resolve("papers/0000-issue-1");
    Path paper = issue.resolve("0000-out-3-car.html");
    assertThat(verify(0, paper, here))
        .startsWith(paper + ": genuine, byte for byte 0000-out-3-car.html of 0000/1, issued ");
    String html = Files.readString(paper);
    Path seventy =
        Files.writeString(
            folder.resolve("other.html"), html.replaceFirst("[1-6]0(?=\\Wkm/h)", "70"));
    assertThat(html).isNotEqualTo(Files.readString(seventy));
    assertThat(verify(1, seventy, here))
        .startsWith(
            seventy
                + ": error: its fingerprint is that of 0000/1, but it is none of the 5 papers"
                + " registered for it. It was changed, or made apart from them");
    byte[] pdf = Files.readAllBytes(issue.resolve("0000-out-3-car.pdf"));
    pdf[pdf.length - 2] ^= 1;
    Path flipped = Files.write(folder.resolve("other.pdf"), pdf);
    assertThat(verify(1, flipped, here)).contains("but it is none of the 5 papers");
    assertThat(verify(0, seventy, "no/register.db"))
        .endsWith(
            "  without a register: only its fingerprint was compared, not its other content\n");
    run(0, "recall", "0000/1", "--reason", "misprint");
    assertThat(verify(1, paper, here)).contains("genuine, ", "error: 0000/1 is recalled: misprint");
  }

  @Test
  void aMissingRegisterBesideAFullArchiveIsNotBegunAnew() throws Exception {
    Path file = folder.resolve("reg/register.db");
    Files.write(file, new byte[0]);
    run(1, "out");
    assertThat(err)
        .startsWith("error: the register is an empty file: " + file + ", but the archive ")
        .contains("has issues; nothing was done\n  Maybe name the right register");
    Files.delete(file);
    String routes = begun.resolve("routes").toString();
    run(1, "enter", routes, "--out", folder.resolve("papers").toString());
    assertThat(err).startsWith("error: there is no register " + file + ", but the archive ");
    assertThat(file).doesNotExist();
    assertThat(folder.resolve("papers")).doesNotExist();
  }

  @Test
  void anotherDepotsRegisterWantsItsArchive() {
    StringWriter told = new StringWriter();
    int code =
        Main.run(
            new PrintWriter(told),
            new PrintWriter(told),
            "register",
            "enter",
            begun.resolve("routes").toString(),
            "--by",
            "Birch",
            "--depot",
            "South",
            "--register",
            folder.resolve("reg/register.db").toString(),
            "--archive",
            folder.resolve("south").toString());
    assertThat(code).isEqualTo(1);
    assertThat(told.toString())
        .startsWith("error: the archive " + folder.resolve("south") + " has nothing of the issues")
        .contains("such as 0000/1 by Ash");
  }

  private String moved(int code, String register, String... words) {
    StringWriter out = new StringWriter();
    List<String> args = new ArrayList<>(List.of("register"));
    args.addAll(List.of(words));
    args.addAll(List.of("--register", folder.resolve(register).toString()));
    int done =
        Main.run(clock, new PrintWriter(out), new PrintWriter(out), args.toArray(new String[0]));
    assertThat(done).as(out::toString).isEqualTo(code);
    return out.toString();
  }

  @Test
  void aBackupIsRestoredWholeOrNotAtAll() throws Exception {
    batch(0, "hand-out", "issue,person\n0000,Elm\n0001,Elm\n");
    String number =
        run(0, "log", "--csv")
            .lines()
            .filter(l -> l.contains("0001/1,,"))
            .toList()
            .get(0)
            .replaceFirst("(.*),([^,]*),$", "$2");
    run(0, "undo", number, "--reason", "wrong pack");
    String zip = folder.resolve("backup.zip").toString();
    String routes = begun.resolve("routes").toString();
    assertThat(run(0, "backup", zip, "--data", routes)).contains("wrote " + zip);
    run(1, "backup", zip);
    String data = folder.resolve("moved/routes").toString();
    assertThat(moved(0, "moved/register.db", "restore", zip, "--data", data))
        .startsWith("restored the register and ");
    assertThat(moved(0, "moved/register.db", "log", "--csv")).isEqualTo(run(0, "log", "--csv"));
    assertThat(moved(0, "moved/register.db", "out", "--csv")).isEqualTo(run(0, "out", "--csv"));
    assertThat(folder.resolve("moved/routes/line-000/pack-0000.yaml"))
        .hasSameBinaryContentAs(begun.resolve("routes/line-000/pack-0000.yaml"));
    assertThat(moved(0, "moved/register.db", "hand-out", "0000/1", "--to", "Rowan"))
        .contains("copy 2");
    assertThat(moved(1, "moved/register.db", "restore", zip, "--data", data))
        .contains("error: there is a register already", "there is such a file already")
        .endsWith("error: nothing was restored\n");
    byte[] bytes = Files.readAllBytes(Path.of(zip));
    bytes[bytes.length / 2] ^= 1;
    Path broken = Files.write(folder.resolve("broken.zip"), bytes);
    assertThat(moved(1, "broken/register.db", "restore", broken.toString())).contains("error: ");
    assertThat(folder.resolve("broken/register.db")).doesNotExist();
    assertThat(folder.resolve("broken/archive")).doesNotExist();
  }

  private String registerFile() throws Exception {
    byte[] file = Files.readAllBytes(folder.resolve("reg/register.db"));
    return new String(file, StandardCharsets.UTF_8);
  }

  @Test
  void whatIsKeptOfSomebodyWhoLeftIsRemovedWhenItsTimeIsOver() throws Exception {
    LocalDate today = LocalDate.now(ZoneId.systemDefault());
    run(0, "hand-out", "0000/1", "--to", "A Brannock", "--latin-name", "A Brannock");
    run(0, "return", "0000/1", "--copy", "1");
    run(0, "hand-out", "0001/1", "--to", "A Brannock");
    run(0, "acknowledge", "0000/1", "--person", "\u65e5\u672c", "--latin-name", "A Brannock");
    run(0, "acknowledge", "0000/1", "--person", "A Brannock Elm");
    run(
        0,
        "sign-off",
        "0000/1",
        "--person=A Brannock",
        "--direction=Out",
        "--assessor=Rowe",
        "--score=21 of 24",
        "--lapses=" + today.plusDays(30));
    List<String> log =
        run(0, "log", "--csv").lines().map(l -> l.replaceFirst("(.*),([^,]*),$", "$2 $1")).toList();
    String signed = entry(log, "\"A Brannock signed off, Out\"");
    run(0, "undo", signed, "--reason", "A Brannock, not on that day");
    String slip = entry(log, "A Brannock acknowledged");
    assertThat(run(0, "staff", "forget")).startsWith("NONE: nothing is kept of anybody who left");
    run(0, "staff", "add", "A Brannock", "A Brannock Elm");
    run(0, "staff", "leave", "A Brannock");
    assertThat(run(0, "staff", "forget").lines())
        .hasSize(4)
        .contains(
            "kept until %s: A Brannock, left on %s: acknowledgement of 0000/1"
                .formatted(today.plusMonths(36), today),
            "kept, as the copy is still out: A Brannock, left on %s: name beside copy 1 of 0001/1"
                .formatted(today));
    run(0, "backup", folder.resolve("backup.zip").toString());
    clock =
        Clock.fixed(
            today.plusMonths(36).plusDays(2).atStartOfDay().toInstant(ZoneOffset.UTC),
            ZoneOffset.UTC);
    String before = run(0, "log");
    assertThat(run(0, "staff", "forget", "--dry-run"))
        .contains(
            "to be removed: A Brannock, left on %s: sign-off on 0000/1, Out, with its score"
                .formatted(today));
    assertThat(run(0, "log")).isEqualTo(before);
    assertThat(run(0, "staff", "forget").lines().filter(l -> l.startsWith("removed: A Brannock")))
        .hasSize(3);
    assertThat(run(0, "log")).contains("removed records of people who left: 3");
    assertThat(run(0, "out")).contains("A Brannock");
    run(1, "undo", signed, "--reason", "again");
    assertThat(err)
        .startsWith(
            "error: entry %s ((name removed) signed off, Out) cannot be taken back: the name in it was removed by entry "
                .formatted(signed));
    run(0, "return", "0001/1", "--copy", "1");
    assertThat(run(0, "staff", "forget")).startsWith("removed: A Brannock, ");
    assertThat(run(0, "log", "--csv"))
        .contains(
            "(name removed) acknowledged",
            "handed out copy 1 to (name removed)",
            "(name removed) left the list",
            ",noted how (name removed) is written,",
            ": (name removed), not on that day",
            "A Brannock Elm acknowledged",
            "A Brannock Elm joined the list");
    assertThat(registerFile().replace("A Brannock Elm", ""))
        .contains("acknowledged")
        .doesNotContain("Brannock", "\u65e5\u672c", "21 of 24");
    assertThat(run(0, "staff", "list", "--csv")).contains("A Brannock Elm,").hasLineCount(2);
    run(1, "undo", slip, "--reason", "again");
    assertThat(err).contains("the name in it was removed by entry ");
    assertThat(run(0, "staff", "forget")).startsWith("NONE: ");
    assertThat(run(0, "to-brief")).isEqualTo("NONE\n");
    run(0, "backup", folder.resolve("after.zip").toString());
    moved(0, "after/register.db", "restore", folder.resolve("after.zip").toString());
    assertThat(moved(0, "after/register.db", "log", "--csv")).isEqualTo(run(0, "log", "--csv"));
    assertThat(moved(1, "after/register.db", "undo", slip, "--reason", "again"))
        .contains("the name in it was removed by entry ");
    moved(0, "moved/register.db", "restore", folder.resolve("backup.zip").toString());
    assertThat(moved(0, "moved/register.db", "log")).contains("A Brannock acknowledged");
    assertThat(moved(0, "moved/register.db", "staff", "forget").lines()).hasSize(4);
    assertThat(moved(0, "moved/register.db", "log"))
        .doesNotContain("A Brannock acknowledged")
        .contains("(name removed) acknowledged");
  }
}
