package gradepost.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import gradepost.app.Depot;
import gradepost.app.SyntheticNetwork;
import gradepost.app.store.Store;
import gradepost.desk.entry.DeskFault;
import gradepost.desk.entry.Door;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The desk as a browser meets it: what it shows, and whom it turns away. */
class DeskServerTest {
  private static final String SCRIPT = "<script>alert(1)</script>";

  @TempDir private static Path folder = Path.of("");
  private static DeskServer desk;
  private static Browser browser;

  @BeforeAll
  static void open() throws Exception {
    Path routes = folder.resolve("routes");
    List<Path> packs = new SyntheticNetwork(routes, 1).packs(2, 3);
    Path second = packs.get(1);
    Files.writeString(
        second, Files.readString(second).replaceFirst("(?m)^title:.*$", "title: '" + SCRIPT + "'"));
    Files.writeString(routes.resolve("pack-broken.yaml"), "gradepost: pack\nroute: none.yaml\n");
    Files.writeString(folder.resolve("secret.yaml"), "gradepost: pack\n");
    Store store = Store.of(folder.resolve("reg/register.db").toString(), Optional.empty());
    desk =
        DeskServer.start(
            new DeskServer.Served(routes, store, folder.resolve("papers"), Depot.NOON),
            Door.here(0),
            Runnable::run);
    browser = new Browser(desk).letIn();
  }

  @AfterAll
  static void close() {
    desk.close();
  }

  @Test
  void everyPackIsShownAndItsPapersOpen() throws Exception {
    String packs = browser.get("/packs").body();
    assertThat(packs).contains("/packs/0000", "/packs/0001", "broken", "Cannot be read");
    String pack = browser.get("/packs/0000").body();
    String paper = "/packs/0000/papers/" + stem(pack);
    assertThat(browser.get(paper).body()).contains("<iframe", paper + "/html");
    HttpResponse<String> html = browser.get(paper + "/html");
    assertThat(html.body()).contains("<!DOCTYPE html>").contains("3-car");
    assertThat(html.headers().firstValue("Content-Security-Policy").orElse(""))
        .contains("default-src 'none'")
        .doesNotContain("script-src");
    HttpResponse<byte[]> pdf = browser.bytes(paper + "/pdf");
    assertThat(new String(pdf.body(), 0, 5, StandardCharsets.US_ASCII)).isEqualTo("%PDF-");
    assertThat(pdf.headers().firstValue("Content-Type")).contains("application/pdf");
  }

  /** What is to be done is on the page, and is not seen until it is asked for. */
  @Test
  void theRoadIsLearntPlaceByPlace() throws Exception {
    String learn = "/learn/0000/" + stem(browser.get("/packs/0000").body());
    String first = browser.get(learn).body();
    assertThat(first).contains("<details><summary>").contains("rel=\"next\"");
    assertThat(first).doesNotContain("rel=\"prev\"").doesNotContain("<details open");
    int of = Integer.parseInt(first.replaceFirst("(?s).*Place 1 of (\\d+).*", "$1"));
    String last = browser.get(learn + "?at=" + of).body();
    assertThat(last).contains("rel=\"prev\"").doesNotContain("rel=\"next\"");
    assertThat(browser.get(learn + "?at=999999").body()).isEqualTo(last);
    assertThat(browser.get(learn + "?at=-1;drop").body()).isEqualTo(first);
  }

