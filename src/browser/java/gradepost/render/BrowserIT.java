package gradepost.render;

import static org.assertj.core.api.Assertions.assertThat;

import gradepost.Examples;
import gradepost.HeadlessChromium;
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
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.openqa.selenium.Keys;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.chrome.ChromeDriver;

/**
 * The HTML in a real browser: from telephone to desk, light and dark, by keyboard, offline, and by
 * the rules of WCAG 2.1 as axe-core checks them. Pictures of what was seen stay under {@code
 * target/browser}.
 */
class BrowserIT {
  private static final Path PICTURES = Path.of("target", "browser");
  private static final String AXE = "/META-INF/resources/webjars/axe-core/4.6.3/axe.min.js";

  /** What is only read aloud is clipped to nothing. */
  private static final String SEEN =
      "const seen = e => !e || (getComputedStyle(e).clipPath === 'none' && seen(e.parentElement));";

  @TempDir private static Path folder = Path.of("");
  private static Path page = Path.of("");
  private static Path reference = Path.of("");
  private static ChromeDriver driver;

  @BeforeAll
  static void open() throws IOException {
    page = folder.resolve("pack.html");
    Files.writeString(
        page, Papers.html(Papers.renderer(), Papers.briefing(UnitStyle.MILES)));
    reference = folder.resolve("pack-reference.html");
    Files.writeString(
        reference, Papers.html(Papers.renderer(), Papers.reference(UnitStyle.MILES)));
    Files.createDirectories(PICTURES);
    driver = HeadlessChromium.with(folder.resolve("profile"));
  }

  @AfterAll
  static void close() {
    driver.quit();
  }

  private static void show(int width, int height, String scheme) {
    show(page, width, height, scheme);
  }

  private static void show(Path what, int width, int height, String scheme) {
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
    driver.get(what.toUri().toString());
  }

  private static void picture(String name) throws IOException {
    Files.write(PICTURES.resolve(name + ".png"), driver.getScreenshotAs(OutputType.BYTES));
  }

  /** In an ordinary run each width and each scheme once. */
  static List<Arguments> screens() {
    List<Arguments> screens =
        List.of(
            Arguments.of(360, 740, "light"),
            Arguments.of(1280, 900, "dark"),
            Arguments.of(360, 740, "dark"),
            Arguments.of(1280, 900, "light"));
    return screens.subList(0, Examples.of(2, screens.size()));
  }

  @ParameterizedTest
  @MethodSource("screens")
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

  @ParameterizedTest
  @ValueSource(booleans = {true, false})
  void aTelephoneNeedNotScrollSideways(boolean pack) {
    show(pack ? page : reference, 360, 740, "light");
    long wide = (Long) driver.executeScript("return document.documentElement.scrollWidth");
    assertThat(wide).isLessThanOrEqualTo(360);
    Object cut =
        driver.executeScript(
            SEEN
                + "return [...document.querySelectorAll('body *')].filter(seen)"
                + ".filter(e => !e.closest('svg') && getComputedStyle(e).display !== 'inline')"
                + ".filter(e => e.clientWidth > 1 && e.scrollWidth > e.clientWidth + 1)"
                + ".map(e => e.tagName + '.' + e.className + ' in ' + (e.closest('[id]') || {}).id)");
    assertThat((List<?>) cut).as("nothing is to be slid sideways").isEmpty();
    Object out =
        driver.executeScript(
            SEEN
                + "return [...document.querySelectorAll('body *')].filter(seen)"
                + ".filter(e => e.getBoundingClientRect().right > 361)"
                + ".filter(e => e.getBoundingClientRect().left > -1)"
                + ".map(e => e.tagName + '.' + e.className + ' in ' + (e.closest('[id]') || {}).id)");
    assertThat((List<?>) out).as("nothing is off the screen").isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"true,360", "false,360", "true,1280"})
  void noQuantityIsBrokenOverLines(boolean pack, int width) {
    show(pack ? page : reference, width, 740, "light");
    Object found =
        driver.executeScript(
            "const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);"
                + "const all = []; const broken = [];"
                + "while (texts.nextNode()) {"
                + "  const text = texts.currentNode;"
                + "  if (text.parentElement.closest('svg, style')) continue;"
                + "  for (const q of text.data.matchAll(/[0-9][^\\s]*(\u00a0[^\\s]+)+/g)) {"
                + "    const range = document.createRange();"
                + "    range.setStart(text, q.index); range.setEnd(text, q.index + q[0].length);"
                + "    all.push(q[0]);"
                + "    const lines = new Set([...range.getClientRects()].map(r => Math.round(r.top)));"
                + "    if (lines.size > 1) broken.push(q[0]);"
                + "  }"
                + "} return [broken, all.length];");
    List<?> answer = (List<?>) found;
    assertThat((List<?>) answer.get(0)).isEmpty();
    assertThat((Long) answer.get(1)).as("quantities looked at").isGreaterThan(100);
  }

  /** Where to brake, by what, how hard, and what if the brake fails: before anything is moved. */
  @Test
  void theFirstScreenOfAPlateIsWhatIsReadInAHurry() throws IOException {
    show(360, 740, "light");
    driver.executeScript("document.querySelector('.plate .point').closest('.plate').scrollIntoView()");
    picture("plate-360");
    Object lowest =
        driver.executeScript(
            "const plate = document.querySelector('.plate .point').closest('.plate');"
                + "return ['.point', '.cues', '.question'].map(c =>"
                + " Math.ceil(plate.querySelector(c).getBoundingClientRect().bottom))");
    for (Object bottom : (List<?>) lowest) {
      assertThat((Long) bottom).isBetween(0L, 740L);
    }
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
