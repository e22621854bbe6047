package org.vestibule.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.base.ContentHash;

/** What the phone's page still knows when it was loaded again, and which file holds no other up. */
class PhoneReloadTest {

  private static final Path ROLL = Path.of("samples", "roll");

  /** Bytes that a camera adds after the picture; four pieces instead of one. */
  private static final int MORE = 1_600_000;

  private static final String NOT_YET = "Do not delete anything from the phone yet.";
  private static final String ALL_SAFE =
      "All of them arrived and are proved. They may be deleted from the phone.";

  @TempDir private static Path home;
  @TempDir private static Path phone;
  private static SampleSite site;
  private static Server server;

  @BeforeAll
  static void start() throws Exception {
    site = SampleSite.own(home);
    site.visitsOfToday();
    server = site.serve();
  }

  @AfterAll
  static void stop() throws Exception {
    server.close();
    site.practice().close();
  }

  /** Comes with the code of a new page for the visit, by this line; gives the page's address. */
  private static String asPhone(Browser browser, CutLine line) {
    String secret = site.secret();
    site.phonesPage(SampleSite.TODAY_ONE, secret);
    String address = "http://127.0.0.1:" + line.port() + "/phone#" + secret;
    read(browser, address);
    return address;
  }

  private static void read(Browser browser, String address) {
    browser.size(360, 740);
    browser.driver().get("about:blank");
    browser.driver().manage().deleteAllCookies();
    browser.driver().get(address);
    browser.until("document.getElementById('phone')");
  }

  private static List<Path> photographs(String mark, String... names) throws Exception {
    List<Path> files = new ArrayList<>();
    for (String name : names) {
      byte[] bytes = Files.readAllBytes(ROLL.resolve(name));
      byte[] more = Arrays.copyOf(bytes, bytes.length + MORE);
      more[more.length - 1] = (byte) mark.hashCode();
      files.add(Files.write(Files.createDirectories(phone.resolve(mark)).resolve(name), more));
    }
    return files;
  }

  private static void choose(Browser browser, List<Path> files) {
    browser
        .find("#roll")
        .sendKeys(
            files.stream()
                .map(file -> file.toAbsolutePath().toString())
                .collect(Collectors.joining("\n")));
  }

  private static void untilState(Browser browser, String state, int count) {
    browser.until(
        "document.querySelectorAll('#files li[data-state=" + state + "]').length === " + count);
  }

  private static String verdict(Browser browser) {
    return browser.find("#verdict").getText();
  }

  private static boolean arrived(Path file) throws Exception {
    return !site.practice()
        .store()
        .ledger()
        .uploads()
        .of(ContentHash.of(Files.readAllBytes(file)))
        .isEmpty();
  }

  @Test
  void whatWasChosenBeforeAReloadIsNotForgotten() throws Exception {
    Browser browser = Browser.shared();
    List<Path> files = photographs("reload", "IMG_0002.JPG", "IMG_0003.JPG", "IMG_0004.JPG");
    Path other = photographs("reload", "IMG_0006.JPG").get(0);
    try (CutLine line = new CutLine(server.port())) {
      asPhone(browser, line);
      // The second file is half here, the third one not begun, when the phone falls asleep.
      line.breakAfter(2_800_000);
      choose(browser, files);
      untilState(browser, "waiting", 1);
      untilState(browser, "safe", 1);
      line.mend();
      browser.driver().navigate().refresh();
      browser.until("document.querySelector('#files li')");
      untilState(browser, "again", 2);
      untilState(browser, "safe", 1);
      assertThat(verdict(browser)).isEqualTo(NOT_YET);
      assertThat(browser.find("#files li[data-state=again]").getText())
          .contains("IMG_0003.JPG")
          .contains("Not here. The page was loaded again: choose this photograph again.");
      browser.look("phone-again");
      browser.size(360, 740);
      // Another one that arrives makes nothing of this safe.
      choose(browser, List.of(other));
      untilState(browser, "safe", 2);
      assertThat(verdict(browser)).isEqualTo(NOT_YET);
      choose(browser, files.subList(1, 3));
      untilState(browser, "safe", 4);
      assertThat(browser.all("#files li")).hasSize(4);
      assertThat(verdict(browser)).isEqualTo(ALL_SAFE);
      browser.driver().navigate().refresh();
      untilState(browser, "safe", 4);
      assertThat(verdict(browser)).isEqualTo(ALL_SAFE);
    }
    for (Path file : files) {
      assertThat(arrived(file)).isTrue();
    }
  }

