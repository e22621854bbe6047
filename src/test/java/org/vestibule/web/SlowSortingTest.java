package org.vestibule.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
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
}
