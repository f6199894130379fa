package gradepost.cli;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.SyntheticNetwork;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Property: a clerk comes through his day by the command line alone, whatever the database. */
abstract class ClerksDay {
  private static final String NOBODY = "NONE\n";

  @TempDir Path folder;
  private Path routes = Path.of("");
  private String register = "";
  private String err = "";

  /** Where a register can be made. */
  abstract String fresh() throws Exception;

  @BeforeEach
  void network() throws Exception {
    register = fresh();
    routes = folder.resolve("routes");
    new SyntheticNetwork(routes, 2).packs(2, 7);
  }

  private String run(int code, String... words) {
    StringWriter out = new StringWriter();
    StringWriter told = new StringWriter();
    List<String> args = new ArrayList<>(List.of(words));
    args.addAll(List.of("--register", register));
    args.addAll(List.of("--archive", folder.resolve("archive").toString()));
    int done = Main.run(new PrintWriter(out), new PrintWriter(told), args.toArray(new String[0]));
    err = told.toString();
    assertThat(done).as(() -> String.join(" ", words) + ": " + out + err).isEqualTo(code);
    return out.toString();
  }

  private String register(String... words) {
    return run(0, with("register", words));
  }

  private void refused(String why, String... words) {
    run(1, with("register", words));
    assertThat(err).startsWith("error: " + why);
  }

  private static String[] with(String first, String... words) {
    List<String> all = new ArrayList<>(List.of(first));
    all.addAll(List.of(words));
    return all.toArray(new String[0]);
  }

  private String reissue(String name, String notice) throws Exception {
    Path file = Files.writeString(folder.resolve(name), notice);
    String papers = folder.resolve("papers").toString();
    return run(
        0,
        "reissue",
        routes.toString(),
        "--notice",
        file.toString(),
        "--out",
        papers,
        "--by",
        "Ash",
        "--emergency");
  }

  private static String text(String pdf) throws Exception {
    try (PDDocument document = Loader.loadPDF(Path.of(pdf).toFile())) {
      return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
    }
  }

  private static String in(long days) {
    return LocalDate.now(ZoneId.systemDefault()).plusDays(days).toString();
  }

  private void signOff(String person, String lapses) {
    assertThat(
            register(
                "sign-off",
                "0000/1",
                "--person",
                person,
                "--direction",
                "Out",
                "--assessor",
                "Rowe",
                "--lapses",
                lapses))
        .isEqualTo("0000/1: %s signed off, Out, until %s\n".formatted(person, lapses));
  }

