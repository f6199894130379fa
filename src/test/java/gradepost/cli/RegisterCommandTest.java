package gradepost.cli;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.SyntheticNetwork;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Property: every act and every list answers on the streams that the program was given. */
@Tag("slow")
class RegisterCommandTest {
  @TempDir Path folder;
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int run(String words) {
    List<String> args = new ArrayList<>(List.of(("register " + words).split(" ")));
    args.addAll(List.of("--register", folder.resolve("reg/register.db").toString()));
    return Main.run(new PrintWriter(out), new PrintWriter(err), args.toArray(new String[0]));
  }

  @Test
  void whatToDoIsAskedFor() {
    assertThat(Main.run(new PrintWriter(out), new PrintWriter(err), "register")).isEqualTo(2);
    assertThat(err.toString())
        .startsWith("What to do is missing: ")
        .contains("enter", "hand-out", "return", "placed", "recall", "to-brief", "log");
  }

  private String refused(int code, String words) {
    err.getBuffer().setLength(0);
    assertThat(run(words)).as(words).isEqualTo(code);
    return err.toString();
  }

  @Test
  void aMistakeIsToldInWordsForPeople() throws IOException {
    assertThat(refused(1, "issues"))
        .isEqualTo(
            "error: there is no register %s%n  Maybe name it with --register, or begin one: gradepost register enter PACK.yaml%n"
                .formatted(folder.resolve("reg/register.db")));
    Path pack = Files.createDirectories(folder.resolve("routes"));
    new SyntheticNetwork(pack, 2).packs(2, 7);
    assertThat(run("enter " + pack + " --out " + folder.resolve("papers"))).isZero();
    err.getBuffer().setLength(0);
    good("hand-out 0000/1 --copy 7 --to Thorne");
    assertThat(refused(1, "return 0000/1 --copy 6"))
        .isEqualTo("error: copy 6 of 0000/1 is not out; out of it: copy 7, Thorne\n");
    assertThat(refused(1, "return 0001/1 --copy 6")).contains("is not out; out of it: NONE");
    assertThat(run("recall 0000/1 --reason misprint")).isZero();
    assertThat(refused(1, "recall 0000/1 --reason other"))
        .isEqualTo("error: 0000/1 is already recalled: misprint\n");
    assertThat(refused(1, "acknowledge 971e --person Elm"))
        .isEqualTo(
            "error: the register has no issue 971e; allowed: an issue as gradepost register issues"
                + " lists it, such as valley/4, or eight digits of its fingerprint or more\n");
    assertThat(refused(1, "acknowledge 0001 --person Elm"))
        .contains("the register has no issue 0001")
        .endsWith("\n  Maybe 0001/1\n");
    String signOff = "sign-off 0000/1 --person Elm --direction Out --assessor Rowe --lapses ";
    assertThat(refused(2, signOff + "25.11.2027"))
        .startsWith(
            "Invalid value for option '--lapses': \"25.11.2027\" is not a day; allowed: a day, such as"
                + " 2026-11-30");
    assertThat(refused(2, "lapsing --days many"))
        .startsWith(
            "Invalid value for option '--days': \"many\" is not a number; allowed: a whole number, such"
                + " as 28");
    assertThat(
            Main.run(
                new PrintWriter(out),
                new PrintWriter(err),
                "reissue",
                pack.toString(),
                "--valid-from",
                "2026-11-30"))
        .isEqualTo(2);
    assertThat(err.toString())
        .contains(
            "Invalid value for option '--valid-from': \"2026-11-30\" is not a date and hour; allowed:"
                + " a date and hour, such as '2026-11-30 04:00'");
  }

