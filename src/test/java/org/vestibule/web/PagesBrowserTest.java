package org.vestibule.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Point;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.Keys;
import org.openqa.selenium.Rectangle;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.interactions.Actions;
import org.vestibule.base.ContentHash;
import org.vestibule.flow.Faces;
import org.vestibule.store.index.IndexRecord;

/** Search and photograph in a real browser. */
class PagesBrowserTest {

  private static final SampleSite SITE = SampleSite.shared();

  private static Server server;

  @BeforeAll
  static void start() {
    server = SITE.serve();
  }

  @AfterAll
  static void stop() {
    server.close();
  }

  private static Browser browser() {
    return Browser.shared().as(server, SITE.session(Role.STAFF));
  }

  private static void open(Browser browser, String path) {
    browser.driver().get(server.address() + path);
  }

  @Test
  void searchIsUsedByKeysAndTheAddressIsTheQuestion() throws Exception {
    Browser browser = browser();
    open(browser, "/");
    browser.look("search");
    browser.find("#q").sendKeys("before");
    browser.until("location.search.includes('q=before')");
    browser
        .driver()
        .executeScript("document.querySelector('input[name=tooth][value=\"16\"]').focus()");
    browser.press(Keys.SPACE);
    browser.until("location.search.includes('tooth=16')");
    browser.until("document.querySelector('#results').textContent.includes('first molar')");
    String understood = browser.find("#results .count").getText();
    assertThat(understood).contains("upper right first molar", "stage before");
    String address = browser.driver().getCurrentUrl();
    int found = browser.all("#results .pictures li").size();
    open(browser, address.substring(server.address().length()));
    assertThat(browser.find("#q").getAttribute("value")).isEqualTo("before");
    assertThat(browser.find("input[name=tooth][value='16']").isSelected()).isTrue();
    assertThat(browser.all("#results .pictures li")).hasSize(found);
    browser.look("search-found");
    browser.glance("search-page");
  }

  @Test
  void theViewersLeftIsThePatientsRight() {
    Browser browser = browser();
    open(browser, "/");
    int right = browser.find("input[value='16']").getRect().getX();
    int left = browser.find("input[value='26']").getRect().getX();
    int upper = browser.find("input[value='11']").getRect().getY();
    int lower = browser.find("input[value='41']").getRect().getY();
    assertThat(right).isLessThan(left);
    assertThat(upper).isLessThan(lower);
    assertThat(browser.find(".sides").getText()).contains("R", "L", "patient's right");
  }

  @Test
  void aPhotographIsZoomedAndMarked() throws Exception {
    Browser browser = browser();
    IndexRecord occlusal =
        SITE.filed().stream()
            .filter(record -> record.shows().viewKey().equals("upper-occlusal"))
            .findFirst()
            .orElseThrow();
    open(browser, "/photograph/" + SITE.key(occlusal));
    // PS3.3 C.7.6.1.1.1: the row of an upper occlusal runs to the patient's left.
    assertThat(browser.find(".mark.right").getText()).contains("patient's left", "L");
    assertThat(browser.find(".mark.left").getText()).contains("patient's right", "R");
    browser.look("photograph");
    browser.find("#large").sendKeys("+");
    browser.until("document.querySelector('#large img').style.transform.includes('scale(1.4)')");
    browser.find("#large").sendKeys("0");
    browser.until("document.querySelector('#large img').style.transform.includes('scale(1)')");
  }

  @Test
  void theWheelMovesThePageAndEnlargesWithControlAlone() throws Exception {
    Browser browser = browser();
    open(browser, "/photograph/" + SITE.key(SITE.filed().get(0)));
    browser.size(1280, 500);
    wheel(browser, 0);
    browser.until("window.scrollY > 100");
    assertThat(browser.find("#large img").getAttribute("style")).doesNotContain("scale");
    browser.driver().executeScript("window.scrollTo(0, 0)");
    wheel(browser, 2);
    browser.until("document.querySelector('#large img').style.transform.includes('scale(1.2)')");
    assertThat((Number) browser.driver().executeScript("return window.scrollY")).isEqualTo(0L);
  }

  /**
   * A step of the wheel over the picture; 2 says that Control is held (DevTools protocol, Input).
   */
  private static void wheel(Browser browser, int modifiers) {
    Rectangle box = browser.find("#large .window").getRect();
    int up = modifiers == 0 ? 1 : -1;
    browser
        .driver()
        .executeCdpCommand(
            "Input.dispatchMouseEvent",
            Map.of(
                "type",
                "mouseWheel",
                "x",
                box.getX() + box.getWidth() / 2,
                "y",
                300,
                "deltaX",
                0,
                "deltaY",
                240 * up,
                "modifiers",
                modifiers));
  }

