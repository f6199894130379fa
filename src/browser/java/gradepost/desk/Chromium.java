package gradepost.desk;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.HeadlessChromium;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.openqa.selenium.By;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.chrome.ChromeDriver;

/** A real browser that a desk has let in. */
final class Chromium implements AutoCloseable {
  private static final Path PICTURES = Path.of("target", "browser");
  private static final String AXE = "/META-INF/resources/webjars/axe-core/4.6.3/axe.min.js";
  private final ChromeDriver driver;
  private final String home;

  private Chromium(ChromeDriver driver, String home) {
    this.driver = driver;
    this.home = home;
  }

  /**
   * Opens it and goes in by the key.
   *
   * @param profile a folder for what it keeps
   */
  static Chromium at(DeskServer desk, Path profile) throws IOException {
    return at(desk.address(), profile);
  }

  /** The same for a desk that told this address. */
  static Chromium at(String address, Path profile) throws IOException {
    Chromium browser = before(address, profile);
    browser.driver.findElement(By.linkText("Packs"));
    return browser;
  }

  /**
   * Opens it at the address that the desk tells, whether or not that lets in.
   *
   * @param profile a folder for what it keeps
   */
  static Chromium before(DeskServer desk, Path profile) throws IOException {
    return before(desk.address(), profile);
  }

  private static Chromium before(String address, Path profile) throws IOException {
    Files.createDirectories(PICTURES);
    ChromeDriver driver = HeadlessChromium.with(profile);
    driver.manage().timeouts().implicitlyWait(Duration.ofSeconds(20));
    driver.manage().timeouts().pageLoadTimeout(Duration.ofMinutes(3));
    driver.manage().timeouts().scriptTimeout(Duration.ofMinutes(3));
    driver.get(address);
    return new Chromium(driver, address.replaceFirst("/(enter.*)?$", ""));
  }

  ChromeDriver driver() {
    return driver;
  }

  void screen(int width, int height) {
    driver.executeCdpCommand(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", width < 500));
  }

  void go(String path) {
    driver.get(home + path);
  }

  String text() {
    return driver.findElement(By.tagName("main")).getText();
  }

  /** What keeps somebody from using the page that is shown; a picture of it is kept. */
  List<String> faults(String page, int width) throws IOException {
    Files.write(
        PICTURES.resolve("desk-" + width + page.replaceAll("\\W+", "-") + ".png"),
        driver.getScreenshotAs(OutputType.BYTES));
    List<String> found = new ArrayList<>();
    long wide = (Long) driver.executeScript("return document.documentElement.scrollWidth");
    if (wide > width) {
      found.add(page + " is " + wide + " wide");
    }
    try (InputStream axe = Chromium.class.getResourceAsStream(AXE)) {
      assertThat(axe).isNotNull();
      driver.executeScript(new String(axe.readAllBytes(), StandardCharsets.UTF_8));
    }
    Object faults =
        driver.executeAsyncScript(
            "const done = arguments[arguments.length - 1];"
                + "axe.run({iframes: false, runOnly: ['wcag2a', 'wcag2aa', 'wcag21a',"
                + " 'wcag21aa', 'best-practice']})"
                + ".then(r => done(r.violations.filter(v => ['serious', 'critical', 'moderate']"
                + ".includes(v.impact)).map(v => v.id + ': '"
                + " + v.nodes[0].html.slice(0, 200) + ' ' + v.nodes[0].failureSummary)));");
    ((List<?>) faults).forEach(f -> found.add(page + " " + f));
    return found;
  }

  @Override
  public void close() {
    driver.quit();
  }
}
