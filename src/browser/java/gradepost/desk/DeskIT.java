package gradepost.desk;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.Depot;
import gradepost.app.SyntheticNetwork;
import gradepost.app.store.Store;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.print.PrintOptions;

/**
 * The desk in a real browser, without a script of its own: a learner's evening, an instructor's
 * lesson, and each page by the rules of WCAG 2.1 as axe-core checks them.
 */
class DeskIT {
  @TempDir private static Path folder = Path.of("");
  private static DeskServer desk;
  private static Chromium browser;
  private static ChromeDriver driver;

  @BeforeAll
  static void open() throws Exception {
    Path routes = folder.resolve("routes");
    new SyntheticNetwork(routes, 1).packs(2, 3);
    Files.writeString(routes.resolve("pack-broken.yaml"), "gradepost: pack\n");
    Store store = Store.of(folder.resolve("reg/register.db").toString(), Optional.empty());
    desk = DeskServer.start(new DeskServer.Served(routes, store, folder.resolve("papers"), Depot.NOON), 0);
    browser = Chromium.at(desk, folder.resolve("profile"));
    driver = browser.driver();
  }

  @AfterAll
  static void close() {
    browser.close();
    desk.close();
  }

  private static void screen(int width, int height) {
    browser.screen(width, height);
  }

  private static void go(String path) {
    browser.go(path);
  }

  private static String text() {
    return browser.text();
  }

  private static List<String> pages() {
    go("/packs/0000");
    String paper =
        driver.findElement(By.linkText("Read")).getDomAttribute("href").replaceFirst(".*/", "");
    return List.of(
        "/",
        "/packs",
        "/packs/0000",
        "/packs/broken",
        "/packs/0000/papers/" + paper,
        "/learn/0000/" + paper + "?at=2",
        "/bench/0000/" + paper,
        "/bench/0000/" + paper + "?speed=x",
        "/notice",
        "/register",
        "/nothing");
  }

  @ParameterizedTest
  @ValueSource(ints = {360, 1280})
  void everyPageIsForEverybody(int width) throws IOException {
    screen(width, 800);
    List<String> found = new ArrayList<>();
    for (String page : pages()) {
      go(page);
      found.addAll(browser.faults(page, width));
    }
    assertThat(found).isEmpty();
  }

  /** On a telephone, from place to place, with what is to be done hidden until it is asked for. */
  @Test
  void aLearnersEvening() {
    screen(390, 800);
    go("/packs");
    driver.findElement(By.linkText("0000")).click();
    driver.findElement(By.cssSelector("main a[href^='/learn/']")).click();
    assertThat(text()).contains("1 of ");
    WebElement answer = driver.findElement(By.className("answer"));
    assertThat(answer.isDisplayed()).isFalse();
    driver.findElement(By.tagName("summary")).sendKeys(Keys.ENTER);
    assertThat(answer.isDisplayed()).isTrue();
    String told = answer.getText();
    driver.findElement(By.linkText("Next place")).click();
    assertThat(text()).contains("2 of ").contains("Behind you: ");
    assertThat(text().replace("\n", " ")).contains(told.lines().findFirst().orElse("?"));
    driver.findElement(By.linkText("Place before")).click();
    assertThat(text()).contains("1 of ").doesNotContain("Behind you");
  }

  /**
   * By keyboard alone, answered as it is typed. What was tried is in the address: it can be gone
   * back to, another browser would see the same, and it is printed as what it is.
   */
  @Test
  void anInstructorsLesson() throws IOException {
    screen(1280, 900);
    go("/packs/0000");
    driver.findElement(By.linkText("What if")).sendKeys(Keys.ENTER);
    assertThat(text()).contains("Teaching example, not a briefing");
    String planned = driver.findElement(By.className("answers")).getText();
    driver.findElement(By.name("later")).sendKeys(Keys.chord(Keys.CONTROL, "a"), "250");
    tried("later by (m): 250.");
    String late = driver.findElement(By.className("answers")).getText();
    assertThat(late).isNotEqualTo(planned).contains("Passes the ");
    driver.findElement(By.name("isolated")).sendKeys("2");
    tried("isolated on vehicles: 2.");
    String address = driver.getCurrentUrl();
    assertThat(address).contains("later=250").contains("isolated=2");
    String fewer = driver.findElement(By.className("answers")).getText();
    assertThat(fewer).isNotEqualTo(late);
    go("/");
    driver.get(address);
    assertThat(driver.findElement(By.className("answers")).getText()).isEqualTo(fewer);
    assertThat(driver.findElements(By.cssSelector("svg polyline"))).hasSizeGreaterThan(3);
    assertThat(printed())
        .contains("Teaching example, not a briefing")
        .contains("later by (m): 250.")
        .contains("Brake isolated on vehicles: 2.");
    go("/bench/" + address.replaceFirst(".*/bench/", "").replace("isolated=2", "isolated=9"));
    assertThat(text()).contains("names no vehicles");
  }

  private static void tried(String words) {
    driver.findElement(By.xpath("//p[@class='printed'][contains(., '" + words + "')]"));
  }

  private static String printed() throws IOException {
    byte[] pdf = Base64.getDecoder().decode(driver.print(new PrintOptions()).getContent());
    try (PDDocument document = Loader.loadPDF(pdf)) {
      return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
    }
  }

  /** A paper is shown within the page, as it was made. */
  @Test
  void aPaperIsRead() {
    screen(1280, 900);
    go("/packs/0000");
    driver.findElement(By.linkText("Read")).click();
    driver.switchTo().frame(driver.findElement(By.tagName("iframe")));
    assertThat(driver.findElement(By.tagName("h1")).getText()).isNotEmpty();
    assertThat(driver.findElements(By.tagName("svg"))).isNotEmpty();
    driver.switchTo().defaultContent();
  }

  /** A browser that has not the key, in the same machine, sees nothing. */
  @Test
  void withoutTheCookieNothingIsSeen() {
    go("/packs");
    assertThat(text()).contains("0000");
    var kept = driver.manage().getCookies();
    driver.manage().deleteAllCookies();
    go("/packs");
    assertThat(text()).contains("has not been let in").doesNotContain("0000");
    kept.forEach(driver.manage()::addCookie);
    go("/packs");
    assertThat(text()).contains("0000");
  }
}
