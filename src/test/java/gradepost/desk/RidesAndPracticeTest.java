package gradepost.desk;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.Depot;
import gradepost.app.SyntheticNetwork;
import gradepost.app.issue.Task;
import gradepost.app.store.Disk;
import gradepost.app.store.Store;
import gradepost.desk.entry.Door;
import gradepost.ride.Driven;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** An instructor hands in a ride; a learner answers a practice paper. */
@Tag("slow")
class RidesAndPracticeTest {
  @TempDir private static Path folder = Path.of("");
  private static Path pack = Path.of("");
  private static DeskServer desk;
  private static Browser browser;
  private static String token = "";
  private static String course = "";

  @BeforeAll
  static void open() throws Exception {
    Path routes = folder.resolve("routes");
    pack = new SyntheticNetwork(routes, 1).packs(1, 3).get(0);
    Store store = Store.of(folder.resolve("none.db").toString(), Optional.empty());
    desk =
        DeskServer.start(
            new DeskServer.Served(routes, store, folder.resolve("papers"), Depot.NOON),
            Door.here(0),
            Runnable::run);
    browser = new Browser(desk).letIn();
    String form = browser.get("/rides").body();
    token = form.replaceFirst("(?s).*name=\"token\" value=\"([^\"]+)\".*", "$1");
    course = form.replaceFirst("(?s).*<option value=\"([^\"]+)\".*", "$1");
  }

  @AfterAll
  static void close() {
    desk.close();
  }

  private static String export() {
    var plan = Task.of(Disk.sources().pack(Disk.name(pack)).found().orElseThrow()).get(0).plan();
    return Driven.Recorder.exact().csv(Driven.asPlanned(plan), new Random(1));
  }

  private static HttpResponse<String> hand(String name, String ride, String... more)
      throws Exception {
    String[] parts = {"token", "", token, "course", "", course, "ride", name, ride};
    return browser.upload(
        "/rides", Stream.concat(Stream.of(parts), Stream.of(more)).toArray(String[]::new));
  }

  @Test
  void aRideIsReportedAndNothingOfItStays() throws Exception {
    List<Path> before = work();
    HttpResponse<String> done =
        hand("../../ride of <Ada>.csv", export(), "driver", "", "Ada", "on", "", "2026-12-04");
    assertThat(done.statusCode()).isEqualTo(303);
    String at = done.headers().firstValue("Location").orElse("").replaceFirst(".*(/rides/)", "$1");
    String page = browser.get(at).body();
    assertThat(page).contains("points observed", "-report.html", "-report.pdf");
    String report = page.replaceFirst("(?s).*<iframe[^>]* src=\"([^\"]+)\".*", "$1");
    HttpResponse<String> html = browser.get(report);
    assertThat(html.body()).contains("Ada").contains("<svg").doesNotContain("<Ada>");
    assertThat(html.headers().firstValue("Content-Security-Policy").orElse(""))
        .contains("default-src 'none'")
        .doesNotContain("script-src");
    byte[] pdf = browser.bytes(report.replace(".html", ".pdf")).body();
    assertThat(new String(pdf, 0, 5, StandardCharsets.US_ASCII)).isEqualTo("%PDF-");
    assertThat(browser.get(at + "/..%2f..%2froute.yaml").statusCode()).isBetween(400, 404);
    assertThat(browser.get("/rides/none").statusCode()).isEqualTo(404);
    assertThat(work()).isEqualTo(before);
  }

  /** Folders in which rides are laid meanwhile. */
  private static List<Path> work() throws Exception {
    try (Stream<Path> all = Files.list(Path.of(System.getProperty("java.io.tmpdir", ".")))) {
      return all.filter(p -> String.valueOf(p.getFileName()).startsWith("ride")).sorted().toList();
    }
  }

