package gradepost.desk;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.Depot;
import gradepost.app.SyntheticNetwork;
import gradepost.app.issue.Task;
import gradepost.app.store.Disk;
import gradepost.app.store.Store;
import gradepost.ride.Driven;
import gradepost.source.pack.PackFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.WindowType;
import org.openqa.selenium.chrome.ChromeDriver;

/** An author at a real browser: alone, beside another one, and without scripts. */
class AuthorIT {
  private static final String EDITOR = "/lines/file?name=";

  @TempDir private static Path folder = Path.of("");
  private static DeskServer desk;
  private static Chromium browser;
  private static ChromeDriver driver;

  @BeforeAll
  static void open() throws Exception {
    Path routes = folder.resolve("routes");
    new SyntheticNetwork(routes, 1).packs(3, 3);
    Store store = Store.of(folder.resolve("none.db").toString(), Optional.empty());
    desk =
        DeskServer.start(
            new DeskServer.Served(routes, store, folder.resolve("papers"), Depot.NOON), 0);
    browser = Chromium.at(desk, folder.resolve("profile"));
    driver = browser.driver();
  }

  @AfterAll
  static void close() {
    browser.close();
    desk.close();
  }

  private static String file(String name) throws Exception {
    return Files.readString(folder.resolve("routes").resolve(name));
  }

  /** Types at the end of the text that is open. */
  private static void type(String text) {
    driver.findElement(By.cssSelector(".CodeMirror-lines")).click();
    driver.switchTo().activeElement().sendKeys(Keys.chord(Keys.CONTROL, Keys.END), text);
  }

  private static void save() {
    WebElement button = driver.findElement(By.id("save"));
    driver.executeScript("arguments[0].scrollIntoView({block: 'center'})", button);
    button.click();
  }

  private static void waitFor(String words) {
    driver.findElement(By.xpath("//main//*[contains(., '" + words + "')]"));
  }

  @ParameterizedTest
  @ValueSource(ints = {360, 1280})
  void everyPageIsForEverybody(int width) throws Exception {
    browser.screen(width, 800);
    browser.go("/learn");
    String paper =
        driver
            .findElement(By.linkText("Practice paper"))
            .getDomAttribute("href")
            .replaceFirst("/practice$", "");
    List<String> found = new ArrayList<>();
    for (String page :
        List.of(
            "/learn",
            "/bench",
            "/lines",
            EDITOR + "line-000/route.yaml",
            EDITOR + "line-000/pack-0000.yaml",
            "/lines/keys?kind=restrictions",
            "/lines/saves?name=line-000/route.yaml",
            paper + "/practice",
            paper + "/pace",
            "/rides")) {
      browser.go(page);
      found.addAll(browser.faults(page, width));
    }
    browser.go(paper + "/practice");
    driver.findElement(By.xpath("//button[. = 'Mark it']")).click();
    waitFor("Not answered");
    found.addAll(browser.faults("/marked", width));
    browser.go(EDITOR + "line-000/route.yaml");
    driver.findElement(By.xpath("//button[. = 'Show its cells']")).sendKeys(Keys.ENTER);
    driver.findElement(By.id("cells"));
    found.addAll(browser.faults("/cells", width));
    handInARide();
    found.addAll(browser.faults("/ride", width));
    saveAFileThatIsGone();
    found.addAll(browser.faults("/gone", width));
    assertThat(found).isEmpty();
  }

  private static void handInARide() throws Exception {
    Path ride = folder.resolve("ride.csv");
    if (!Files.exists(ride)) {
      PackFile pack =
          Disk.sources()
              .pack(Disk.name(folder.resolve("routes/line-000/pack-0000.yaml")))
              .found()
              .orElseThrow();
      Driven run = Driven.asPlanned(Task.of(pack).get(0).plan());
      Files.writeString(ride, Driven.Recorder.exact().csv(run, new Random(1)));
    }
    browser.go("/rides");
    driver.findElement(By.name("ride")).sendKeys(ride.toAbsolutePath().toString());
    driver.findElement(By.xpath("//button[. = 'Show the report']")).click();
    waitFor("Another ride");
    driver.findElement(By.cssSelector("iframe.paper"));
  }

  private static void saveAFileThatIsGone() throws Exception {
    Path spare = folder.resolve("routes/line-000/spare.yaml");
    Files.copy(spare.resolveSibling("restrictions.yaml"), spare);
    browser.go(EDITOR + "line-000/spare.yaml");
    Files.delete(spare);
    save();
    waitFor("There is no such file in this folder now");
  }

