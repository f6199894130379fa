package gradepost.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * Property: what a register knows is whole: papers are told from changed ones, a missing register
 * is not begun again, a backup is restored whole, and what is kept of people goes in its time.
 */
@Tag("slow")
class KeptRegisterTest extends BegunRegister {
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
                + " registered for it. Somebody changed it, or brief made it outside the register");
    byte[] pdf = Files.readAllBytes(issue.resolve("0000-out-3-car.pdf"));
    pdf[pdf.length - 2] ^= 1;
    Path flipped = Files.write(folder.resolve("other.pdf"), pdf);
    assertThat(verify(1, flipped, here)).contains("but it is none of the 5 papers");
    assertThat(verify(0, seventy, "no/register.db"))
        .endsWith(
            "  there is no register "
                + folder.resolve("no/register.db")
                + ": only its fingerprint was compared, not its other content\n");
    Path json = issue.resolve("0000-out-3-car.json");
    assertThat(verify(0, json, here)).contains(": genuine, byte for byte 0000-out-3-car.json of");
    String handOver = Files.readString(json);
    Path changed =
        Files.writeString(folder.resolve("other.json"), handOver.replaceFirst("\\d\\.\\d", "7.7"));
    assertThat(verify(1, changed, here))
        .contains("error: its fingerprint is that of 0000/1, but it is none of the 5 papers");
    Files.writeString(changed, handOver.replaceFirst("(?m)\\{", ""));
    assertThat(verify(1, changed, here))
        .contains(
            "error: no file in the register has its content, and it has no fingerprint: it was changed")
        .doesNotContain("page");
    assertThat(verify(1, changed, "no/register.db"))
        .contains("error: no fingerprint can be read in it: it was changed, or it is no hand-over");
    run(0, "recall", "0000/1", "--reason", "misprint");
    assertThat(verify(1, paper, here))
        .contains("genuine, ", "error: 0000/1 is recalled; do not use it: misprint");
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
    assertThat(run(0, "backup", zip, "--data", routes))
        .startsWith("backed up the register and ")
        .doesNotContain("--data")
        .contains("wrote " + zip);
    assertThat(run(0, "backup", folder.resolve("small.zip").toString()))
        .contains("  packs, routes, stock and policies are not in it; to keep them too: --data F");
    assertThat(moved(0, "second/register.db", "restore", zip))
        .matches("restored the register and \\d+ files, each by its digest\n  not restored: .*\n");
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