  @Test
  void whatIsNoRideIsRefusedInWords() throws Exception {
    HttpResponse<String> wrong = hand("note.csv", "distance (m),speed (km/h)\n0,0\n90,9\n");
    assertThat(wrong.statusCode()).isEqualTo(422);
    assertThat(wrong.body()).contains("note.csv: error: ", "Choose the file again");
    assertThat(wrong.body()).doesNotContain(System.getProperty("java.io.tmpdir", "?") + "/ride");
    assertThat(hand("ride.csv", "").body()).contains("No ride was handed in");
    assertThat(hand("ride.csv", "x", "on", "", "tomorrow").body()).contains("not a date");
    assertThat(hand("a.csv", "PK\u0003\u0004\u0000\u0000").statusCode()).isEqualTo(422);
    String[] other = {"token", "", token, "course", "", "../secret/x", "ride", "a.csv", "x"};
    assertThat(browser.upload("/rides", other).statusCode()).isEqualTo(404);
    String[] foreign = {"token", "", "guess", "course", "", course, "ride", "a.csv", export()};
    assertThat(browser.upload("/rides", foreign).statusCode()).isEqualTo(403);
  }

  /** Each place has its time of the run; they rise. */
  @Test
  void theRoadHasItsPace() throws Exception {
    String page = browser.get("/learn/" + first() + "/pace").body();
    List<Integer> seconds =
        Pattern.compile("data-at=\"(\\d+)\"")
            .matcher(page)
            .results()
            .map(found -> Integer.parseInt(found.group(1)))
            .toList();
    assertThat(seconds).hasSizeGreaterThan(3).isSorted();
    assertThat(seconds.get(0)).isZero();
    assertThat(seconds.get(seconds.size() - 1)).isBetween(60, 600);
    assertThat(page).contains("<details><summary>").doesNotContain("<details open");
  }

  /** Drawn by the number in its address; marked with what teaches the answer. */
  @Test
  void aPracticePaperIsMarked() throws Exception {
    assertThat(browser.get("/learn").body())
        .contains("/learn/" + first() + "\"", "/learn/" + first() + "/practice\"");
    assertThat(browser.get("/bench").body()).contains("/bench/" + first());
    String at = "/learn/" + first() + "/practice";
    String paper = browser.get(at + "?number=2").body();
    assertThat(browser.get(at + "?number=2").body()).isEqualTo(paper);
    assertThat(browser.get(at + "?number=3").body()).isNotEqualTo(paper);
    assertThat(browser.get(at + "?number=-2").body()).isEqualTo(browser.get(at).body());
    int questions = count(paper, "<fieldset>");
    assertThat(questions).isGreaterThan(5);
    assertThat(paper).doesNotContain("Right");
    String empty = browser.post(at, "number=2&token=" + token).body();
    assertThat(empty).contains("0 of " + questions + " right", "Not passed");
    assertThat(count(empty, "Not answered")).isEqualTo(questions);
    assertThat(empty).contains("Look at ").contains("/html#p1-");
    StringBuilder right = new StringBuilder("number=2&token=" + token);
    String[] asked = paper.split("<fieldset>", -1);
    String[] told = empty.split("<li><p>", -1);
    for (int q = 0; q < questions; q++) {
      String answer = told[q + 1].replaceFirst("(?s).*Right is: ([^<]*)</p>.*", "$1");
      String choice =
          asked[q + 1].replaceFirst(
              "(?s).*value=\"(\\d)\"> " + Pattern.quote(answer) + "</label>.*", "$1");
      right.append("&q").append(q).append('=').append(choice);
    }
    assertThat(browser.post(at, right.toString()).body())
        .contains(questions + " of " + questions + " right", "Passed.")
        .doesNotContain("Look at ");
    assertThat(browser.get("/learn/0000/..%2fx/practice").statusCode()).isBetween(400, 404);
  }

  private static String first() {
    return course;
  }

  private static int count(String text, String of) {
    Matcher found = Pattern.compile(Pattern.quote(of)).matcher(text);
    int count = 0;
    while (found.find()) {
      count++;
    }
    return count;
  }
}
