package gradepost.desk;

import static java.util.stream.Collectors.joining;
import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.Depot;
import gradepost.app.SyntheticNetwork;
import gradepost.app.shelf.NoticeDesk;
import gradepost.app.store.Store;
import java.net.URLEncoder;
import java.net.http.HttpResponse;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A clerk takes in a notice at the desk: a wrong one, the same put right, and issues it. */
class NoticePageTest {
  @TempDir Path folder;
  private Path papers = Path.of("");
  private Store store = Store.of("none.db", Optional.empty());
  private DeskServer desk;
  private Browser browser;
  private String token = "";

  @BeforeEach
  void open() throws Exception {
    Path routes = folder.resolve("routes");
    new SyntheticNetwork(routes, 2).packs(2, 7);
    papers = folder.resolve("papers");
    store = Store.of(folder.resolve("reg/register.db").toString(), Optional.empty());
    Depot.begun(store);
    desk = DeskServer.start(new DeskServer.Served(routes, store, papers, Depot.NOON), 0);
    browser = new Browser(desk).letIn();
    token =
        browser
            .get("/notice")
            .body()
            .replaceFirst("(?s).*name=\"token\" value=\"([^\"]+)\".*", "$1");
  }

  @AfterEach
  void close() {
    desk.close();
  }

  private String form(String notice, String by) {
    return "token=" + coded(token) + "&by=" + coded(by) + "&text=" + coded(notice);
  }

  private static String coded(String text) {
    return URLEncoder.encode(text, StandardCharsets.UTF_8);
  }

  private long written() throws Exception {
    if (!Files.exists(papers)) {
      return 0;
    }
    try (Stream<Path> files = Files.walk(papers)) {
      return files.filter(Files::isRegularFile).count();
    }
  }

  @Test
  void aWrongOneIsToldAndARightOneIsIssued() throws Exception {
    String right = SyntheticNetwork.notice("T 1", 0, "Out", 900, 30);
    String wrong = browser.post("/notice", form(right.replace("30 km/h", "30 leagues"), "")).body();
    assertThat(wrong)
        .contains("notice.yaml:", "leagues")
        .doesNotContain("/notice/issue", "/tmp", folder.toString() + "/notice");
    String looked = browser.post("/notice", form(right, "")).body();
    assertThat(looked).contains("What it touches", "/notice/issue").doesNotContain("/tmp/notice");
    assertThat(looked).contains("class=\"before\" points=", "class=\"now\" points=", ", new<");
    String[] runs = looked.split("class=\"now\" points=\"", 2);
    assertThat(runs[1].substring(0, runs[1].indexOf('"')))
        .isNotEqualTo(looked.replaceFirst("(?s).*?class=\"before\" points=\"([^\"]+)\".*", "$1"));
    assertThat(written()).isZero();
    assertThat(browser.get("/").body()).doesNotContain("is a draft");

    String nameless = browser.post("/notice/issue", form(right, "")).body();
    assertThat(nameless).contains("there is no name for the register");
    assertThat(written()).isZero();

    String issued = browser.ended(browser.post("/notice/issue", form(right, "B Clerk")));
    assertThat(issued).contains("Issued and registered", "Begun by B Clerk", "supplement");
    assertThat(browser.get("/notice").body())
        .contains("A notice of B Clerk was issued: its papers")
        .doesNotContain("No register is kept here yet");
    assertThat(browser.get("/").body())
        .contains("<a href=\"/packs/0000\">0000/2 is a draft: somebody other than its preparer");
    assertThat(written()).isGreaterThan(4);
    assertThat(browser.get("/register?list=acts").body()).contains("B Clerk", "issued");
    String pack = browser.get("/packs/0000").body();
    assertThat(pack).contains("DRAFT", "superseded", "/packs/0000/issues/2/");
    String paper =
        pack.replaceFirst("(?s).*?href=\"(/packs/0000/issues/2/[^\"]+\\.html)\".*", "$1");
    assertThat(browser.get(paper).body()).contains("<!DOCTYPE html>", "issue 2");
    String again = browser.post("/notice", form(right, "")).body();
    assertThat(again).contains("already");

    assertThat(browser.get("/").body()).contains("<a href=\"/notice\">Notice T 1, ");
    String twice = browser.ended(browser.post("/notice/issue", form(right, "B Clerk")));
    assertThat(twice)
        .contains("No issue was made", "issue 2 has this notice")
        .doesNotContain("Issued and registered", "checks each new issue");
  }

