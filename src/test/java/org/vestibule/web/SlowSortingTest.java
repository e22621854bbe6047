package org.vestibule.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;

/** What is pressed while the labelling page still waits for an answer decides nothing. */
class SlowSortingTest {

  @TempDir static Path home;

  private static SampleSite site;
  private static Server server;

  @BeforeAll
  static void start() throws Exception {
    site = SampleSite.own(home);
    server = site.serve();
  }

  @AfterAll
  static void stop() throws Exception {
    server.close();
    site.practice().close();
  }

  private static Browser open(String file) {
    Browser browser = Browser.shared().as(server, site.session(Role.STAFF));
    browser.driver().get(server.address() + "/waiting/" + site.waiting(file));
    browser.until("document.activeElement.id === 'visit'");
    browser.until("document.querySelector('.preview')?.dataset.ask");
    return browser;
  }

  private static void listed(Browser browser, String name) {
    browser.until(
        "[...document.querySelectorAll('#visit-list [role=option]')].map(o => o.textContent)"
            + ".join().includes('"
            + name
            + "')");
  }

  @Test
  void enterTakesNoLineOfAListThatAnswersAnotherText() {
    Browser browser = open("IMG_0007.JPG");
    browser.find("#visit").sendKeys("quill");
    listed(browser, "Quillfeather");
    browser.until("document.querySelectorAll('#visit-list [role=option]').length === 1");
    HeldNet net = HeldNet.hold(browser, "^/visits");
    browser.find("#visit").sendKeys(Keys.chord(Keys.CONTROL, "a"), "marrowit", Keys.ENTER);
    net.until("marrowit".length());
    assertThat(browser.find("#visit").getAttribute("data-visit")).isNull();
    assertThat(browser.all("#visit-list [aria-selected]")).isEmpty();
    browser.driver().executeScript("document.querySelector('#visit-list [role=option]').click()");
    assertThat(browser.find("#visit").getAttribute("data-visit")).isNull();
    assertThat(browser.find("#visit-list").getAttribute("aria-busy")).isEqualTo("true");
    assertThat(browser.find("#visit-state").getText())
        .isEqualTo("Looking for visits. Wait until they stand here.");
    // The answers come in the wrong order: only the last question's answer counts.
    net.letGo("marrowit".length() - 1);
    listed(browser, "Marrowitz");
    browser.find("#visit").sendKeys(Keys.chord(Keys.CONTROL, "a"), "thistle");
    net.letAllGo();
    listed(browser, "Thistlequay");
    browser.until("!document.querySelector('#visit-list').hasAttribute('aria-busy')");
    assertThat(browser.find("#visit-list").getText()).doesNotContain("Marrowitz", "Quillfeather");
    browser.find("#visit").sendKeys(Keys.ENTER);
    browser.until("document.querySelector('#visit').dataset.visit === 'V-1202'");
    assertThat(browser.find("#visit").getAttribute("value")).startsWith("Thistlequay, Tobin");
  }

  @Test
  void aListThatCanNotBeReadIsNoList() {
    Browser browser = open("IMG_0007.JPG");
    browser
        .driver()
        .executeScript(
            "window.fetch = () => Promise.resolve(new Response('<li role=option>x</li>',"
                + " { status: 500 }))");
    browser.find("#visit").sendKeys("quill");
    browser.until("document.querySelector('#visit-state').textContent.startsWith('The visits')");
    browser.find("#visit").sendKeys(Keys.ENTER);
    assertThat(browser.find("#visit-state").getText())
        .isEqualTo("The visits can't be read at the moment. Type again in a minute.");
    assertThat(browser.all("#visit-list [role=option]")).isEmpty();
    assertThat(browser.find("#visit").getAttribute("data-visit")).isNull();
  }

  private static void quill(Browser browser) {
    browser.find("#visit").sendKeys("quill");
    browser.until("!document.querySelector('#visit-list').hasAttribute('aria-busy')");
    browser.until("document.querySelectorAll('#visit-list [role=option]').length === 1");
    browser.find("#visit").sendKeys(Keys.ENTER);
    browser.until("document.activeElement.closest('#mirror')");
  }

