package org.vestibule.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Cookie;
import org.openqa.selenium.Keys;
import org.vestibule.flow.Ingest;
import org.vestibule.flow.IngestRequest;
import org.vestibule.flow.Practice;
import org.vestibule.flow.Progress;
import org.vestibule.flow.TestHome;
import org.vestibule.flow.WaitingPhotos;
import org.vestibule.flow.WebRules;
import org.vestibule.keys.Passwords;
import org.vestibule.samples.Scene;
import org.vestibule.store.ledger.DecisionRow;

/** More photographs than one request takes, and a sitting that ends among them. */
class LongStretchTest {

  private static final int MANY = 28;

  /** Says of every photograph that there was no mirror, and takes it, as a person does by keys. */
  private static final String LABEL_ALL =
      """
      const done = arguments[0];
      const key = (where, name) =>
        where.dispatchEvent(new KeyboardEvent("keydown", { key: name, bubbles: true, cancelable: true }));
      let said = "";
      const step = () => {
        const at = document.activeElement;
        const now = document.querySelector(".order [aria-current]").dataset.key;
        if (at.id === "file") return done();
        if (at.closest("#mirror") && said !== now) {
          said = now;
          key(at, "1");
        }
        if (at.id === "take" && !at.disabled) at.click();
        setTimeout(step, 5);
      };
      step();
      """;

  @TempDir Path folder;

  private final List<String> said = new ArrayList<>();
  private final List<Throwable> defects = new ArrayList<>();

  private static void signedIn(Browser browser, Practice practice, String person) {
    String secret = SampleSite.sittings(practice).begin("staff", Role.STAFF, "", person);
    browser.driver().manage().addCookie(new Cookie.Builder("vestibule", secret).path("/").build());
  }

  private static Practice practice(Path folder) throws Exception {
    TestHome home = TestHome.in(folder);
    StringBuilder list = new StringBuilder("file,view\n");
    for (int at = 0; at < MANY; at++) {
      home.put("a" + at + ".jpg", Scene.FACE_SMILING, at);
      list.append("a").append(at).append(".jpg,frontal\n");
    }
    home.manifest(list.toString());
    Practice practice = home.open();
    Path rows = home.inbox().resolve("manifest.csv");
    Ingest.run(
            practice,
            new IngestRequest(home.inbox(), rows, "nightly job", false, false),
            Progress.NONE)
        .orThrow();
    practice
        .store()
        .ledger()
        .accounts()
        .add("staff", "staff", Passwords.hash("four calm herons wade".toCharArray()), "A. Finch");
    return practice;
  }

  @Test
  void allAreFiledInParcelsAndNothingIsLostWhenTheSittingEnds() throws Exception {
    try (Practice practice = practice(folder);
        Server server =
            Server.start(practice, WebRules.DEFAULT.at(0), null, said::add, defects::add)) {
      String secret = SampleSite.sittings(practice).begin("staff", Role.STAFF, "", "B. Rook");
      Browser browser = Browser.shared().as(server, secret);
      var first = new WaitingPhotos(practice).all().get(0).hash();
      browser.driver().get(server.address() + "/waiting/" + new PhotoKeys(practice).of(first));
      browser.until("document.activeElement.id === 'visit'");
      browser.find("#visit").sendKeys("tallgrass");
      browser.until("document.querySelectorAll('#visit-list [role=option]').length === 1");
      browser.until("!document.querySelector('#visit-list').hasAttribute('aria-busy')");
      browser.find("#visit").sendKeys(Keys.ENTER);
      browser.until("document.activeElement.closest('#mirror')");
      browser.driver().executeAsyncScript(LABEL_ALL);
      assertThat(browser.find("#ready").getText()).isEqualTo(MANY + " photographs are ready.");
      personChanged(browser, practice, secret);
      HeldNet net = HeldNet.hold(browser, "^/file$");
      browser.press(Keys.ENTER);
      net.until(1);
      net.letGo(0);
      net.until(2);
      browser.until("document.querySelectorAll('#outcome [data-state=filed]').length === 25");
      var sittings = SampleSite.sittings(practice);
      sittings.end(sittings.visitor(secret));
      net.letAllGo();
      browser.until("document.querySelector('#ended').open");
      assertThat(browser.find("#ended").getText()).contains("Nothing is lost", "B. Rook");
      String current = browser.find(".order [aria-current]").getAttribute("data-key");
      browser.press(Keys.PAGE_UP);
      assertThat(browser.find(".order [aria-current]").getAttribute("data-key")).isEqualTo(current);
      goOn(browser, "Nobody is signed in yet.");
      signedIn(browser, practice, "C. Wren");
      goOn(
          browser,
          "C. Wren is signed in now. What stands here was said by somebody else, who has to go on"
              + " with it.");
      assertThat(practice.store().ledger().waiting().all()).hasSize(MANY - 25);
      signedIn(browser, practice, "B. Rook");
      browser.find("#ended button").click();
      browser.until("document.querySelectorAll('#outcome [data-state=filed]').length === " + MANY);
      assertThat(practice.store().ledger().waiting().all()).isEmpty();
      assertThat(practice.store().ledger().decisions().of(first))
          .extracting(DecisionRow::decidedBy)
          .containsExactly("B. Rook");
      browser.entering(() -> browser.find("#outcome button").click());
      assertThat(browser.driver().getCurrentUrl()).contains("/waiting/");
      assertThat(practice.store().ledger().waiting().all()).hasSize(1);
      assertThat(defects).isEmpty();
    }
  }

  /**
   * In another window of the same browser somebody else sat down; nothing is filed in their name.
   */
  private static void personChanged(Browser browser, Practice practice, String secret) {
    Sittings sittings = SampleSite.sittings(practice);
    sittings.person(sittings.visitor(secret), "C. Wren");
    browser.press(Keys.ENTER);
    browser.until("document.querySelector('#outcome h1')");
    assertThat(browser.find("#outcome").getText())
        .contains(
            "What stands on this page was said by B. Rook, and C. Wren sits here now",
            "Nothing was changed.");
    assertThat(practice.store().ledger().waiting().all()).hasSize(MANY);
    assertThat(browser.find("#ready").getText()).isEqualTo(MANY + " photographs are ready.");
    sittings.person(sittings.visitor(secret), "B. Rook");
    browser.driver().executeScript("document.querySelector('#file').focus()");
  }

  private static void goOn(Browser browser, String words) throws Exception {
    browser.find("#ended button").click();
    browser.until("document.querySelector('#ended .trouble').textContent !== ''");
    browser.until("document.querySelector('#ended .trouble').textContent === \"" + words + "\"");
    browser.glance("sitting-ended");
  }
}
