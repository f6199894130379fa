package gradepost;

import java.nio.file.Path;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;

/** The Chromium that is installed on this machine, without a window. */
public final class HeadlessChromium {
  /**
   * Opens it.
   *
   * @param profile a folder for what it keeps
   */
  public static ChromeDriver with(Path profile) {
    System.setProperty("SE_OFFLINE", "true");
    ChromeOptions options = new ChromeOptions();
    options.setBinary("/usr/bin/chromium");
    options.addArguments(
        "--headless=new",
        "--no-sandbox",
        "--disable-dev-shm-usage",
        "--disable-gpu",
        "--user-data-dir=" + profile);
    return new ChromeDriver(
        new ChromeDriverService.Builder()
            .usingDriverExecutable(Path.of("/usr/bin/chromedriver").toFile())
            .build(),
        options);
  }

  private HeadlessChromium() {}
}
