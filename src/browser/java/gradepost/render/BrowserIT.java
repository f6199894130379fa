package gradepost.render;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.units.UnitStyle;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.Keys;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;

/**
 * The HTML in a real browser: from telephone to desk, light and dark, by keyboard, offline, and by
 * the rules of WCAG 2.1 as axe-core checks them. Pictures of what was seen stay under {@code
 * target/browser}.
 */
class BrowserIT {
  private static final Path PICTURES = Path.of("target", "browser");
  private static final String AXE = "/META-INF/resources/webjars/axe-core/4.6.3/axe.min.js";

  @TempDir private static Path folder = Path.of("");
  private static Path page = Path.of("");
  private static ChromeDriver driver;

  @BeforeAll
  static void open() throws IOException {
    page = folder.resolve("pack.html");
    Files.writeString(
        page, Papers.html(Papers.renderer(), Papers.briefing(UnitStyle.MILES)));
    Files.createDirectories(PICTURES);
    System.setProperty("SE_OFFLINE", "true");
    ChromeOptions options = new ChromeOptions();
    options.setBinary("/usr/bin/chromium");
    options.addArguments(
        "--headless=new",
        "--no-sandbox",
        "--disable-dev-shm-usage",
        "--disable-gpu",
        "--user-data-dir=" + folder.resolve("profile"));
    driver =
        new ChromeDriver(
            new ChromeDriverService.Builder()
                .usingDriverExecutable(Path.of("/usr/bin/chromedriver").toFile())
                .build(),
            options);
  }

  @AfterAll
  static void close() {
    driver.quit();
  }

  private static void show(int width, int height, String scheme) {
    driver.executeCdpCommand(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", width < 500));
    driver.executeCdpCommand(
        "Emulation.setEmulatedMedia",
        Map.of(
            "media",
            "",
            "features",
            List.of(Map.of("name", "prefers-color-scheme", "value", scheme))));
    driver.get(page.toUri().toString());
  }

  private static void picture(String name) throws IOException {
    Files.write(PICTURES.resolve(name + ".png"), driver.getScreenshotAs(OutputType.BYTES));
  }

  @ParameterizedTest
  @CsvSource({"360,740,light", "360,740,dark", "1280,900,light", "1280,900,dark"})
  void nothingSeriousIsFound(int width, int height, String scheme) throws IOException {
    show(width, height, scheme);
    picture("top-" + width + "-" + scheme);
    driver.executeScript("document.getElementById('p1-a1').scrollIntoView()");
    picture("approach-" + width + "-" + scheme);
    try (InputStream axe = BrowserIT.class.getResourceAsStream(AXE)) {
      assertThat(axe).isNotNull();
      driver.executeScript(new String(axe.readAllBytes(), StandardCharsets.UTF_8));
    }
    driver.manage().timeouts().scriptTimeout(java.time.Duration.ofMinutes(3));
    Object found =
        driver.executeAsyncScript(
            "const done = arguments[arguments.length - 1];"
                + "axe.run({runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'best-practice']})"
                + ".then(r => done(r.violations.filter(v => ['serious', 'critical', 'moderate']"
                + ".includes(v.impact)).map(v => v.id + ': ' + v.nodes.length + ' of '"
                + " + v.nodes[0].html.slice(0, 200) + ' ' + v.nodes[0].failureSummary)));");
    assertThat((List<?>) found).isEmpty();
  }

  @Test
  void aTelephoneNeedNotScrollSideways() {
    show(360, 740, "light");
    long wide = (Long) driver.executeScript("return document.documentElement.scrollWidth");
    assertThat(wide).isLessThanOrEqualTo(360);
    Object cut =
        driver.executeScript(
            "return [...document.querySelectorAll('table.told, table.actions')]"
                + ".map(t => t.parentElement).filter(p => p.scrollWidth > p.clientWidth)"
                + ".map(p => p.getAttribute('aria-label') + ' in ' + p.closest('[id]').id)");
    assertThat((List<?>) cut).as("the line and what to do are not cut").isEmpty();
  }

  @Test
  void darkIsDarkAndTextStandsOutInCharts() {
    show(1280, 900, "dark");
    assertThat(driver.executeScript("return getComputedStyle(document.documentElement).backgroundColor"))
        .isEqualTo("rgb(22, 22, 22)");
    assertThat(
            driver.executeScript(
                "return getComputedStyle(document.querySelector('.chart svg text')).fill"))
        .isEqualTo("rgb(238, 238, 238)");
  }

  @Test
  void theKeyboardReachesThePageListAndFollowsIt() {
    show(1280, 900, "light");
    driver.switchTo().activeElement().sendKeys(Keys.TAB);
    Object first = driver.executeScript("return document.activeElement.tagName");
    assertThat(first).isEqualTo("A");
    driver.switchTo().activeElement().sendKeys(Keys.ENTER);
    assertThat((String) driver.executeScript("return location.hash")).startsWith("#");
  }

  @Test
  void itAsksTheNetworkForNothing() {
    show(1280, 900, "light");
    assertThat(
            (Long)
                driver.executeScript(
                    "return performance.getEntriesByType('resource').length"))
        .isZero();
  }

  @Test
  void printsOnA4WithoutCuttingCharts() throws IOException {
    show(1280, 900, "dark");
    Map<String, Object> printed =
        driver.executeCdpCommand(
            "Page.printToPDF",
            Map.of("paperWidth", 8.27, "paperHeight", 11.69, "printBackground", true));
    byte[] pdf = java.util.Base64.getDecoder().decode((String) printed.get("data"));
    Files.write(PICTURES.resolve("printed.pdf"), pdf);
    try (var document = org.apache.pdfbox.Loader.loadPDF(pdf)) {
      assertThat(document.getNumberOfPages()).isBetween(20, 80);
      var image =
          new org.apache.pdfbox.rendering.PDFRenderer(document).renderImageWithDPI(0, 40);
      assertThat(image.getRGB(2, 2) & 0xff).as("paper is white though the screen is dark").isGreaterThan(240);
    }
  }
}