  private static void choose(Browser browser, String file) {
    press(browser, ".order [data-key='" + site.waiting(file) + "']");
    browser.until("!document.querySelector('#answers').inert");
    browser.until("document.activeElement.closest('#mirror')");
  }

  private static String current(Browser browser) {
    return browser.find(".order [aria-current]").getAttribute("data-key");
  }

  /** What would be asked of the server by what is said of the photograph that is labelled. */
  private static String asked(Browser browser) {
    return String.valueOf(
        browser.driver().executeScript("return window.asked.filter(Boolean).at(-1)"));
  }

  private static void seeQuestions(Browser browser) {
    browser
        .driver()
        .executeScript(
            """
            const real = window.fetch;
            window.asked = [];
            window.fetch = (address, how) => {
              if (String(address).startsWith("/preview/")) window.asked.push(String(address));
              return real(address, how);
            };
            """);
  }

  private static void press(Browser browser, String css) {
    browser.driver().executeScript("document.querySelector(arguments[0]).click()", css);
  }

  @Test
  void anAnswerBeforeThePictureIsSeenAnswersNothing() {
    Browser browser = open("IMG_0007.JPG");
    quill(browser);
    browser.press(Keys.NUMPAD1);
    browser.until("document.activeElement.id === 'take'");
    String before = current(browser);
    seeQuestions(browser);
    HeldNet net = HeldNet.hold(browser, "^/preview/");
    browser.press(Keys.ENTER);
    net.until(1);
    assertThat(current(browser)).isNotEqualTo(before);
    // Neither the picture before nor what it would have become is seen any more.
    assertThat(browser.all("#previewed .preview")).isEmpty();
    assertThat(browser.find("#asked").isDisplayed()).isFalse();
    for (String what : new String[] {".edge.top", "#mirror [value=corrected]", "#take"}) {
      assertThat(browser.find(what).findElements(By.xpath("ancestor::*[@inert]")))
          .as(what)
          .isNotEmpty();
      press(browser, what);
    }
    assertThat(net.count()).isEqualTo(1);
    net.letAllGo();
    browser.until("document.querySelector('#previewed .preview')");
    browser.until("!document.querySelector('#answers').inert");
    assertThat(browser.find("#asked").isDisplayed()).isTrue();
    assertThat(asked(browser)).doesNotContain("mirror", "up=", "incisors");
    assertThat(browser.all("#mirror input:checked, .edge[aria-pressed=true]")).isEmpty();
  }

  @Test
  void anAnswerBeforeThePictureIsDecodedAnswersNothing() {
    Browser browser = open("IMG_0007.JPG");
    browser
        .driver()
        .executeScript(
            """
            const real = HTMLImageElement.prototype.decode;
            HTMLImageElement.prototype.decode = function () {
              return new Promise((go) => { window.decode = go; }).then(() => real.call(this));
            };
            """);
    press(browser, ".order li:nth-child(3) button");
    browser.until("document.querySelector('#previewed .preview')");
    assertThat(browser.find("#asked").isDisplayed()).isFalse();
    press(browser, "#mirror [value=none]");
    assertThat(browser.all("#previewed [data-shown]")).isEmpty();
    browser.driver().executeScript("window.decode()");
    browser.until("!document.querySelector('#answers').inert");
    assertThat(browser.find("#asked").isDisplayed()).isTrue();
  }

  @Test
  void anEdgeIsNoAnswerToAQuestionThatIsNotAskedYet() {
    Browser browser = open("IMG_0009.JPG");
    quill(browser);
    choose(browser, "IMG_0009.JPG");
    seeQuestions(browser);
    HeldNet net = HeldNet.hold(browser, "^/preview/");
    browser.press(Keys.NUMPAD2);
    net.until(1);
    press(browser, ".edge.bottom");
    assertThat(net.count()).isEqualTo(1);
    net.letAllGo();
    browser.until("document.querySelector('#previewed .preview').dataset.ask");
    assertThat(asked(browser)).doesNotContain("up=", "incisors=");
  }