  @Test
  void fromTheFirstIssueToAnEmptyRecallList() throws Exception {
    String papers = folder.resolve("papers").toString();
    assertThat(register("enter", routes.toString(), "--out", papers, "--by", "Ash"))
        .contains("0000/1 registered", "0001/1 registered");
    register("hand-out", "0000/1", "--copy", "1", "--to", "N. O'Thorne");
    register("hand-out", "0000/1", "--copy", "2", "--to", "mess room; \u00c4hrenfeld");
    refused(
        "copy 1 of 0000/1 is already handed out to N. O'Thorne",
        "hand-out",
        "0000/1",
        "--copy",
        "1",
        "--to",
        "Elm");
    signOff("Elm", in(30));
    assertThat(register("to-brief", "--csv").lines().map(l -> l.replaceAll("\\d{4}-[^,]*", "*")))
        .containsExactly(
            "person,issue,issued,holds,last known issue",
            "N. O'Thorne,0000/1,*,copy 1 of 0000/1,",
            "\"mess room; \u00c4hrenfeld\",0000/1,*,copy 2 of 0000/1,");
    register("acknowledge", "0000/1", "--person", "N. O'Thorne");
    assertThat(register("lapsing", "--days", "29")).doesNotContain("Elm");
    assertThat(register("lapsing", "--days", "30")).contains("sign-off, Out", "Elm", in(30));

    assertThat(reissue("n.yaml", SyntheticNetwork.notice("T 1", 0, "Out", 900, 20)))
        .contains("0000: issue 2 takes the place of 1: ", "0001: not touched");
    assertThat(folder.resolve("papers/0000-issue-2/0000-out-3-car-affected.pdf")).exists();
    assertThat(register("to-brief", "--csv").lines().map(l -> l.replaceAll("\\d{4}-[^,]*", "*")))
        .containsExactly(
            "person,issue,issued,holds,last known issue",
            "Elm,0000/2,*,,1",
            "N. O'Thorne,0000/2,*,copy 1 of 0000/1,1",
            "\"mess room; \u00c4hrenfeld\",0000/2,*,copy 2 of 0000/1,");
    assertThat(register("out", "--csv"))
        .contains("0000/1,1,N. O'Thorne,", "0000/1,2,\"mess room; \u00c4hrenfeld\",")
        .contains("superseded by issue 2");

    refused(
        "0000/2 is a DRAFT: only its preparer has checked it",
        "hand-out",
        "0000/2",
        "--copy",
        "1",
        "--to",
        "N. O'Thorne");
    refused(
        "Ash prepared or entered 0000/2 and cannot check it; allowed: another person\n",
        "checked",
        "0000/2",
        "--by",
        "Ash");
    assertThat(register("checked", "0000/2", "--by", "Rowe", "--out", papers))
        .contains("0000/2: checked by Rowe", "wrote ");
    String print = folder.resolve("to-print.pdf").toString();
    assertThat(register("print", print).lines().map(l -> l.replaceAll("pages .*", "pages")))
        .containsExactly(
            "Elm, 0000/2: pages",
            "N. O'Thorne, 0000/2: pages",
            "mess room; \u00c4hrenfeld, 0000/2: pages",
            "wrote " + print);
    assertThat(text(print))
        .containsSubsequence(
            "For Elm",
            "Supplement Issue 2",
            "For N. O'Thorne",
            "Supplement Issue 2",
            "For mess room",
            "Who is affected");
    String labels = folder.resolve("labels.pdf").toString();
    refused("there is such a file already: " + print, "print", print, "--labels");
    assertThat(register("print", labels, "--labels", "--skip", "1"))
        .isEqualTo("wrote " + labels + "\n");
    assertThat(text(labels).strip())
        .isEqualTo(
            "Elm 0000/2, slip only N. O'Thorne 0000/2, for copy 1"
                + " mess room; \u00c4hrenfeld 0000/2, for copy 2");
    refused(
        "a sheet has no room for this number of labels; allowed: 1 to 4 across, 1 to 12 down",
        "print",
        folder.resolve("none.pdf").toString(),
        "--labels",
        "--across",
        "5");
    assertThat(folder.resolve("papers/0000-issue-2/0000-out-3-car-supplement.html"))
        .content()
        .contains("</html>")
        .doesNotContain("DRAFT", "src=\"http", "url(http");
    register("hand-out", "0000/2", "--copy", "1", "--to", "N. O'Thorne");
    register("acknowledge", "0000/2", "--person", "Elm");
    refused("Elm has already acknowledged 0000/2", "acknowledge", "0000/2", "--person", "Elm");
    register("acknowledge", "0000/2", "--person", "N. O'Thorne");
    assertThat(register("return", "0000/1", "--copy", "1")).contains("copy 1 is back");
    assertThat(register("return", "0000/1", "--copy", "2", "--destroyed"))
        .contains("copy 2 is destroyed");
    assertThat(register("to-brief")).isEqualTo(NOBODY);
    refused("copy 2 of 0000/1 is not out", "return", "0000/1", "--copy", "2");
    assertThat(register("out", "--csv").lines().skip(1).toList())
        .singleElement(org.assertj.core.api.InstanceOfAssertFactories.STRING)
        .startsWith("0000/2,1,N. O'Thorne,")
        .endsWith(",,");

    register("recall", "0000/2", "--reason", "misprint");
    assertThat(register("out", "--csv")).endsWith(",recalled: misprint,\n");
    register("return", "0000/2", "--copy", "1");
    assertThat(register("out")).isEqualTo(NOBODY);
    assertThat(register("issues", "--csv").lines())
        .hasSize(4)
        .anyMatch(l -> l.startsWith("0000/1,") && l.contains("superseded by issue 2"))
        .anyMatch(l -> l.startsWith("0000/2,") && l.contains("misprint"));
    assertThat(run(0, "reproduce", "0000/2")).contains("0000/2 reproduced byte for byte");
    assertThat(reissue("n.yaml", SyntheticNetwork.notice("T 1", 0, "Out", 900, 20)))
        .contains("0000: issue 2 has this notice");
    assertThat(
            register("log", "--csv")
                .lines()
                .map(l -> l.replaceFirst("^[^,]*,[^,]*,", "").replaceFirst("(,[^,]*){3}$", "")))
        .containsExactly(
            "what,issue",
            "issued,0000/1",
            "papers and files written,0000/1",
            "issued,0001/1",
            "papers and files written,0001/1",
            "handed out copy 1 to N. O'Thorne,0000/1",
            "\"handed out copy 2 to mess room; \u00c4hrenfeld\",0000/1",
            "\"Elm signed off, Out\",0000/1",
            "N. O'Thorne acknowledged,0000/1",
            "issued,0000/2",
            "papers and files written,0000/2",
            "checked,0000/2",
            "handed out copy 1 to N. O'Thorne,0000/2",
            "Elm acknowledged,0000/2",
            "N. O'Thorne acknowledged,0000/2",
            "took back copy 1,0000/1",
            "noted as destroyed copy 2,0000/1",
            "recalled: misprint,0000/2",
            "took back copy 1,0000/2");
  }

  @Test
  void aSignOffIsForADirectionOfThePackAndForATimeToCome() {
    register("enter", routes.toString(), "--out", folder.resolve("papers").toString());
    refused(
        "0000/1 has no direction Ouf; allowed: Out\n  Maybe Out\n",
        "sign-off",
        "0000/1",
        "--person",
        "Elm",
        "--direction",
        "Ouf",
        "--assessor",
        "Rowe",
        "--lapses",
        in(30));
    String last = LocalDate.now(ZoneId.systemDefault()).plusMonths(6).toString();
    for (String lapses : List.of(in(0), "2020-01-31", in(200))) {
      refused(
          "a sign-off of %s cannot lapse on %s; allowed: a day from %s to %s, as the policy"
              .formatted(in(0), lapses, in(1), last),
          "sign-off",
          "0000/1",
          "--person",
          "Elm",
          "--direction",
          "Out",
          "--assessor",
          "Rowe",
          "--lapses",
          lapses);
    }
    assertThat(register("log")).doesNotContain("Elm");
    signOff("Elm", last);
  }
}
