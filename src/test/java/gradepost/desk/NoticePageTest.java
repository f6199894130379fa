package gradepost.desk;

import static java.util.stream.Collectors.joining;
import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.Depot;
import gradepost.app.SyntheticNetwork;
import gradepost.app.store.Store;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
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
    assertThat(written()).isZero();

    String nameless = browser.post("/notice/issue", form(right, "")).body();
    assertThat(nameless).contains("there is no name for the register");
    assertThat(written()).isZero();

    String issued = browser.post("/notice/issue", form(right, "B Clerk")).body();
    assertThat(issued).contains("Issued and registered");
    assertThat(written()).isGreaterThan(4);
    assertThat(browser.get("/register?list=acts").body()).contains("B Clerk", "issued");
    String pack = browser.get("/packs/0000").body();
    assertThat(pack).contains("DRAFT", "superseded", "/packs/0000/issues/2/");
    String paper =
        pack.replaceFirst("(?s).*?href=\"(/packs/0000/issues/2/[^\"]+\\.html)\".*", "$1");
    assertThat(browser.get(paper).body()).contains("<!DOCTYPE html>", "issue 2");
    String again = browser.post("/notice", form(right, "")).body();
    assertThat(again).contains("already");
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
}