  @Test
  void whatWasTickedIsKeptWhereItIsNotDone() throws Exception {
    String wrong = SyntheticNetwork.notice("T 1", 0, "Out", 900, 30).replace("30 km/h", "30");
    String sent = form(wrong, "B Clerk") + "&emergency=on&confirm=T+1";
    String page = browser.ended(browser.post("/notice/issue", sent));
    assertThat(page)
        .contains("Not done, or not all of it", "name=\"confirm\" value=\"T 1\"")
        .contains("name=\"emergency\" value=\"on\"");
    assertThat(browser.ended(browser.post("/notice/issue", form(wrong, "B Clerk"))))
        .doesNotContain("name=\"emergency\"");
  }

  /** What was edited under Lines is issued where it was edited, without a notice. */
  @Test
  void whatWasEditedIsIssuedWithoutANotice() throws Exception {
    browser.ended(
        browser.post(
            "/notice/issue", form(SyntheticNetwork.notice("T 1", 0, "Out", 900, 30), "B Clerk")));
    assertThat(browser.post("/notice", form(" ", "B Clerk")).body())
        .contains("there is no notice; nothing was entered");
    String edits = form("", "B Clerk") + "&edits=yes";
    assertThat(browser.post("/notice", edits).body())
        .contains("0000: not touched", "The edited files")
        .doesNotContain("<textarea");
    Path route = folder.resolve("routes/line-000/route.yaml");
    String was = Files.readString(route);
    String edited = was.replaceFirst("speed: (\\d)0 km/h", "speed: $15 km/h");
    assertThat(edited).isNotEqualTo(was);
    Files.writeString(route, edited);
    assertThat(browser.post("/notice", edits).body())
        .contains("0000: issue 3 would take the place of 2", "formaction=\"/notice/issue\"");
    assertThat(browser.ended(browser.post("/notice/issue", edits)))
        .contains("Issued and registered", "0000: issue 3 takes the place of 2");
    assertThat(browser.get("/register?list=issues").body()).contains("0000/3</td>");
  }

  /** Tonight is prepared what changes in a fortnight. */
  @Test
  void anIssueMayBeValidFromALaterHour() throws Exception {
    String right = SyntheticNetwork.notice("T 1", 0, "Out", 900, 30);
    browser.ended(browser.post("/notice/issue", form(right, "B Clerk")));
    String later = right.replace("in force", "withdrawn");
    assertThat(browser.post("/notice/issue", form(later, "B Clerk") + "&valid=soon").body())
        .contains("&quot;soon&quot; is not a date and hour from which an issue is valid")
        .contains("value=\"soon\"");
    browser.ended(
        browser.post("/notice/issue", form(later, "B Clerk") + "&valid=2026-12-20T04:00"));
    assertThat(browser.get("/register?list=issues").body())
        .contains("0000/3</td>", "2026-12-20 04:00</td>");
  }

  /** Twelve people at once, one of them with a slip of the hand; then a mistake is taken back. */
  @Test
  void manyPeopleAtOnceAndAMistakeTakenBack() throws Exception {
    String staff = IntStream.range(0, 12).mapToObj(i -> "Driver " + i).collect(joining("\n"));
    String who = "token=" + coded(token) + "&by=A+Clerk";
    assertThat(browser.post("/register", who + "&act=staff&people=" + coded(staff)).body())
        .contains("Driver 11 joined the list of staff");
    String wrong =
        browser
            .post("/register", who + "&act=acknowledge&issue=0000&people=" + coded("Driver 1"))
            .body();
    assertThat(wrong).contains("role=\"alert\"", "nothing was entered").doesNotContain("/tmp/");
    assertThat(browser.post("/register", who + "&act=staff&people=").body())
        .contains("nobody is named");
    assertThat(
            browser.post("/register", "token=" + coded(token) + "&act=staff&people=X&by=").body())
        .contains("there is no name for the register");
    List<String> acts = browser.get("/register.csv?list=acts").body().lines().toList();
    String last = acts.get(acts.size() - 1).split(",", -1)[5];
    assertThat(
            browser.post("/register/undo", who + "&entry=" + last + "&reason=typed+twice").body())
        .contains("role=\"status\"");
    assertThat(browser.post("/register/undo", who + "&entry=x").body())
        .contains("is not the number of an entry");
    assertThat(browser.get("/register?list=staff").body())
        .contains("Driver 10")
        .doesNotContain("Driver 11");
  }