  @Test
  void whereSomebodyTypesMeanwhileKeepsTheKeys() {
    Browser browser = open("IMG_0007.JPG");
    quill(browser);
    HeldNet net = HeldNet.hold(browser, "^/preview/");
    browser.find("#view").sendKeys(Keys.chord(Keys.CONTROL, "a"), "left bucc");
    browser.until("document.querySelector('#view-list [aria-selected]')");
    browser.press(Keys.ENTER);
    net.until(1);
    browser.find("#teeth").sendKeys(Keys.chord(Keys.CONTROL, "a"), "3");
    net.letAllGo();
    browser.until("document.querySelector('#previewed .preview')?.dataset.ask === 'mirror'");
    browser.press(Keys.NUMPAD1);
    assertThat(browser.find("#teeth").getAttribute("value")).isEqualTo("31");
    assertThat(browser.all("#mirror input:checked")).isEmpty();
  }

  @Test
  void aDoubtIsAnsweredByAPersonEachTimeItIsSeen() {
    Browser browser = open("IMG_E0007.JPG");
    quill(browser);
    press(browser, ".order li:nth-child(2) button");
    browser.until("document.activeElement.closest('#mirror')");
    browser.press(Keys.NUMPAD1);
    browser.until("document.activeElement.id === 'despite'");
    String doubtful = current(browser);
    // A key that is held down answers nothing.
    browser
        .driver()
        .executeScript(
            "document.activeElement.dispatchEvent(new KeyboardEvent('keydown',"
                + " { key: 'Enter', repeat: true, bubbles: true, cancelable: true }))");
    assertThat(browser.find("#despite").isSelected()).isFalse();
    browser.press(Keys.ENTER);
    browser.until("document.activeElement.id === 'take'");
    browser.press(Keys.ENTER);
    browser.until(
        "document.querySelector('[data-key=\"" + doubtful + "\"]').dataset.state === 'ready'");
    browser.until("!document.querySelector('#answers').inert");
    press(browser, ".order [data-key='" + doubtful + "']");
    browser.until("document.querySelector('#despite')");
    browser.until("!document.querySelector('#answers').inert");
    assertThat(browser.find("#despite").isSelected()).isFalse();
    assertThat(browser.find("#take").isEnabled()).isFalse();
    assertThat(browser.find("[data-key='" + doubtful + "']").getAttribute("data-state"))
        .isEqualTo("ready");
  }

  @Test
  void arrowsMoveBetweenTheEdgesAndDecideOnThePictureAlone() {
    Browser browser = open("IMG_0009.JPG");
    quill(browser);
    choose(browser, "IMG_0009.JPG");
    browser.press(Keys.NUMPAD2);
    browser.until("document.activeElement.id === 'window'");
    browser.driver().executeScript("document.querySelector('.edge.top').focus()");
    browser.press(Keys.ARROW_DOWN);
    browser.until("document.activeElement.dataset.edge === 'bottom'");
    browser.press(Keys.ARROW_LEFT);
    browser.until("document.activeElement.dataset.edge === 'left'");
    assertThat(browser.all(".edge[aria-pressed=true]")).isEmpty();
    browser.press(Keys.ENTER);
    browser.until("document.querySelector('.edge.left').getAttribute('aria-pressed') === 'true'");
    browser.until("document.querySelector('.preview')?.dataset.shown");
    browser.driver().executeScript("document.querySelector('#window').focus()");
    browser.press(Keys.ARROW_UP);
    browser.until("document.querySelector('.edge.top').getAttribute('aria-pressed') === 'true'");
    browser.until("document.activeElement.id === 'take'");
    // Pressed again, as by a finger that stays, the picture's answer stays what it is.
    browser.driver().executeScript("document.querySelector('#window').focus()");
    browser.press(Keys.ARROW_UP);
    browser.until("document.activeElement.id === 'take'");
    assertThat(browser.find(".edge.top").getAttribute("aria-pressed")).isEqualTo("true");
  }
}
