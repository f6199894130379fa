package gradepost.desk;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.Depot;
import gradepost.app.RealRuns;
import gradepost.app.SyntheticNetwork;
import java.io.BufferedReader;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Property: what a desk said to be saved, entered or issued is there after it was killed, and
 * everything else is whole. The desk is a process of its own, ended by SIGKILL at any moment while
 * a clerk saves a file, enters people in the list and issues notices, one after another.
 */
@Tag("long")
class DeskKillsIT {
  private static final int KILLS = Integer.getInteger("gradepost.kills", 500);
  private static final int LONGEST_MS = 8000;
  private static final String FILE = "line-000/route.yaml";

  @TempDir Path folder;
  private Path routes = Path.of("");
  private RealRuns runs = new RealRuns(Path.of(""), Path.of(""));
  private String route = "";

  /** What the clerk was told is there. */
  private int said;

  /** What he asked for last. */
  private int asked;

  @BeforeEach
  void network() throws Exception {
    routes = folder.resolve("routes");
    new SyntheticNetwork(routes, 2).packs(2, 3);
    runs = new RealRuns(routes, folder);
    route = Files.readString(routes.resolve(FILE));
    Depot.begun(runs.store());
  }

  @Test
  void whatWasSaidToBeThereIsThere() throws Exception {
    Random random = new Random(23);
    int[] during = new int[3];
    for (int kill = 0; kill < KILLS; kill++) {
      Process desk =
          DeskProcess.begun(
              runs, folder, "127.0.0.1:0", folder.resolve("err-" + kill % 2).toFile());
      try (BufferedReader words = desk.inputReader(StandardCharsets.UTF_8)) {
        Browser browser = new Browser(words.readLine().replaceFirst("^desk: ", "")).letIn();
        everythingSaidIsThere(browser);
        String token = browser.token("/notice");
        Thread killer = killer(desk, (int) (LONGEST_MS * Math.pow(random.nextDouble(), 2)));
        work(browser, token);
        during[asked % 3]++;
        killer.join();
      } finally {
        desk.destroyForcibly().waitFor();
      }
      runs.whole();
    }
    System.out.printf(
        "%d acts said to be done; of %d kills %d during a save, %d during an entry, %d during an issue%n",
        said, KILLS, during[0], during[1], during[2]);
  }

  private static Thread killer(Process desk, int afterMs) {
    Thread killer =
        new Thread(
            () -> {
              try {
                Thread.sleep(afterMs);
                desk.destroyForcibly().waitFor(1, TimeUnit.MINUTES);
              } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
              }
            });
    killer.start();
    return killer;
  }

  /** One act after another, until the desk is gone. */
  private void work(Browser browser, String token) throws InterruptedException {
    try {
      while (true) {
        asked = said + 1;
        HttpResponse<String> answer = act(browser, "token=" + token + "&by=A+Clerk", asked);
        assertThat(answer.statusCode()).as(answer.body()).isLessThan(400);
        assertThat(answer.body()).doesNotContain("role=\"alert\"");
        said = asked;
      }
    } catch (IOException gone) {
      return;
    }
  }

  private HttpResponse<String> act(Browser browser, String form, int number)
      throws IOException, InterruptedException {
    if (number % 3 == 0) {
      String base =
          browser
              .get("/lines/file?name=" + Browser.coded(FILE))
              .body()
              .replaceFirst("(?s).*name=\"base\" value=\"([^\"]*)\".*", "$1");
      String text = route + "# saved " + number + "\n";
      return browser.post(
          "/lines/save",
          form + "&name=" + Browser.coded(FILE) + "&base=" + base + "&text=" + Browser.coded(text));
    } else if (number % 3 == 1) {
      return browser.post("/register", form + "&act=staff&people=" + driver(number));
    }
    String notice = SyntheticNetwork.notice("T " + number, 0, "Out", 900, 20 + 5 * (number % 4));
    HttpResponse<String> answer =
        browser.post("/notice/issue", form + "&text=" + Browser.coded(notice));
    String work = answer.headers().firstValue("Location").orElse("/nowhere");
    while (answer.headers().firstValue("Refresh").isPresent() || answer.statusCode() == 303) {
      Thread.sleep(100);
      answer = browser.get(work);
    }
    return answer;
  }

  private static String driver(int number) {
    return "Driver" + number;
  }

  /** What was asked for last may be there, whole, though nobody said so; then it counts as said. */
  private void everythingSaidIsThere(Browser browser) throws Exception {
    String staff = browser.get("/register.csv?list=staff").body();
    String file = Files.readString(routes.resolve(FILE));
    String notices = Files.readString(routes.resolve("line-000/restrictions.yaml"));
    for (int act = Math.max(1, said - 30); act <= said; act++) {
      if (act % 3 == 1) {
        assertThat(staff).contains(driver(act));
      } else if (act % 3 == 2) {
        assertThat(notices).contains("\"T " + act + "\"");
      }
    }
    String saved = "# saved " + (said - said % 3) + "\n";
    String next = "# saved " + asked + "\n";
    assertThat(file).isIn(route + (said < 3 ? "" : saved), route + next);
    boolean done =
        switch (asked % 3) {
          case 0 -> file.endsWith(next);
          case 1 -> staff.contains(driver(asked) + ",") || staff.contains(driver(asked) + "\n");
          default -> notices.contains("\"T " + asked + "\"");
        };
    if (done) {
      said = Math.max(said, asked);
    }
  }
}
