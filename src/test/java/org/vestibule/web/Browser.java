package org.vestibule.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.results.Results;
import com.deque.html.axecore.results.Rule;
import com.deque.html.axecore.selenium.AxeBuilder;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Base64;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.openqa.selenium.By;
import org.openqa.selenium.Cookie;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.support.ui.WebDriverWait;
import org.vestibule.ExternalTool;

/** One Chromium for all browser tests, from Debian, through a real driver. */
final class Browser {

  private static final Path CHROMIUM = Path.of("/usr/bin/chromium");
  private static final Path DRIVER = Path.of("/usr/bin/chromedriver");
  private static final Path SCREENSHOTS = Path.of("target", "screenshots");
  private static final Duration PATIENCE = Duration.ofSeconds(20);

  private static final Duration OFTEN = Duration.ofMillis(50);

  private static Browser shared;

  private final ChromeDriver driver;

  private Browser(ChromeDriver driver) {
    this.driver = driver;
  }

  /** The browser, or the end of the calling test where there is none. */
  static synchronized Browser shared() {
    if (shared == null) {
      ExternalTool.require("chromium", "chromium");
      ExternalTool.require("chromedriver", "chromium-driver");
      shared = start();
    }
    return shared;
  }

  private static Browser start() {
    try {
      Path profile = Files.createTempDirectory("browser");
      ChromeOptions options = new ChromeOptions();
      options.setBinary(CHROMIUM.toFile());
      options.addArguments(
          "--headless=new",
          "--no-sandbox",
          "--disable-gpu",
          "--disable-quic",
          "--no-first-run",
          "--disable-background-networking",
          "--disable-component-update",
          "--disable-sync",
          "--disable-dev-shm-usage",
          "--force-color-profile=srgb",
          "--lang=en",
          "--user-data-dir=" + profile);
      options.setAcceptInsecureCerts(true);
      ChromeDriverService service =
          new ChromeDriverService.Builder()
              .usingDriverExecutable(DRIVER.toFile())
              .usingAnyFreePort()
              .build();
      ChromeDriver driver = new ChromeDriver(service, options);
      Runtime.getRuntime().addShutdownHook(new Thread(() -> stop(driver, profile)));
      return new Browser(driver);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void stop(ChromeDriver driver, Path profile) {
    driver.quit();
    try (Stream<Path> all = Files.walk(profile)) {
      all.sorted(Comparator.reverseOrder()).forEach(path -> path.toFile().delete());
    } catch (IOException | UncheckedIOException e) {
      System.err.println("the browser's profile could not be removed: " + e.getMessage());
    }
  }

  ChromeDriver driver() {
    return driver;
  }

  /** A fresh browser as far as the server can tell, holding this session's secret. */
  Browser as(Server server, String secret) {
    size(1280, 900);
    light();
    driver.get(server.address() + "/assets/mark.svg");
    driver.manage().deleteAllCookies();
    driver.manage().addCookie(new Cookie.Builder("vestibule", secret).path("/").build());
    return this;
  }

  void size(int width, int height) {
    driver.executeCdpCommand(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", width < 500));
  }

  void light() {
    colours("light");
  }

  void dark() {
    colours("dark");
  }

  private void colours(String scheme) {
    driver.executeCdpCommand(
        "Emulation.setEmulatedMedia",
        Map.of(
            "media",
            "",
            "features",
            List.of(Map.of("name", "prefers-color-scheme", "value", scheme))));
  }

  WebElement find(String css) {
    return driver.findElement(By.cssSelector(css));
  }

  List<WebElement> all(String css) {
    return driver.findElements(By.cssSelector(css));
  }

  /** Waits until a script's expression is true. */
  void until(String expression) {
    new WebDriverWait(driver, PATIENCE, OFTEN)
        .until(
            any -> Boolean.TRUE.equals(driver.executeScript("return Boolean(" + expression + ")")));
  }

  /** Presses what loads another page, and waits until that page stands there whole. */
  void enter(String css) {
    entering(() -> find(css).click());
  }

  /**
   * Does what loads another page, and waits until that page stands there whole; without it a test
   * finds things of the old page, which are gone when it reads them.
   */
  void entering(Runnable press) {
    driver.executeScript("window.isOld = true");
    press.run();
    until("!window.isOld && document.readyState === 'complete'");
  }

  void press(Keys key) {
    driver.switchTo().activeElement().sendKeys(key);
  }

  /**
   * Keeps how the page looks at 320, 1280 and 2560 pixels, in the dark too, and asks axe-core for
   * what keeps people out; nothing serious may be found, nor anything wider than the page. What the
   * dark changes is contrast alone.
   */
  void look(String name) throws IOException {
    driver.executeScript("document.querySelectorAll('img').forEach(i => i.loading = 'eager')");
    until("[...document.images].every(i => i.complete)");
    for (int width : List.of(2560, 320, 1280)) {
      size(width, width == 320 ? 640 : width * 9 / 16);
      until("document.documentElement.clientWidth <= " + width);
      picture(name + "-" + width, width < 2560);
      assertThat((Long) driver.executeScript("return document.documentElement.scrollWidth"))
          .as(name + " at " + width + " pixels")
          .isLessThanOrEqualTo(width);
    }
    axe(name + " in light colours", new AxeBuilder());
    dark();
    picture(name + "-dark", false);
    axe(name + " in dark colours", new AxeBuilder().withRules(List.of("color-contrast")));
    light();
  }

  /** Keeps how the page looks now, small enough for docs/. */
  void glance(String name) throws IOException {
    until("[...document.images].every(i => i.complete)");
    keep(name + ".jpg", Map.of("format", "jpeg", "quality", 82));
  }

  private void picture(String name, boolean whole) throws IOException {
    keep(name + ".png", Map.of("format", "png", "captureBeyondViewport", whole));
  }

  private void keep(String file, Map<String, Object> how) throws IOException {
    Map<String, Object> answer = driver.executeCdpCommand("Page.captureScreenshot", how);
    Files.createDirectories(SCREENSHOTS);
    Files.write(
        SCREENSHOTS.resolve(file), Base64.getDecoder().decode(String.valueOf(answer.get("data"))));
  }

  private void axe(String what, AxeBuilder axe) {
    Results results = axe.analyze(driver);
    List<Rule> serious =
        results.getViolations().stream()
            .filter(rule -> List.of("serious", "critical").contains(rule.getImpact()))
            .toList();
    String said =
        serious.stream()
            .map(rule -> rule.getId() + ": " + rule.getNodes())
            .collect(Collectors.joining("\n"));
    assertThat(serious).as(what + "\n" + said).isEmpty();
  }
}