  /** Findings beside the lines, the keys that fit, and the strip, which follows the cursor. */
  @Test
  void anAuthorTypes() {
    browser.screen(1280, 900);
    browser.go(EDITOR + "line-000/route.yaml");
    type("\nfoo: 1\n");
    assertThat(driver.findElement(By.cssSelector(".finding")).getText()).contains("foo");
    waitFor("The line, as it was before the fault");
    driver.switchTo().activeElement().sendKeys(Keys.chord(Keys.CONTROL, "z"), "\nland");
    assertThat(driver.findElement(By.cssSelector(".CodeMirror-hint-active")).getText())
        .contains("landmarks");
    driver.switchTo().activeElement().sendKeys(Keys.ESCAPE, Keys.chord(Keys.CONTROL, "z"));
    driver.switchTo().activeElement().sendKeys(Keys.chord(Keys.CONTROL, Keys.HOME));
    // Asked of the page itself: the driver would wait for one to come.
    assertThat(driver.executeScript("return document.querySelectorAll('.strip .here').length"))
        .isEqualTo(0L);
    for (int line = 1; line < 12; line++) {
      driver.switchTo().activeElement().sendKeys(Keys.DOWN);
    }
    String first = driver.findElement(By.cssSelector(".strip .here")).getDomAttribute("style");
    driver.switchTo().activeElement().sendKeys(Keys.DOWN);
    String second = driver.findElement(By.cssSelector(".strip .here")).getDomAttribute("style");
    assertThat(second).isNotEqualTo(first);
    driver.switchTo().activeElement().sendKeys(Keys.TAB);
    assertThat(driver.switchTo().activeElement().getDomAttribute("name")).isEqualTo("by");
  }

  /** One place after another by the clock, with what is to be done hidden until asked for. */
  @Test
  void aLearnerGoesAtThePaceOfTheRun() {
    browser.screen(390, 800);
    browser.go("/learn");
    driver.findElement(By.cssSelector("main li a")).click();
    driver.findElement(By.linkText("At the pace of the run")).click();
    WebElement go = driver.findElement(By.id("go"));
    WebElement first = driver.findElement(By.cssSelector("#steps > li:not([hidden])"));
    go.sendKeys(Keys.ENTER);
    driver.findElement(By.cssSelector("#steps > li:first-child[hidden]"));
    assertThat(first.isDisplayed()).isFalse();
    go.sendKeys(Keys.SPACE);
    assertThat(go.getText()).isEqualTo("Start");
    WebElement now = driver.findElement(By.cssSelector("#steps > li:not([hidden])"));
    assertThat(now.findElement(By.className("answer")).isDisplayed()).isFalse();
    now.findElement(By.tagName("summary")).sendKeys(Keys.ENTER);
    assertThat(now.findElement(By.className("answer")).isDisplayed()).isTrue();
    driver.findElement(By.id("back")).sendKeys(Keys.ENTER);
    assertThat(first.isDisplayed()).isTrue();
  }

  /** Both texts are shown and none is lost; each save can be taken back. */
  @Test
  void twoPeopleOnOneFile() throws Exception {
    String name = "line-001/route.yaml";
    String before = file(name);
    browser.screen(1280, 900);
    browser.go(EDITOR + name);
    String his = driver.getWindowHandle();
    driver.switchTo().newWindow(WindowType.TAB);
    browser.screen(1280, 900);
    browser.go(EDITOR + name);
    type("# hers");
    save();
    waitFor("Saved.");
    assertThat(file(name)).isEqualTo(before + "# hers");
    driver.close();
    driver.switchTo().window(his);
    type("# his");
    save();
    waitFor("somebody else has saved this file");
    assertThat(file(name)).isEqualTo(before + "# hers");
    assertThat(driver.findElement(By.className("sides")).getText()).contains("# hers", "# his");
    assertThat(browser.faults("/both", 1280)).isEmpty();
    save();
    waitFor("Saved.");
    assertThat(file(name)).isEqualTo(before + "# his");
    driver.findElement(By.linkText("Saves of this file")).click();
    List<WebElement> earlier = driver.findElements(By.linkText("Look at it"));
    assertThat(earlier).hasSize(2);
    earlier.get(0).click();
    waitFor("# hers");
    assertThat(browser.faults("/earlier", 1280)).isEmpty();
    driver.findElement(By.xpath("//button[. = 'Go back to this text']")).click();
    waitFor("Saved.");
    assertThat(file(name)).isEqualTo(before + "# hers");
  }

  /** A plain field and two buttons do the same. */
  @Test
  void withoutScriptsItCanBeReadCheckedAndSaved() throws Exception {
    String name = "line-002/route.yaml";
    String before = file(name);
    browser.screen(1280, 900);
    driver.executeCdpCommand("Emulation.setScriptExecutionDisabled", Map.of("value", true));
    try {
      browser.go(EDITOR + name);
      driver.findElement(By.id("text")).sendKeys(Keys.chord(Keys.CONTROL, Keys.END), "foo: 1\n");
      driver.findElement(By.xpath("//button[. = 'Check']")).click();
      waitFor("Checked; not saved.");
      assertThat(driver.findElement(By.id("found")).getText()).contains("foo");
      assertThat(file(name)).isEqualTo(before);
      driver.findElement(By.id("save")).click();
      waitFor("Save it with its faults");
      driver.findElement(By.name("faulty")).click();
      driver.findElement(By.id("save")).click();
      waitFor("Saved.");
      assertThat(file(name)).isEqualTo(before + "foo: 1\n");
    } finally {
      driver.executeCdpCommand("Emulation.setScriptExecutionDisabled", Map.of("value", false));
    }
  }
}