  @Test
  void withoutTheTokenNothingIsIssued() throws Exception {
    String right = SyntheticNetwork.notice("T 1", 0, "Out", 900, 30);
    String form = form(right, "B Clerk").replaceFirst("token=[^&]+", "token=other");
    assertThat(browser.post("/notice/issue", form).statusCode()).isEqualTo(403);
    assertThat(
            browser
                .post("/notice/issue", form(right, "B Clerk"), "Origin", "http://evil.example")
                .statusCode())
        .isEqualTo(403);
    assertThat(new Browser(desk).post("/notice/issue", form(right, "B Clerk")).statusCode())
        .isEqualTo(403);
    assertThat(written()).isZero();
  }

  /** Whoever sends a form by a program sees at once whether it was done. */
  @Test
  void whatIsRefusedIsAnsweredAsRefused() throws Exception {
    String right = SyntheticNetwork.notice("T 1", 0, "Out", 900, 30);
    assertThat(browser.post("/notice", form(right, "")).statusCode()).isEqualTo(200);
    HttpResponse<String> wrong =
        browser.post("/notice", form(right.replace("30 km/h", "30 leagues"), ""));
    assertThat(wrong.statusCode()).isEqualTo(422);
    assertThat(wrong.body()).contains("leagues", "See what it touches");
    assertThat(browser.post("/notice", form(" ", "")).statusCode()).isEqualTo(400);
    assertThat(browser.post("/notice/issue", form(right, "")).statusCode()).isEqualTo(400);
    assertThat(browser.post("/notice", form(right, "") + "&valid=soon").statusCode())
        .isEqualTo(400);
    String who = "token=" + coded(token) + "&by=A+Clerk";
    Map<String, Integer> acts =
        Map.of(
            "&act=staff&people=Elm", 200,
            "&act=staff&people=", 400,
            "&act=acknowledge&issue=0000&people=Elm", 409);
    for (Map.Entry<String, Integer> act : acts.entrySet()) {
      assertThat(browser.post("/register", who + act.getKey()).statusCode())
          .as(act.getKey())
          .isEqualTo(act.getValue());
    }
    assertThat(browser.post("/register/undo", who + "&entry=x").statusCode()).isEqualTo(400);
    HttpResponse<String> undone = browser.post("/register/undo", who + "&entry=99&reason=x");
    assertThat(undone.statusCode()).isEqualTo(409);
    assertThat(undone.body()).contains("the register has no entry 99", "Take an entry back");
    assertThat(browser.get("/register?pack=none").statusCode()).isEqualTo(400);
    assertThat(browser.get("/register").statusCode()).isEqualTo(200);
  }

  /** What is far too large, or made to burst, is refused and the desk goes on. */
  @Test
  void hostileNoticesAreRefused() throws Exception {
    assertThat(browser.post("/notice", form("x".repeat(2_000_000), "")).statusCode())
        .isBetween(400, 499);
    String bomb =
        "gradepost: restrictions\na: &a [x,x,x,x,x,x,x,x]\nb: &b [*a,*a,*a,*a,*a,*a,*a,*a]\n"
            + "c: &c [*b,*b,*b,*b,*b,*b,*b,*b]\nd: &d [*c,*c,*c,*c,*c,*c,*c,*c]\n";
    for (String hostile :
        new String[] {
          bomb, "!!javax.script.ScriptEngineManager []", "</textarea><script>", "=1+1"
        }) {
      String page = browser.post("/notice", form(hostile, "")).body();
      assertThat(page).contains("role=\"alert\"").doesNotContain("<script>");
    }
    assertThat(browser.get("/").statusCode()).isEqualTo(200);
  }

