package org.vestibule.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.vestibule.assign.PersonWords;
import org.vestibule.assign.PhotoFact;
import org.vestibule.base.ContentHash;
import org.vestibule.flow.Corrections;
import org.vestibule.flow.FilingByHand;
import org.vestibule.flow.Why;
import org.vestibule.store.index.IndexRecord;

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
    // While a preview is made, what takes it can't be pressed.
    browser.until("!document.activeElement.disabled");
    browser.driver().switchTo().activeElement().sendKeys(keys);
  }

  private static void focused(Browser browser, String css) {
    browser.until("document.activeElement && document.activeElement.matches('" + css + "')");
  }

  private static String mark(Browser browser, String edge) {
    return browser.find("#previewed .mark." + edge).getText();
  }

  private static void glance(Browser browser, String name) throws Exception {
    browser.size(1280, 860);
    browser.glance(name);
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
    focused(browser, "#view, #mirror input, #window");
  }

  private static void ready(Browser browser, String key) {
    browser.until(
        "document.querySelector('.order [data-key=\"" + key + "\"]').dataset.state === 'ready'");
  }

  @Test
  void aWholeStretchIsFiledByKeysAloneAndTakenBack() throws Exception {
    String edited = site.waiting("IMG_E0007.JPG");
    String occlusal = site.waiting("IMG_0009.JPG");
    Browser browser = open("/waiting");
    browser.look("waiting");
    glance(browser, "assistant-waiting");
    browser = open("/waiting/" + site.waiting("IMG_0007.JPG"));
    assertThat(browser.all(".order button")).hasSize(4);
    visit(browser, "quill");
    // The list knew the view; whether there was a mirror is always asked.
    focused(browser, "#mirror input");
    assertThat(browser.all("#mirror input:checked")).isEmpty();
    type(browser, "1");
    focused(browser, "#take");
    type(browser, Keys.ENTER);
    edited(browser, edited);
    trimmed(browser);
    occlusal(browser);
    focused(browser, "#file");
    type(browser, Keys.ENTER);
    focused(browser, "#outcome");
    assertThat(browser.all("#outcome [data-state=filed]")).hasSize(3);
    String refused = browser.find("#outcome [data-key='" + edited + "']").getText();
    assertThat(refused).contains("Not filed", "Another version of this shot is filed already");
    IndexRecord filed = filed(occlusal);
    assertThat(filed.shows().viewKey()).isEqualTo("upper-occlusal");
    anotherPersonIsTold(occlusal);
    browser
        .driver()
        .executeScript(
            "document.querySelector('#outcome [data-key=\"' + arguments[0] + '\"] button').focus()",
            occlusal);
    type(browser, Keys.ENTER);
    browser.until("location.pathname.startsWith('/waiting/')");
    browser.until("document.body.textContent.includes('Its filing was taken back')");
    assertThat(site.filed()).noneMatch(record -> site.key(record).equals(occlusal));
  }

  /** A doubt has to be answered before it can be taken. */
  private static void edited(Browser browser, String key) throws Exception {
    browser.until("document.querySelector('.order [aria-current]').dataset.key === '" + key + "'");
    focused(browser, "#mirror input");
    type(browser, "1");
    focused(browser, "#despite");
    assertThat(browser.find("#take").isEnabled()).isFalse();
    assertThat(browser.find("#previewed .trouble").getText()).contains("may have flipped it");
    browser.look("sorting-doubt");
    glance(browser, "assistant-doubt");
    browser.find("#despite").sendKeys(Keys.ENTER);
    focused(browser, "#take");
    type(browser, Keys.ENTER);
    ready(browser, key);
  }

  /** A view typed by its first letters; edges that can't be turned are dropped by a word. */
  private static void trimmed(Browser browser) {
    focused(browser, "#mirror input");
    browser.find("#view").sendKeys(Keys.chord(Keys.CONTROL, "a"), "pf");
    browser.until(
        "document.querySelector('#view-list [aria-selected]')?.dataset.value === 'palatal-front'");
    type(browser, Keys.ENTER);
    focused(browser, "#mirror input");
    type(browser, "2");
    focused(browser, "[data-trim]");
    type(browser, Keys.ENTER);
    focused(browser, "#take");
    // PS3.3 C.7.6.1.1.1 and the geometry: from behind, right is on the viewer's right.
    assertThat(mark(browser, "right")).contains("patient's right", "R");
    type(browser, Keys.ENTER);
  }

  private static void occlusal(Browser browser) throws Exception {
    focused(browser, "#mirror input");
    type(browser, "2");
    focused(browser, "#window");
    assertThat(browser.find("#take").isEnabled()).isFalse();
    type(browser, Keys.ARROW_UP);
    focused(browser, "#take");
    assertThat(mark(browser, "left")).contains("patient's right", "R");
    assertThat(mark(browser, "top")).contains("front");
    browser.look("sorting-preview");
    glance(browser, "assistant-preview");
    crop(browser);
    type(browser, Keys.ENTER);
  }

  /** The crop's edges step from one place to the next at which the picture can be cut. */
  private static void crop(Browser browser) {
    browser.driver().executeScript("document.querySelector('#cropping').open = true");
    WebElement left = browser.find("#cropping [name=left]");
    String whole = picture(browser);
    left.sendKeys(Keys.ARROW_RIGHT, Keys.ARROW_RIGHT, Keys.ARROW_RIGHT);
    browser.until("document.querySelector('#previewed img').src !== '" + whole + "'");
    browser.until("document.querySelector('#previewed img').src.includes('crop=')");
    long sample = Long.parseLong(left.getAttribute("aria-valuetext"));
    // 4:2:0 has MCUs of 16 by 16 samples (ITU-T T.81 A.2.4).
    assertThat(sample).isEqualTo(48);
    browser.until("!document.querySelector('#take').disabled");
    browser.driver().executeScript("document.querySelector('#take').focus()");
  }

  private static String picture(Browser browser) {
    return String.valueOf(browser.find("#previewed img").getAttribute("src"));
  }

  private static IndexRecord filed(String key) throws Exception {
    return site.filed().stream()
        .filter(record -> site.key(record).equals(key))
        .findFirst()
        .orElseThrow();
  }

  private static void anotherPersonIsTold(String key) throws Exception {
    Caller other = new Caller(server, site.session(Role.ADMINISTRATOR));
    String answer =
        Caller.text(
            other.post(
                "/file",
                Map.of(
                    "visit",
                    "V-1201",
                    "photo",
                    key,
                    key + ".view",
                    "upper-occlusal",
                    key + ".mirror",
                    "as shot",
                    key + ".incisors",
                    "bottom",
                    key + ".shown",
                    "L\\P")));
    assertThat(answer)
        .contains("data-state=\"elsewhere\"", "B. Rook filed this photograph already");
    assertThat(Caller.text(other.get("/waiting/" + key))).contains("B. Rook filed this photograph");
  }

  @Test
  void whatIsFiledIsCorrectedWithItsReason() throws Exception {
    IndexRecord wrong =
        site.filed().stream()
            .filter(record -> record.shows().viewKey().equals("right-buccal"))
            .findFirst()
            .orElseThrow();
    Browser browser = open("/correct/" + site.key(wrong));
    browser.until("document.querySelector('.preview')?.dataset.shown");
    assertThat(browser.find("#visit").getAttribute("data-visit")).isEqualTo(wrong.who().visitKey());
    browser.look("correcting");
    browser.find("#view").sendKeys(Keys.chord(Keys.CONTROL, "a"), "left buccal");
    browser.until(
        "document.querySelector('#view-list [aria-selected]')?.dataset.value === 'left-buccal'");
    type(browser, Keys.ENTER);
    browser.until("document.querySelector('.preview')?.dataset.shown === 'P\\\\F'");
    assertThat(mark(browser, "left")).contains("front");
    focused(browser, "#take");
    type(browser, Keys.ENTER);
    focused(browser, "#why");
    aVisitThatIsTypedHasToBeTaken(browser);
    focused(browser, "#why");
    type(browser, "the other side", Keys.ENTER);
    browser.until("location.pathname.startsWith('/photograph/')");
    assertThat(filed(site.key(wrong)).shows().viewKey()).isEqualTo("left-buccal");
  }

  /** Nobody's photograph stays under a visit while another one stands in the field. */
  private static void aVisitThatIsTypedHasToBeTaken(Browser browser) {
    String visit = browser.find("#visit").getAttribute("data-visit");
    browser.find("#visit").sendKeys(Keys.chord(Keys.CONTROL, "a"), "quillfeather");
    browser.until("!document.querySelector('#visit').dataset.visit");
    assertThat(browser.find("#correct-now").isEnabled()).isFalse();
    assertThat(browser.find("#correct-visit").getText()).isEqualTo("Say above whose they are.");
    browser.find("#visit").sendKeys(Keys.chord(Keys.CONTROL, "a"), visit);
    browser.until("document.querySelectorAll('#visit-list [role=option]').length === 1");
    browser.until("!document.querySelector('#visit-list').hasAttribute('aria-busy')");
    browser.find("#visit").sendKeys(Keys.ENTER);
    focused(browser, "#take");
    type(browser, Keys.ENTER);
    browser.until("!document.querySelector('#correct-now').disabled");
  }

  @Test
  void aPageLeftOpenWritesNothingOverAnothersCorrection() throws Exception {
    IndexRecord filed =
        site.filed().stream()
            .filter(record -> record.shows().viewKey().equals("frontal"))
            .findFirst()
            .orElseThrow();
    String key = site.key(filed);
    Browser browser = open("/correct/" + key);
    browser.until("document.querySelector('.preview')?.dataset.shown");
    var photo = new ContentHash(filed.hash());
    FilingByHand filing = new FilingByHand(site.practice());
    String before = filing.decision(photo);
    new Corrections(site.practice())
        .move(
            filed.id(),
            PersonWords.by("C. Wren").with(PhotoFact.NOTE, "looked at"),
            Why.of("a note was missing"))
        .orThrow();
    String now = filing.decision(photo);
    assertThat(now).isNotEqualTo(before);
    browser.find("#stage").sendKeys("after");
    browser.until("!document.querySelector('#take').disabled");
    browser.driver().executeScript("document.querySelector('#take').click()");
    focused(browser, "#why");
    type(browser, "the stage");
    browser.entering(() -> type(browser, Keys.ENTER));
    assertThat(browser.find("h1").getText())
        .isEqualTo("This photograph was corrected meanwhile by C. Wren, on March 14, 2026.");
    assertThat(browser.find("main p").getText())
        .isEqualTo(
            "Nothing was changed. Look at it again, then correct it if something is still wrong.");
    assertThat(filing.decision(photo)).isEqualTo(now);
    Caller other = new Caller(server, site.session(Role.ADMINISTRATOR));
    for (String path : List.of("/take-back/", "/reject/", "/correct/")) {
      Map<String, String> form = Map.of("why", "an old page", "decision", before);
      assertThat(Caller.text(other.post(path + key, form)))
          .contains("This photograph was corrected meanwhile by C. Wren");
      assertThat(Caller.text(other.post(path + key, Map.of("why", "a page without it"))))
          .contains("This photograph was filed meanwhile by C. Wren");
    }
    String another =
        Caller.text(
            other.post(
                "/take-back/" + key, Map.of("why", "x", "decision", now, "person", "C. Wren")));
    assertThat(another).contains("was said by C. Wren, and B. Rook sits here now");
    assertThat(filing.decision(photo)).isEqualTo(now);
  }

  /** RFC 9110, 10.2.3 and 15.6.4: what is told to come later comes later, and a person reads so. */
  @Test
  void aServerThatHasTooMuchToDoIsAskedAgainAndThePersonIsTold() throws Exception {
    Browser browser = open("/waiting/" + site.waiting("IMG_0023.JPG"));
    browser.until("document.querySelector('.preview')");
    assertThat(browser.find("#server-busy").getText()).isEmpty();
    // The server's next two answers to a preview, as it gives them when it has too much to do.
    browser
        .driver()
        .executeScript(
            "const real = window.fetch; window.asked = 0; window.fetch = (address, how) =>"
                + " String(address).startsWith('/preview/') && ++window.asked <= 2"
                + " ? Promise.resolve(new Response('', { status: 503,"
                + " headers: { 'Retry-After': '1' } })) : real(address, how);"
                + "document.querySelector('.order button').click();");
    browser.until("document.querySelector('#server-busy').textContent !== ''");
    assertThat(browser.find("#server-busy").getText())
        .isEqualTo("The server has too much to do at the moment. This page asks again by itself.");
    browser.until("document.querySelector('.preview') && window.asked === 3");
    assertThat(browser.find("#server-busy").getText()).isEmpty();
  }

  @Test
  void thePageSpeaksTheOtherLanguageToo() throws Exception {
    Browser browser = open("/waiting/" + site.waiting("IMG_0023.JPG"));
    browser.enter(".foot button[lang=de]");
    browser.until("document.documentElement.lang === 'de'");
    browser.until("document.querySelector('.preview')");
    assertThat(browser.all("main [lang=en]")).extracting(WebElement::getText).isEmpty();
    browser.look("sorting-german");
    browser.driver().get(server.address() + "/waiting");
    assertThat(browser.all("main [lang=en]"))
        .extracting(one -> one.getAttribute("textContent"))
        .isEmpty();
    assertThat(browser.find("main").getAttribute("textContent"))
        .contains("wo in dieser Ansicht die Schneidezähne liegen: Okklusal Oberkiefer.");
    browser.driver().get(server.address() + "/?q=upper+right+first+molar+before");
    assertThat(browser.find("#results .count").getText())
        .contains("Verstanden: erster Molar oben rechts (16); Stadium vorher");
    browser.enter(".foot button[lang=en]");
    browser.until("document.documentElement.lang === 'en'");
  }
}