  /** What is clicked on is what is judged: the most even spot of the drawing, which is no card. */
  @Test
  void aGreyCardIsClickedOn() throws Exception {
    Browser browser = browser();
    IndexRecord frontal =
        SITE.filed().stream()
            .filter(record -> record.shows().viewKey().equals("frontal"))
            .findFirst()
            .orElseThrow();
    open(browser, "/photograph/" + SITE.key(frontal));
    browser.enter("a[href$='/grey-card']");
    WebElement picture = browser.find(".spot input[type=image]");
    Dimension shown = picture.getSize();
    assertThat(Math.max(shown.getWidth(), shown.getHeight())).isEqualTo(640);
    browser.look("grey-card");
    picture.sendKeys(Keys.ENTER);
    browser.until("document.querySelector('.trouble') !== null");
    assertThat(browser.find(".trouble").getText()).startsWith("Nothing was clicked on.");
    Point even = even(ImageIO.read(new ByteArrayInputStream(picture(frontal))), shown);
    new Actions(browser.driver())
        .moveToElement(
            browser.find(".spot input[type=image]"),
            even.x - shown.getWidth() / 2,
            even.y - shown.getHeight() / 2)
        .click()
        .perform();
    browser.until("document.querySelector('.trouble').textContent.includes('CIEDE2000')");
    assertThat(browser.find(".trouble").getText())
        .matches(
            "(?s)The grey card looks [a-z ]+: \\d+\\.\\d \\(CIEDE2000\\) from grey, more than 1\\.8\\..*"
                + "Compare no shades by this photograph.*");
    browser.glance("grey-card-said");
    browser.find("details summary").click();
    browser.find("#across").sendKeys("0");
    browser.find("#down").sendKeys("101");
    browser.driver().executeScript("document.querySelector('details form').noValidate = true");
    browser.enter("details .button");
    assertThat(browser.find(".trouble").getText()).startsWith("Nothing was clicked on.");
  }

  private static byte[] picture(IndexRecord record) throws IOException {
    return new Faces(SITE.practice()).picture(new ContentHash(record.hash())).orThrow();
  }

  /** Middle of the square of 5 % whose colours differ least, none dark or bright, as shown. */
  private static Point even(BufferedImage picture, Dimension shown) {
    int side = picture.getWidth() / 20;
    Point best = new Point();
    int least = Integer.MAX_VALUE;
    for (int y = side; y < picture.getHeight() - side; y += side / 2) {
      for (int x = side; x < picture.getWidth() - side; x += side / 2) {
        int spread = spread(picture, x - side / 2, y - side / 2, side);
        if (spread < least) {
          least = spread;
          best =
              new Point(
                  x * shown.getWidth() / picture.getWidth(),
                  y * shown.getHeight() / picture.getHeight());
        }
      }
    }
    return best;
  }

  private static int spread(BufferedImage picture, int left, int top, int side) {
    int all = 0;
    for (int shift = 0; shift <= 16; shift += 8) {
      int low = 255;
      int high = 0;
      for (int i = 0; i < side * side; i++) {
        int value = picture.getRGB(left + i % side, top + i / side) >> shift & 0xFF;
        low = Math.min(low, value);
        high = Math.max(high, value);
      }
      all += low < 30 || high > 240 ? 1000 : high - low;
    }
    return all;
  }

  @Test
  void twoOfAKindAreLaidOverEachOther() throws Exception {
    Browser browser = browser();
    List<IndexRecord> kind =
        SITE.filed().stream().filter(record -> record.shows().teeth().equals(List.of(46))).toList();
    assertThat(kind.size()).isGreaterThan(1);
    String first = SITE.key(kind.get(0));
    String last = SITE.key(kind.get(kind.size() - 1));
    open(browser, "/photograph/" + first);
    assertThat(browser.all(".kind a.beside")).hasSize(kind.size() - 1);
    browser.glance("photograph-kind");
    open(browser, "/photograph/" + last + "/beside/" + first);
    assertThat(browser.all("figcaption time")).hasSize(2);
    assertThat(browser.find("figure img").getAttribute("src")).endsWith("/picture/" + first);
    browser.look("comparison");
    browser.find("input[value=slider]").sendKeys(Keys.SPACE);
    browser.until("document.getElementById('two').classList.contains('over')");
    browser.find("#cut").sendKeys(Keys.HOME);
    browser.until("document.getElementById('two').style.getPropertyValue('--cut') === '0%'");
    browser.find("#cut").sendKeys(Keys.PAGE_UP, Keys.PAGE_UP, Keys.PAGE_UP, Keys.PAGE_UP);
    browser.glance("comparison-slider");
  }

  @Test
  void germanIsSpokenWhenChosen() throws Exception {
    Browser browser = browser();
    open(browser, "/");
    browser.enter("button[value=de]");
    browser.until("document.documentElement.lang === 'de'");
    assertThat(browser.find(".views").getText()).contains("Okklusal Oberkiefer");
    browser.look("search-german");
  }

  @Test
  void entryAndRefusalsAreReadable() throws Exception {
    Browser browser = Browser.shared().as(server, "");
    open(browser, "/");
    browser.find("#name").sendKeys("staff");
    browser.find("#password").sendKeys("not the password");
    browser.enter("main .button");
    assertThat(browser.find(".trouble").getText()).startsWith("Name and password don't fit");
    browser.look("sign-in");
    browser.find("#name").sendKeys("staff");
    browser.find("#password").sendKeys(SampleSite.PASSWORD);
    browser.enter("main .button");
    assertThat(browser.find("#q").isDisplayed()).isTrue();
    open(browser, "/who");
    browser.look("who");
    browser.find("#person").sendKeys("B. Rook");
    browser.enter("main .button");
    assertThat(browser.find(".sitting").getText()).contains("B. Rook");
    open(browser, "/nothing");
    browser.look("refused");
    assertThat(List.of(browser.find("h1").getText()))
        .containsExactly("There is nothing at this address.");
  }
}