  /** The fields of the form are read and checked like a file, and places are picked from a list. */
  @Test
  void aFormIsReadAsANoticeWouldBe() throws Exception {
    String page = browser.get("/notice?route=Line+0").body();
    assertThat(page).contains("datalist id=\"places\"", "platform 1", "value=\"Out\"");
    String route = page.replaceFirst("(?s).*name=\"route\" value=\"([^\"]+)\".*", "$1");
    String fields =
        "token=%s&route=%s&reference=T+7&type=temporary&status=in+force&directions=Out"
            + "&reason=wet+%%22bed%%22&imposed=2026-11-26T04:00&until=further+notice"
            + "&from=0.900+km&to=1.100+km&speed=";
    String form = fields.formatted(coded(token), coded(route));
    String right = browser.post("/notice/filled", form + "30+km/h").body();
    assertThat(right)
        .contains("What it touches", "would take the place of 1", "wet \\&quot;bed\\&quot;")
        .contains("formaction=\"/notice/issue\"");
    assertThat(browser.post("/notice/filled", form + "30+leagues").body())
        .contains("role=\"alert\"", "leagues")
        .doesNotContain("formaction=\"/notice/issue\"");
    assertThat(browser.post("/notice/filled", form + "30+km/h&hours=22:00+to+05:00").body())
        .contains("hours: &quot;22:00 to 05:00&quot;", "would take the place of 1")
        .contains("name=\"hours\"");
    assertThat(browser.post("/notice/filled", form + "30+km/h&hours=night").body())
        .contains("role=\"alert\"", "night");
    assertThat(browser.post("/notice/filled", form + "30+km/h&lines=Nowhere").body())
        .contains("role=\"alert\"", "Nowhere");
    String planted = form + coded("30 km/h\"\n    boards: []\n  - {reference: \"X");
    assertThat(browser.post("/notice/filled", planted).body()).contains("role=\"alert\"");
    assertThat(browser.post("/notice/filled", "token=" + coded(token) + "&route=x").statusCode())
        .isEqualTo(404);
    assertThat(written()).isZero();
  }

  /** A spreadsheet writes semicolons, a byte order mark, or the code page of its country. */
  @Test
  void aFileIsTakenAsASpreadsheetWritesIt() throws Exception {
    String table =
        "reference;type;status;route;from;to;directions;speed;reason;imposed;until\r\n"
            + "T 8;temporary;in force;%s;0.900 km;1.100 km;Out;30 km/h;caf\u00e9 works;"
            + "2026-11-26 04:00;further notice\r\n";
    String route =
        browser
            .get("/notice")
            .body()
            .replaceFirst("(?s).*name=\"route\" value=\"([^\"]+)\".*", "$1");
    String text = table.formatted(route);
    byte[] saved = text.getBytes(Charset.forName("windows-1252"));
    assertThat(browser.upload("/notice", token, "notice.csv", saved).body())
        .contains("caf\u00e9 works", "would take the place of 1");
    for (byte[] bytes :
        List.of(
            ("\uFEFF" + text).getBytes(StandardCharsets.UTF_8),
            ("\uFEFF" + text).getBytes(StandardCharsets.UTF_16LE))) {
      assertThat(NoticeDesk.text(bytes)).isEqualTo(text.replace("\r\n", "\n"));
    }
    assertThat(browser.upload("/notice", token, "x.csv", new byte[3_000_000]).body())
        .contains("longer than the desk takes");
    assertThat(browser.upload("/notice", "wrong", "x.csv", new byte[10]).statusCode())
        .isEqualTo(403);
  }

  /** What was broken off by the end of the desk is found again, with its text. */
  @Test
  void aWorkIsFoundAgainByAnotherRunOfTheDesk() throws Exception {
    String wrong = SyntheticNetwork.notice("T 9", 0, "Out", 900, 30).replace("km/h", "leagues");
    HttpResponse<String> begun = browser.post("/notice/issue", form(wrong, "B Clerk"));
    String work = begun.headers().firstValue("Location").orElse("");
    assertThat(browser.ended(begun)).contains("Not done, or not all of it", "leagues");
    assertThat(browser.get("/notice").body())
        .contains(work, "A notice of B Clerk was not issued, or not in every pack");
    Path file = papers.resolve(".at-work").resolve(work.replaceFirst(".*/", "") + ".work");
    Files.writeString(file, Files.readString(file).replace("state=NOT_DONE", "state=AT_WORK"));
    desk.close();
    desk =
        DeskServer.start(
            new DeskServer.Served(folder.resolve("routes"), store, papers, Depot.NOON), 0);
    browser = new Browser(desk).letIn();
    token = browser.token("/notice");
    assertThat(browser.get("/notice").body()).contains("was broken off", work);
    assertThat(browser.get(work).body())
        .contains("was stopped before this was done", "T 9", "See again what it touches");
    assertThat(browser.get("/notice/work/..%2f..%2fsecret").statusCode()).isBetween(400, 404);
    assertThat(browser.get("/notice/work/none").statusCode()).isEqualTo(404);
  }
}
