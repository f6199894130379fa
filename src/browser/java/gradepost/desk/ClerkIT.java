package gradepost.desk;

import static java.util.stream.Collectors.joining;
import static org.assertj.core.api.Assertions.assertThat;

import gradepost.app.Depot;
import gradepost.app.SyntheticNetwork;
import gradepost.app.store.Store;
import gradepost.reissue.register.Account.Role;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.WebElement;

/**
 * A clerk's day in a real browser, with another person who checks: two notices, of which one is
 * wrong and is put right; issued, checked, handed out to twelve people at once, acknowledged; a
 * mistake taken back; an issue recalled.
 */
class ClerkIT {
  @TempDir private static Path folder = Path.of("");
  private static DeskServer desk;
  private static Chromium browser;
  private final List<String> found = new ArrayList<>();

  @BeforeAll
  static void open() throws Exception {
    Path routes = folder.resolve("routes");
    for (Path pack : new SyntheticNetwork(routes, 1).packs(1, 3)) {
      Files.writeString(
          pack, Files.readString(pack).replaceFirst("(?m)^  checked-by:.*\\R", ""));
    }
    Store store = People.with(folder, Depot.NOON);
    desk =
        DeskServer.start(
            new DeskServer.Served(routes, store, folder.resolve("papers"), Depot.NOON),
            People.BY_ACCOUNT);
    browser = Chromium.before(desk, folder.resolve("profile"));
  }

  @AfterAll
  static void close() {
    browser.close();
    desk.close();
  }

  @Test
  void aClerksDay() throws Exception {
    browser.screen(1280, 900);
    everybodyCanUse("sign-in");
    signIn(Role.CLERK);
    everybodyCanUse("account", "/account");
    browser.go("/packs/0000");
    press("Enter it as the first issue");
    shows("0000/1 registered");
    everybodyCanUse("pack");

    wrongAndPutRight();
    issued("What it touches");

    browser.go("/notice");
    fill("text", SyntheticNetwork.notice("T 2", 0, "Out", 1500, 40));
    button("paste", "See what it touches").click();
    issued("would take the place of 2");

    checkedByAnother();
    handedOutAndAcknowledged();

    browser.go("/packs/0000");
    fill("reason", "a board stands elsewhere");
    press("Recall it");
    shows("RECALLED: a board stands elsewhere");
    browser.go("/register?list=acts");
    shows("R Clerk", "T Hale", "took back entry", "recalled");
    assertThat(found).isEmpty();
  }

  /** All mistakes are told, what was filled in is kept, and one field is put right. */
  private void wrongAndPutRight() throws IOException {
    browser.go("/notice");
    everybodyCanUse("notice");
    fill("reference", "T 1");
    fill("from", "0.900 km");
    fill("to", "1.100 km");
    fill("speed", "30 leagues");
    fill("reason", "wet bed");
    browser
        .driver()
        .executeScript("document.getElementsByName('imposed')[0].value = '2026-11-26T04:00'");
    button("fill", "See what it touches").click();
    shows("leagues");
    assertThat(named("reference").getDomProperty("value")).isEqualTo("T 1");
    fill("speed", "30 km/h");
    button("fill", "See what it touches").click();
  }

  private void issued(String seen) throws IOException {
    shows(seen, "The runs that differ");
    assertThat(browser.driver().findElements(By.cssSelector("svg polyline.before"))).isNotEmpty();
    assertThat(browser.driver().findElements(By.cssSelector("svg polyline.now"))).isNotEmpty();
    if (seen.equals("What it touches")) {
      everybodyCanUse("looked");
    }
    press("Issue it");
    var timeouts = browser.driver().manage().timeouts();
    timeouts.implicitlyWait(Duration.ofMinutes(3));
    browser.driver().findElement(By.xpath("//p[contains(., 'Issued and registered')]"));
    timeouts.implicitlyWait(Duration.ofSeconds(20));
    shows("Papers to print", "supplement");
    if (seen.equals("What it touches")) {
      everybodyCanUse("issued");
    }
  }

  private void checkedByAnother() {
    browser.go("/packs/0000");
    press("I have checked issue 3");
    shows("R Clerk prepared or entered 0000/3 and cannot check it");
    press("Sign out");
    signIn(Role.INSTRUCTOR);
    browser.go("/packs/0000");
    assertThat(browser.driver().getPageSource()).doesNotContain("Recall it");
    press("I have checked issue 3");
    shows("0000/3: checked by T Hale");
    press("Sign out");
    signIn(Role.CLERK);
  }

  private void handedOutAndAcknowledged() {
    String twelve = IntStream.range(0, 12).mapToObj(i -> "Driver " + i).collect(joining("\n"));
    for (String act : List.of("hand-out", "acknowledge")) {
      browser.go("/register");
      browser.driver().findElement(By.xpath("//select[@name='act']/option[.='" + act + "']")).click();
      fill("issue", "0000/3");
      fill("people", twelve);
      press("Enter");
      shows("Driver 11");
    }
    browser.go("/register?list=acts");
    String last =
        browser.driver().findElement(By.xpath("(//tbody/tr)[last()]/td[6]")).getText();
    fill("entry", last);
    fill("reason", "the slip is not signed");
    press("Take it back");
    shows("took back entry " + last);
    browser.go("/register?list=to-brief");
    shows("Driver 11");
    assertThat(browser.text()).doesNotContain("Driver 10");
  }

  private static void signIn(Role role) {
    fill("name", People.NAMES.get(role));
    fill("password", People.PASSWORD);
    press("Sign in");
    browser.driver().findElement(By.linkText("Packs"));
  }

  private void everybodyCanUse(String page, String path) throws IOException {
    browser.go(path);
    everybodyCanUse(page);
  }

  /** The page that is shown, on a telephone and on a desk. */
  private void everybodyCanUse(String page) throws IOException {
    for (int width : new int[] {360, 1280}) {
      browser.screen(width, 900);
      found.addAll(browser.faults("clerk-" + page, width));
    }
  }

  /** Waits for a page that says this. */
  private static void shows(String... words) {
    for (String each : words) {
      browser.driver().findElement(By.xpath("//main[contains(., \"" + each + "\")]"));
    }
  }

  private static WebElement named(String name) {
    return browser.driver().findElement(By.name(name));
  }

  private static void fill(String name, String text) {
    WebElement field = named(name);
    field.clear();
    field.sendKeys(text);
  }

  private static void press(String words) {
    browser.driver().findElement(By.xpath("//button[.='" + words + "']")).click();
  }

  /** A button of the form of fields, or of the one with the text. */
  private static WebElement button(String form, String words) {
    String action = form.equals("fill") ? "/notice/filled" : "/notice";
    return browser
        .driver()
        .findElement(
            By.xpath(
                "//form[@action='%s' and @method='post']//button[.='%s']"
                    .formatted(action, words)));
  }
}
