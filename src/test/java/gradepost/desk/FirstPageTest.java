package gradepost.desk;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.Depot;
import gradepost.app.SyntheticNetwork;
import gradepost.app.store.Store;
import gradepost.desk.entry.Door;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A desk that has begun, but has not read its packs yet: who comes first need not wait. */
class FirstPageTest {
  private static final List<String> LISTS = List.of("/", "/packs", "/learn", "/bench");

  @TempDir Path folder;

  /** What is still to be read; nothing is until the test says so. */
  private final Queue<Runnable> held = new ArrayDeque<>();

  private DeskServer desk;
  private Browser browser;

  @BeforeEach
  void open() throws Exception {
    Path routes = folder.resolve("routes");
    new SyntheticNetwork(routes, 1).packs(2, 3);
    Files.writeString(routes.resolve("pack-broken.yaml"), "gradepost: pack\nroute: none.yaml\n");
    Store store = Store.of(folder.resolve("none.db").toString(), Optional.empty());
    desk =
        DeskServer.start(
            new DeskServer.Served(routes, store, folder.resolve("papers"), Depot.NOON),
            Door.here(0),
            held::add);
    browser = new Browser(desk).letIn();
  }

  @AfterEach
  void close() {
    desk.close();
  }

  private void read() {
    held.remove().run();
  }

  @Test
  void aListSaysWhatIsStillToBeRead() throws Exception {
    for (String list : LISTS) {
      HttpResponse<String> page = browser.get(list);
      assertThat(page.headers().firstValue("Refresh")).as(list).contains("1");
      assertThat(page.body())
          .as(list)
          .contains("3 of 3 packs are still being read.", "</main>")
          .doesNotContain("/packs/0000", "/learn/0000", "No pack", "Nothing wants doing");
    }
    read();
    for (String list : LISTS) {
      HttpResponse<String> page = browser.get(list);
      assertThat(page.headers().firstValue("Refresh")).as(list).isEmpty();
      assertThat(page.body()).as(list).doesNotContain("still being read");
    }
    assertThat(browser.get("/packs").body())
        .contains("/packs/0000", "/packs/0001", "Cannot be read");
    assertThat(browser.get("/").body()).contains("broken cannot be used");
  }

  /** A page of one pack reads that pack, and no other. */
  @Test
  void onePackIsReadAlone() throws Exception {
    assertThat(browser.get("/packs/none").statusCode()).isEqualTo(404);
    assertThat(browser.get("/packs/0001").body()).contains("/learn/0001/", "Fingerprint");
    assertThat(browser.get("/packs").body())
        .contains("2 of 3 packs are still being read.", "/packs/0001")
        .doesNotContain("/packs/0000");
    assertThat(browser.get("/packs/0000").statusCode()).isEqualTo(200);
    assertThat(browser.get("/").body())
        .contains("1 of 3 packs is still being read.")
        .doesNotContain("Nothing wants doing", "broken");
    assertThat(browser.get("/packs/broken").body()).contains("none.yaml");
    assertThat(browser.get("/packs").headers().firstValue("Refresh")).isEmpty();
    read();
    assertThat(browser.get("/packs").body()).contains("/packs/0000", "/packs/0001");
  }

  /** Where an answer has to know all packs, it waits for them. */
  @Test
  void aFormWaitsForAll() throws Exception {
    assertThat(browser.get("/rides").body()).contains("0000: ", "0001: ");
    assertThat(browser.get("/notice").body()).contains("Invented line 000", "Invented line 001");
    assertThat(browser.get("/packs").headers().firstValue("Refresh")).isEmpty();
  }

  @Test
  void anEmptyFolderSaysSoAtOnce() throws Exception {
    Path empty = Files.createDirectories(folder.resolve("empty"));
    Store store = Store.of(folder.resolve("none.db").toString(), Optional.empty());
    try (DeskServer none =
        DeskServer.start(
            new DeskServer.Served(empty, store, empty, Depot.NOON), Door.here(0), held::add)) {
      HttpResponse<String> today = new Browser(none).letIn().get("/");
      assertThat(today.body()).contains("No pack lies in this folder yet");
      assertThat(today.headers().firstValue("Refresh")).isEmpty();
    }
  }
}
