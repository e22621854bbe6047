package org.vestibule.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.security.SecureRandom;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;
import org.vestibule.flow.Sharing;
import org.vestibule.store.index.IndexRecord;

/** A link is made, opened by somebody outside, and ended, in a real browser. */
class ShareBrowserTest {

  @TempDir private static Path home;
  private static SampleSite site;
  private static Server server;

  @BeforeAll
  static void start() throws Exception {
    site = SampleSite.own(home);
    server = site.serve(SampleSite.REACHED);
  }

  @AfterAll
  static void stop() throws Exception {
    server.close();
    site.practice().close();
  }

  private static void open(Browser browser, String address) {
    browser.driver().manage().deleteAllCookies();
    browser.driver().get("about:blank");
    browser.driver().get(address);
    browser.until("!document.querySelector('#open')");
  }

  @Test
  void aLinkIsMadeOpenedWithItsSecondSecretAndEnded() throws Exception {
    Browser browser = Browser.shared().as(server, site.session(Role.STAFF));
    IndexRecord photo =
        site.filed().stream()
            .filter(record -> record.shows().viewKey().equals("upper-occlusal"))
            .findFirst()
            .orElseThrow();
    browser.driver().get(server.address() + "/photograph/" + site.key(photo));
    browser.enter("a[href^='/share/']");
    browser.until("document.querySelector('#purpose')");
    browser
        .driver()
        .executeScript("document.querySelectorAll('[name=photo]').forEach(i => i.checked = true)");
    browser.look("share");
    browser.driver().executeScript("document.querySelector('#purpose').value = 'own-copy'");
    browser.find("#recipient").sendKeys("Hazel Mossgrove");
    browser.find("#asked-by").sendKeys("A. Finch");
    browser.find("#why").sendKeys("asked at the desk");
    browser.enter("main .button");
    browser.until("document.querySelector('.large-secret')");
    String address = browser.all(".address").get(0).getText();
    String second = browser.find(".large-secret").getText();
    browser.look("share-made");
    browser.size(760, 700);
    browser.glance("referrer-link");
    browser.size(1280, 900);

    open(browser, address);
    browser.find("#second").sendKeys("not this one");
    browser.enter("main .button");
    browser.until("document.querySelector('.trouble')");
    browser.look("shared-second");
    browser.find("#second").sendKeys(second);
    browser.enter("main .button");
    browser.until("document.querySelector('#photographs')");
    // The link's secret stands in no address that the browser keeps.
    assertThat(browser.driver().getCurrentUrl()).endsWith("/shared/photographs");
    int all = browser.all("#photographs li:not([hidden])").size();
    assertThat(all).isGreaterThan(3);
    browser.look("shared");
    browser.size(1100, 640);
    browser.glance("referrer-page");

    // By keys alone: a tooth, then the photograph.
    browser
        .driver()
        .executeScript("document.querySelector('input[name=tooth][value=\"16\"]').focus()");
    browser.press(Keys.SPACE);
    browser.until("location.search === '?tooth=16'");
    assertThat(browser.all("#photographs li:not([hidden])")).hasSize(1);
    browser
        .driver()
        .executeScript("document.querySelector('#photographs li:not([hidden]) a').focus()");
    browser.press(Keys.ENTER);
    browser.until("document.querySelector('#large')");
    assertThat(browser.find("h1").getText()).isEqualTo("Upper occlusal");
    // PS3.3 C.7.6.1.1.1: the row of an upper occlusal runs to the patient's left.
    assertThat(browser.find(".mark.right").getText()).contains("patient's left", "L");
    browser.look("shared-photograph");

    Sharing sharing = new Sharing(site.practice());
    int number = sharing.all().get(sharing.all().size() - 1).number();
    sharing.end(number, "B. Rook", "seen").orThrow();
    browser.driver().navigate().refresh();
    assertThat(browser.all("#large")).isEmpty();
    open(browser, address);
    assertThat(browser.find("h1").getText())
        .isEqualTo("There is nothing to see behind this link, or no longer.");
    browser.look("shared-nothing");
    Browser staff = Browser.shared().as(server, site.session(Role.STAFF));
    staff.driver().get(server.address() + "/shares");
    assertThat(staff.find("main").getText())
        .contains("Hazel Mossgrove", "opened on", "wrong second secret on", "ended or past");
    staff.look("shares");
  }

  @Test
  void germanIsSpokenWhenChosen() throws Exception {
    Browser browser = Browser.shared().as(server, "");
    ShareLinks.Made made = site.share("own-copy", false, new Secrets(new SecureRandom()).next());
    open(browser, made.address().replace("http://localhost", server.address()));
    browser.until("document.querySelector('#photographs')");
    browser.enter("button[value=de]");
    browser.until("document.documentElement.lang === 'de'");
    assertThat(browser.find("main").getText())
        .contains("Geteilte Aufnahmen", "Okklusal Oberkiefer");
  }
}