  @Test
  void readingTheCodeAgainRemembersTooAndAnotherCodesPageKnowsNothingOfIt() throws Exception {
    Browser browser = Browser.shared();
    List<Path> files = photographs("code", "IMG_0002.JPG", "IMG_0003.JPG");
    try (CutLine line = new CutLine(server.port())) {
      String address = asPhone(browser, line);
      line.breakAfter(1_000_000);
      choose(browser, files);
      untilState(browser, "waiting", 1);
      line.mend();
      asPhone(browser, line);
      assertThat(browser.all("#files li")).isEmpty();
      assertThat(verdict(browser)).isEmpty();
      read(browser, address);
      untilState(browser, "again", 2);
      assertThat(verdict(browser)).isEqualTo(NOT_YET);
    }
  }

  /** What another tab of the same page would write, and how this one hears of it. */
  private static void otherTab(Browser browser, String state) {
    browser
        .driver()
        .executeScript(
            "const key = 'vestibule-chosen-' + phone.dataset.page;"
                + "const kept = JSON.parse(localStorage.getItem(key));"
                + "kept.files = kept.files.filter((one) => one.id !== 'other');"
                + "kept.files.push({ name: 'IMG_9999.JPG', size: 5, view: '', id: 'other',"
                + " state: arguments[0], words: '' });"
                + "localStorage.setItem(key, JSON.stringify(kept));"
                + "dispatchEvent(new StorageEvent('storage', { key }));",
            state);
  }

  @Test
  void whatIsChosenInAnotherTabIsNeitherForgottenNorCalledSafe() throws Exception {
    Browser browser = Browser.shared();
    List<Path> files = photographs("tabs", "IMG_0002.JPG", "IMG_0003.JPG");
    try (CutLine line = new CutLine(server.port())) {
      asPhone(browser, line);
      choose(browser, files.subList(0, 1));
      untilState(browser, "safe", 1);
      assertThat(verdict(browser)).isEqualTo(ALL_SAFE);
      otherTab(browser, "sending");
      assertThat(verdict(browser)).isEqualTo(NOT_YET);
      choose(browser, files.subList(1, 2));
      untilState(browser, "safe", 2);
      assertThat(verdict(browser)).isEqualTo(NOT_YET);
      String kept =
          (String)
              browser
                  .driver()
                  .executeScript(
                      "return localStorage.getItem('vestibule-chosen-' + phone.dataset.page)");
      assertThat(kept).contains("IMG_0002.JPG", "IMG_0003.JPG", "IMG_9999.JPG");
      otherTab(browser, "safe");
      assertThat(verdict(browser)).isEqualTo(ALL_SAFE);
      otherTab(browser, "again");
      browser.driver().navigate().refresh();
      // Nothing is known of it on the server.
      untilState(browser, "again", 1);
      untilState(browser, "safe", 2);
      assertThat(verdict(browser)).isEqualTo(NOT_YET);
    }
  }

  /** The session has ended while the phone lay there; the code's secret brings it back. */
  @Test
  void aPhoneThatSleptComesBackAndNamesWhatWasNotSent() throws Exception {
    Browser browser = Browser.shared();
    List<Path> files = photographs("slept", "IMG_0002.JPG", "IMG_0003.JPG");
    try (CutLine line = new CutLine(server.port())) {
      asPhone(browser, line);
      String page = (String) browser.driver().executeScript("return phone.dataset.page");
      site.practice().store().ledger().sessions().endScope(Role.PHONE.word(), page);
      choose(browser, files);
      untilState(browser, "again", 2);
      assertThat(browser.driver().getCurrentUrl()).endsWith("/phone/visit");
      assertThat(verdict(browser)).isEqualTo(NOT_YET);
      choose(browser, files);
      untilState(browser, "safe", 2);
      assertThat(verdict(browser)).isEqualTo(ALL_SAFE);
    }
  }

  @Test
  void aFileThatTheBrowserCannotReadIsNamedAndTheOthersGoOn() throws Exception {
    Browser browser = Browser.shared();
    List<Path> files =
        photographs("unread", "IMG_0002.JPG", "IMG_0003.JPG", "IMG_0004.JPG", "IMG_0006.JPG");
    try (CutLine line = new CutLine(server.port())) {
      asPhone(browser, line);
      line.breakAfter(300_000);
      choose(browser, files);
      untilState(browser, "waiting", 1);
      // One is gone before it was begun, another one while it is being sent.
      Files.delete(files.get(0));
      Files.delete(files.get(2));
      line.mend();
      untilState(browser, "unreadable", 2);
      untilState(browser, "safe", 2);
      assertThat(browser.find("#files li[data-state=unreadable]").getText())
          .contains("IMG_0002.JPG")
          .contains("Not sent: this browser can't read the file any more. Choose it again.");
      assertThat(verdict(browser)).isEqualTo(NOT_YET);
    }
    assertThat(arrived(files.get(1))).isTrue();
    assertThat(arrived(files.get(3))).isTrue();
  }
}