  /** A state of the bench is an address; what cannot be tried is said, all of it at once. */
  @Test
  void theBenchTriesWhatIsAsked() throws Exception {
    String bench = "/bench/0000/" + stem(browser.get("/packs/0000").body());
    String planned = browser.get(bench).body();
    assertThat(planned).contains("Teaching example, not a briefing", "<polyline", "On the paper: ");
    assertThat(planned).contains("Stops ", "Eased as told, it stops at the mark.");
    String speed = planned.replaceFirst("(?s).*name=\"speed\" value=\"([^\"]+)\".*", "$1");
    assertThat(browser.get(bench + "?of=0&braking=0&speed=" + speed).body()).isEqualTo(planned);
    String later = browser.get(bench + "?later=300").body();
    assertThat(answers(later)).isNotEqualTo(answers(planned)).contains("Passes the ");
    assertThat(browser.get(bench + "?of=1&braking=0&later=300").body()).isEqualTo(planned);
    String wrong = browser.get(bench + "?speed=fast&noticed=99&rail=7&gives=all").body();
    assertThat(wrong)
        .contains("speed: &quot;fast&quot; is not a number", "noticed: ", "0 to 60 s")
        .contains("rail: &quot;7&quot; is none of the choices", "gives: ")
        .doesNotContain("<polyline");
  }

  private static String answers(String page) {
    return page.substring(page.indexOf("class=\"answers\""), page.indexOf("</table>"));
  }

  @Test
  void todayTellsWhatWantsDoing() throws Exception {
    assertThat(browser.get("/").body())
        .contains("broken cannot be used")
        .contains("gradepost check ")
        .contains("No register is kept here yet (<span class=\"path\">" + folder)
        .contains(".db</span>). Enter the first issue of a ");
    assertThat(browser.get("/notice").body())
        .contains(".db</span>), so no notice can be issued. First enter an issue of each ")
        .doesNotContain("Issue it");
    assertThat(browser.get("/register").body())
        .contains("No register is kept here yet (", ".db</span>). Enter the first issue of a ")
        .doesNotContain("error: ");
  }

  @Test
  void whatDataSayIsNeverMarkup() throws Exception {
    for (String page : List.of("/packs", "/packs/0001", "/packs?x=" + "%3Cscript%3E")) {
      assertThat(browser.get(page).body()).doesNotContain("<script>");
    }
    assertThat(browser.get("/packs/0001").body()).contains("&lt;script&gt;");
    assertThat(browser.get("/register?list=issues&person=%22%3E%3Cscript%3E").body())
        .contains("&quot;&gt;&lt;script&gt;")
        .doesNotContain("<script>");
  }

  @ParameterizedTest
  @ValueSource(strings = {"/", "/packs", "/register", "/register.csv", "/nothing", "/enter?key=x"})
  void whoHasNotTheKeyIsNotLetIn(String path) throws Exception {
    HttpResponse<String> answer = new Browser(desk).get(path);
    assertThat(answer.statusCode()).isEqualTo(403);
    assertThat(answer.body()).contains("has not been let in").doesNotContain("0000");
  }

  @Test
  void aNameThatLeadsHereIsNotOurs() throws Exception {
    assertThat(browser.raw("GET /desk.css HTTP/1.1", "Host: evil.example", "Connection: close"))
        .startsWith("HTTP/1.1 421");
    assertThat(browser.raw("GET /desk.css HTTP/1.0", "Connection: close"))
        .doesNotContain("--accent");
  }

  @Test
  void aSessionCannotBeChosenByAnother() throws Exception {
    HttpResponse<String> with = new Browser(desk).get("/packs", "Cookie", "gradepost=chosen");
    assertThat(with.statusCode()).isEqualTo(403);
    HttpResponse<String> in =
        new Browser(desk).get(desk.address().substring(desk.address().indexOf("/enter")));
    assertThat(in.headers().firstValue("Set-Cookie").orElse(""))
        .contains("HttpOnly")
        .contains("SameSite=Strict")
        .doesNotContain("chosen");
  }

