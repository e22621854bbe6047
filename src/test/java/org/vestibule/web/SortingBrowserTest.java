package org.vestibule.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;

/** What waits is labelled and filed in a real browser, by keys alone. */
class SortingBrowserTest {

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

  private static Browser open(String path) {
    Browser browser = Browser.shared().as(server, site.session(Role.STAFF));
    browser.driver().get(server.address() + path);
    return browser;
  }

  private static void type(Browser browser, CharSequence... keys) {
    browser.driver().switchTo().activeElement().sendKeys(keys);
  }

  private static void focused(Browser browser, String css) {
    browser.until("document.activeElement && document.activeElement.matches('" + css + "')");
  }

  private static String mark(Browser browser, String edge) {
    return browser.find("#previewed .mark." + edge).getText();
  }

  /** Chooses the first visit that holds the time: nothing is chosen before. */
  private static void visit(Browser browser, String typed) {
    focused(browser, "#visit");
    assertThat(browser.find("#visit").getAttribute("data-visit")).isNull();
    type(browser, typed);
    browser.until("document.querySelector('#visit-list [aria-selected]')?.dataset.value");
    browser.until("document.querySelectorAll('#visit-list [role=option]').length === 1");
    type(browser, Keys.ENTER);
    browser.until("document.querySelector('#visit').dataset.visit");
    focused(browser, "#view, #mirror input, .edge");
  }

  private static void ready(Browser browser, String key) {
    browser.until(
        "document.querySelector('.order [data-key=\"" + key + "\"]').dataset.state === 'ready'");
  }

  @Test
  void aWholeStretchIsFiledByKeysAlone() throws Exception {
    String first = site.waiting("IMG_0007.JPG");
    Browser browser = open("/waiting");
    browser.look("waiting");
    browser = open("/waiting/" + first);
    focused(browser, "#visit");
    List<WebElement> photos = browser.all(".order button");
    assertThat(photos).hasSizeBetween(3, 6);
    browser.look("sorting");
    System.out.println(browser.driver().executeScript("return document.body.innerText"));
    visit(browser, "quill");
    browser.look("sorting-visit");
  }
}
