package gradepost.desk;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.Depot;
import gradepost.app.RealRuns;
import gradepost.app.SyntheticNetwork;
import java.io.BufferedReader;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WindowType;

/**
 * The desk is killed and begun again in the middle of what somebody does in a real browser. It is a
 * process of its own, ended by SIGKILL; it comes back at the same address with another key.
 */
class KilledDeskIT {
  @TempDir private static Path folder = Path.of("");
  private static RealRuns runs = new RealRuns(Path.of(""), Path.of(""));
  private static int port;
  private static Process desk;
  private static String key = "";
  private static Chromium browser;

  @BeforeAll
  static void open() throws Exception {
    new SyntheticNetwork(folder.resolve("routes"), 1).packs(1, 3);
    runs = new RealRuns(folder.resolve("routes"), folder);
    Depot.begun(runs.store());
    try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      port = free.getLocalPort();
    }
    begin();
    browser = Chromium.at(key, folder.resolve("profile"));
    browser.screen(1280, 900);
  }

  @AfterAll
  static void close() throws Exception {
    browser.close();
    desk.destroyForcibly().waitFor();
  }

  private static void begin() throws IOException {
    desk = DeskProcess.begun(runs, folder, "127.0.0.1:" + port, folder.resolve("err").toFile());
    BufferedReader words = desk.inputReader(StandardCharsets.UTF_8);
    key = words.readLine().replaceFirst("^desk: ", "");
  }

  private static void kill() throws Exception {
    desk.destroyForcibly().waitFor();
  }

  /** Comes in by the new key in another tab, and goes back to the first. */
  private static void beginAgainAndComeIn() throws Exception {
    begin();
    String mine = browser.driver().getWindowHandle();
    browser.driver().switchTo().newWindow(WindowType.TAB);
    browser.driver().get(key);
    browser.driver().findElement(By.linkText("Packs"));
    browser.driver().close();
    browser.driver().switchTo().window(mine);
  }

  private static void tries(String metres) {
    browser
        .driver()
        .findElement(By.name("later"))
        .sendKeys(Keys.chord(Keys.CONTROL, "a"), metres);
  }

  private static void press(String words) {
    browser.driver().findElement(By.xpath("//button[.='" + words + "']")).click();
  }

  private static void shows(String words) {
    browser.driver().findElement(By.xpath("//main//*[contains(., \"" + words + "\")]"));
  }

  /** While he types the desk goes and comes back: he saves, and sends it again. */
  @Test
  void anAuthorsTextIsNotLost() throws Exception {
    String name = "line-000/route.yaml";
    Path file = folder.resolve("routes").resolve(name);
    String before = Files.readString(file);
    browser.go("/lines/file?name=" + name);
    browser.driver().findElement(By.cssSelector(".CodeMirror-lines")).click();
    browser
        .driver()
        .switchTo()
        .activeElement()
        .sendKeys(Keys.chord(Keys.CONTROL, Keys.END), "# mine");
    kill();
    beginAgainAndComeIn();
    browser.driver().findElement(By.id("save")).click();
    shows("kept on this page");
    assertThat(browser.faults("killed-author", 1280)).isEmpty();
    assertThat(Files.readString(file)).isEqualTo(before);
    press("Send it again");
    shows("Saved.");
    assertThat(Files.readString(file)).isEqualTo(before + "# mine");
    runs.whole();
  }

  /** He has not come in again when he sends his notice: it waits on its page until he has. */
  @Test
  @Tag("long")
  void aClerksNoticeIsNotLost() throws Exception {
    browser.go("/notice");
    browser
        .driver()
        .findElement(By.name("text"))
        .sendKeys(SyntheticNetwork.notice("T 9", 0, "Out", 900, 30));
    kill();
    begin();
    browser.driver().findElement(By.xpath("//form[@action='/notice' and @method='post']//button")).click();
    shows("Come in again in another tab");
    kill();
    beginAgainAndComeIn();
    press("Send it again");
    shows("Look whether it is still what you want");
    press("Send it again");
    shows("What it touches");
    runs.whole();
  }

  /** What an instructor tried is in the address, and what a learner does not know in no place. */
  @Test
  @Tag("long")
  void theBenchAnswersTheSameAndTheRoadGoesOn() throws Exception {
    browser.go("/packs/0000");
    browser.driver().findElement(By.linkText("What if")).click();
    String address = browser.driver().getCurrentUrl() + "?later=250";
    browser.driver().get(address);
    String answers = browser.driver().findElement(By.className("answers")).getText();
    browser.go("/packs/0000");
    browser.driver().findElement(By.cssSelector("main a[href^='/learn/']")).click();
    String road = browser.driver().getCurrentUrl();
    browser.driver().get(address);
    kill();
    tries("300");
    shows("No answer: the desk does not answer");
    assertThat(browser.text()).doesNotContain(answers);
    beginAgainAndComeIn();
    tries("250");
    shows("later by (m): 250.");
    assertThat(browser.driver().findElement(By.className("answers")).getText())
        .isEqualTo(answers);
    browser.driver().get(address);
    assertThat(browser.driver().findElement(By.className("answers")).getText())
        .isEqualTo(answers);
    browser.driver().get(road);
    browser.driver().findElement(By.linkText("Next place")).click();
    shows("2 of ");
  }

  /** A learner's answers are marked though the desk was begun again meanwhile. */
  @Test
  void aPracticePaperIsMarked() throws Exception {
    browser.go("/packs/0000");
    String learn =
        browser
            .driver()
            .findElement(By.cssSelector("main a[href^='/learn/']"))
            .getDomAttribute("href");
    browser.go(learn.replaceFirst("\\?.*", "") + "/practice");
    browser.driver().findElement(By.cssSelector("input[type=radio]")).click();
    kill();
    beginAgainAndComeIn();
    press("Mark it");
    shows("kept on this page");
    press("Send it again");
    shows("Not answered");
  }
}
