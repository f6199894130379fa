package gradepost.desk;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.Depot;
import gradepost.app.SyntheticNetwork;
import gradepost.app.store.Store;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Property: a form that comes too late does nothing, and what was typed in it is not lost. */
class SentAgainTest {
  private static final String NOTICE = "text=a+%3Cb%3E+%22c%22%0D%0Ad&token=old";

  @TempDir Path folder;
  private DeskServer.Served served =
      new DeskServer.Served(Path.of(""), Store.of("", Optional.empty()), Path.of(""), Depot.NOON);
  private Optional<DeskServer> desk = Optional.empty();

  @BeforeEach
  void network() throws Exception {
    Path routes = folder.resolve("routes");
    new SyntheticNetwork(routes, 1).packs(1, 3);
    Store none = Store.of(folder.resolve("none.db").toString(), Optional.empty());
    served = new DeskServer.Served(routes, none, folder.resolve("papers"), Depot.NOON);
  }

  @AfterEach
  void stop() {
    desk.ifPresent(DeskServer::close);
  }

  private Browser byKey() throws Exception {
    desk = Optional.of(DeskServer.start(served, 0));
    return new Browser(desk.get());
  }

  @Test
  void aFormOfAnEarlierSessionIsSentAgainWithTheNewToken() throws Exception {
    Browser browser = byKey().letIn();
    HttpResponse<String> late = browser.post("/notice", NOTICE);
    assertThat(late.statusCode()).isEqualTo(403);
    assertThat(late.body())
        .contains("<form method=\"post\" action=\"/notice\">", "Send it again")
        .contains("name=\"text\" value=\"a &lt;b&gt; &quot;c&quot;\r\nd\"")
        .contains("name=\"token\" value=\"" + browser.token("/notice") + '"')
        .doesNotContain("value=\"old\"");
  }

  @Test
  void whoIsNotLetInKeepsTheTextAndGetsNoToken() throws Exception {
    Browser browser = byKey();
    HttpResponse<String> late = browser.post("/notice", NOTICE);
    assertThat(late.statusCode()).isEqualTo(403);
    assertThat(late.body())
        .contains("This browser has not been let in", "in another tab", "a &lt;b&gt;")
        .contains("name=\"token\" value=\"\"");
    browser.letIn();
    assertThat(browser.post("/notice", NOTICE).body())
        .contains("name=\"token\" value=\"" + browser.token("/notice") + '"');
  }

  @Test
  void aFileIsChosenAgain() throws Exception {
    Browser browser = byKey().letIn();
    String late = browser.upload("/notice", "token", "", "old", "file", "week-48.yaml", "x").body();
    assertThat(late).contains("Choose again: week-48.yaml", "multipart/form-data");
  }

  @Test
  void nothingOfAnotherSiteIsGivenBack() throws Exception {
    Browser browser = byKey().letIn();
    HttpResponse<String> foreign = browser.post("/notice", NOTICE, "Origin", "http://evil.example");
    assertThat(foreign.statusCode()).isEqualTo(403);
    assertThat(foreign.body()).doesNotContain("a &lt;b", "Send it again");
    for (String elsewhere : new String[] {"//evil.example/notice", "/nothing"}) {
      assertThat(browser.post(elsewhere, NOTICE).body()).doesNotContain("Send it again");
    }
  }

  @Test
  void aPasswordIsNeverGivenBack() throws Exception {
    Store store = People.with(folder, Depot.NOON);
    desk =
        Optional.of(
            DeskServer.start(
                new DeskServer.Served(served.folder(), store, served.out(), served.clock()),
                People.BY_ACCOUNT));
    Browser browser = new Browser(desk.get());
    String form = "old=" + Browser.coded(People.PASSWORD) + "&new=x&token=old";
    assertThat(browser.post("/account", form).body())
        .contains("signed out")
        .doesNotContain(People.PASSWORD, "Send it again");
  }
}