  /** Nothing is changed by a form without the token of the session, wherever it stood. */
  @Test
  void aFormOfAnotherSiteChangesNothing() throws Exception {
    for (String form : List.of("", "token=", "token=guess")) {
      assertThat(browser.post("/packs", form).statusCode()).isEqualTo(403);
    }
    assertThat(browser.post("/packs", "token=x", "Origin", "http://evil.example").statusCode())
        .isEqualTo(403);
    assertThat(browser.post("/packs", "", "Sec-Fetch-Site", "cross-site").statusCode())
        .isEqualTo(403);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/packs/..%2fsecret",
        "/packs/%2e%2e",
        "/packs/0000/papers/..%2f..%2fsecret",
        "/packs/0000/papers/none",
        "/packs/0000/issues/1/..%2f..%2fregister.db",
        "/learn/0000/..%2fx",
        "/packs/secret",
        "/desk.css/..%2f..%2fpack.ftlh",
        "/register?list=sqlite_master",
        "/register.csv?list=..%2fregister"
      })
  void nothingIsFoundByAPath(String path) throws Exception {
    HttpResponse<String> answer = browser.get(path);
    assertThat(answer.statusCode()).isBetween(400, 404);
    assertThat(answer.body()).doesNotContain("gradepost: pack");
  }

  @Test
  void everyAnswerTellsTheBrowserToBeStrict() throws Exception {
    for (String path : List.of("/", "/desk.css", "/nothing", "/packs/0000")) {
      var headers = browser.get(path).headers();
      assertThat(headers.firstValue("X-Content-Type-Options")).contains("nosniff");
      assertThat(headers.firstValue("Referrer-Policy")).contains("same-origin");
      assertThat(headers.firstValue("Cache-Control")).contains("no-store");
      assertThat(headers.firstValue("Content-Security-Policy").orElse(""))
          .contains("default-src 'none'", "frame-ancestors 'none'")
          .doesNotContain("unsafe");
      assertThat(headers.firstValue("Server")).isEmpty();
    }
  }

  /** A file that is changed is read again; one that is not is not. */
  @Test
  void aChangedFileIsSeen() throws Exception {
    Path pack = folder.resolve("routes/pack-late.yaml");
    assertThat(browser.get("/packs").body()).doesNotContain("pack-late");
    Files.writeString(pack, "gradepost: pack\n");
    assertThat(browser.get("/packs").body()).contains("late");
    Files.delete(pack);
    assertThat(browser.get("/packs").body()).doesNotContain("late");
  }

  @ParameterizedTest
  @ValueSource(strings = {"0.0.0.0:8384", "192.168.1.4:80", "8384", "127.0.0.1", "127.0.0.1:65536"})
  void itListensOnThisMachineAlone(String address) {
    assertThatThrownBy(
            () -> Door.of(new Door.Wish(address, false, Optional.empty(), false, List.of())))
        .isInstanceOf(DeskFault.class)
        .hasMessageContaining("127.0.0.1");
  }

  @Test
  void aPortThatIsTakenIsTold() {
    int port = Integer.parseInt(desk.address().replaceFirst(".*:(\\d+)/.*", "$1"));
    Store store = Store.of(folder.resolve("none.db").toString(), Optional.empty());
    assertThatThrownBy(
            () -> DeskServer.start(new DeskServer.Served(folder, store, folder, Depot.NOON), port))
        .isInstanceOf(DeskFault.class)
        .hasMessageContaining("cannot listen at");
    assertThatThrownBy(
            () ->
                DeskServer.start(
                    new DeskServer.Served(folder.resolve("no"), store, folder, Depot.NOON), 0))
        .isInstanceOf(DeskFault.class)
        .hasMessageContaining("there is no such folder");
  }

  @Test
  void theDemoLinesAreCopiedAndNeverWrittenOver() throws Exception {
    Path to = folder.resolve("demo");
    DemoFolder.copied(to);
    Path pack = to.resolve("ormel-coast/pack-ormel.yaml");
    assertThat(pack).hasSameTextualContentAs(Path.of("routes/ormel-coast/pack-ormel.yaml"));
    Files.writeString(pack, "mine");
    DemoFolder.copied(to);
    assertThat(pack).hasContent("mine");
  }

  private static String stem(String pack) {
    return pack.replaceFirst("(?s).*?/papers/([^\"/]+)\".*", "$1");
  }
}