  @Test
  void aNameInAnotherScriptIsAskedForInLatinLetters() throws IOException {
    Path pack = Files.createDirectories(folder.resolve("routes"));
    new SyntheticNetwork(pack, 2).packs(2, 7);
    assertThat(run("enter " + pack + " --out " + folder.resolve("papers"))).isZero();
    assertThat(refused(1, "acknowledge 0000/1 --person 日本"))
        .startsWith("error: the person's name \"日本\" has 日 (U+65E5) in it, which the papers")
        .contains("with --latin-name");
    assertThat(refused(1, "acknowledge 0000/1 --person 日本 --latin-name 日"))
        .contains("the person's name \"日\"");
    assertThat(refused(2, "acknowledge 0000/1 --person Elm --by 日本"))
        .startsWith("the name in --by \"日本\" has 日 (U+65E5) in it");
    err.getBuffer().setLength(0);
    assertThat(good("acknowledge 0000/1 --person 日本 --latin-name Nihon"))
        .isEqualTo("0000/1: acknowledged by Nihon\n");
    assertThat(good("hand-out 0000/1 --copy 7 --to 日本 --latin-name Nihon"))
        .isEqualTo("0000/1: copy 7 handed out to Nihon\n");
    String signOff = "sign-off 0000/1 --direction Out --assessor Rowe --lapses 2027-01-04";
    assertThat(good(signOff + " --person 日本 --latin-name Nihon"))
        .isEqualTo("0000/1: Nihon signed off, Out, until 2027-01-04\n");
    assertThat(good("out")).contains("Nihon").doesNotContain("日");
    assertThat(good("log")).contains("Nihon acknowledged", "noted that Nihon is written 日本");
  }

  @Test
  void everyOptionSaysWhatItIs() {
    for (String act : List.of("enter", "hand-out", "return", "acknowledge", "sign-off", "recall")) {
      out.getBuffer().setLength(0);
      assertThat(run(act + " --help")).isZero();
      assertThat(out.toString().lines().map(String::strip))
          .as(act)
          .noneMatch(line -> line.matches("--[a-z-]+=[A-Z]+"));
    }
  }

  private String good(String words) {
    out.getBuffer().setLength(0);
    assertThat(run(words)).as(() -> words + ": " + err).isZero();
    assertThat(err.toString()).isEmpty();
    return out.toString();
  }

  @Test
  void everyActIsSaidAndStandsInTheLists() throws IOException {
    Path pack = Files.createDirectories(folder.resolve("routes"));
    new SyntheticNetwork(pack, 2).packs(2, 7);
    assertThat(run("enter " + pack + " --by Ash --out " + folder.resolve("papers"))).isZero();
    assertThat(out.toString()).contains("0000");
    String soon = LocalDate.now(ZoneId.systemDefault()).plusDays(9).toString();
    // Notes on what the invented line leaves out.
    err.getBuffer().setLength(0);
    assertThat(good("hand-out 0000/1 --copy 7 --to Thorne"))
        .contains("copy 7 handed out to Thorne");
    assertThat(good("out")).contains("0000/1", "7", "Thorne");
    assertThat(good("return 0000/1 --copy 7")).contains("copy 7 is back");
    assertThat(good("out")).isEqualTo("NONE\n");
    assertThat(
            good("sign-off 0000/1 --person Elm --direction Out --assessor Rowe --lapses " + soon))
        .contains("Elm signed off, Out, until " + soon);
    assertThat(good("lapsing --days 10")).contains("Elm", soon);
    assertThat(good("to-brief")).isEqualTo("NONE\n");
    assertThat(good("acknowledge 0000/1 --person Elm")).contains("acknowledged by Elm");
    assertThat(good("placed 0000/1")).contains("noted that its files are written");
    assertThat(good("recall 0000/1 --reason misprint")).contains("recalled: misprint");
    assertThat(good("issues --csv")).contains("0000/1", "0001/1").contains("recalled");
    assertThat(good("log --json")).contains("Ash", "Thorne", "Elm", "misprint");
    assertThat(run("placed 0000/4")).isEqualTo(1);
    assertThat(err.toString()).contains("0000/4");
    assertThat(run("placed")).isEqualTo(2);
    assertThat(err.toString()).contains("gradepost register placed");
  }
}
