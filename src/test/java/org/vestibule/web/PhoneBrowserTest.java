package org.vestibule.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.OutputType;
import org.vestibule.base.ContentHash;
import org.vestibule.store.ledger.UploadRow;

/** From the practice's screen to the phone and back, in a real browser. */
class PhoneBrowserTest {

  private static final Path ROLL = Path.of("samples", "roll");

  /** Bytes that a camera adds after the picture; four pieces instead of one. */
  private static final int MORE = 1_600_000;

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

  /** Opens a page at the practice's screen, and gives the address in its code. */
  private static String opened(Browser browser) {
    browser.driver().get(server.address() + "/ways");
    browser.find("input[value=" + SampleSite.TODAY_ONE + "]").click();
    browser.find("#series").sendKeys("baseline");
    browser.enter("main .button");
    browser.until("document.querySelector('.way details .address')");
    return browser.find(".way details .address").getDomProperty("textContent");
  }

  private static void asPhone(Browser browser, String address) {
    browser.driver().manage().deleteAllCookies();
    browser.size(360, 740);
    browser.driver().get("about:blank");
    browser.driver().get(address);
    browser.until("document.getElementById('phone')");
  }

  private static List<Path> photographs(String... names) throws Exception {
    List<Path> files = new ArrayList<>();
    for (String name : names) {
      byte[] bytes = Files.readAllBytes(ROLL.resolve(name));
      files.add(Files.write(phone.resolve(name), Arrays.copyOf(bytes, bytes.length + MORE)));
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

  @Test
  void theCodeIsReadByAPhoneAndThePageIsThatVisits() throws Exception {
    Browser browser = Browser.shared().as(server, site.session(Role.STAFF));
    browser.driver().get(server.address() + "/ways");
    browser.look("ways");
    String address = opened(browser);
    browser.look("way");
    browser.size(760, 640);
    browser.glance("phone-code");
    // What the code says is read off the screen, not out of the page.
    BufferedImage screen =
        ImageIO.read(
            new ByteArrayInputStream(browser.find(".code").getScreenshotAs(OutputType.BYTES)));
    int[] pixels =
        screen.getRGB(0, 0, screen.getWidth(), screen.getHeight(), null, 0, screen.getWidth());
    String read =
        new QRCodeReader()
            .decode(
                new BinaryBitmap(
                    new HybridBinarizer(
                        new RGBLuminanceSource(screen.getWidth(), screen.getHeight(), pixels))),
                // A reader that looks for the code misses one screen in 150, where data look like
                // a corner; this one knows that there is nothing else on the picture.
                Map.of(DecodeHintType.PURE_BARCODE, true))
            .getText();
    assertThat(read).isEqualTo(address);
    asPhone(browser, read);
    assertThat(browser.driver().getCurrentUrl()).endsWith("/phone/visit");
    assertThat(browser.find("h1").getText()).isEqualTo("Quillfeather, Odalys");
    browser.look("phone");
    browser.size(360, 740);
    browser.glance("phone-page");
    browser.enter("button[value=de]");
    browser.until("document.documentElement.lang === 'de'");
    assertThat(browser.find(".takes").getText()).contains("Aufnehmen");
    browser.enter("button[value=en]");
    browser.until("document.documentElement.lang === 'en'");
  }

  @Test
  void aCutInTheMiddleIsSurvivedAndNothingIsSafeBeforeTheEnd() throws Exception {
    Browser browser = Browser.shared().as(server, site.session(Role.STAFF));
    List<Path> files = photographs("IMG_0002.JPG", "IMG_0003.JPG", "IMG_0004.JPG");
    try (CutLine line = new CutLine(server.port())) {
      String address = opened(browser);
      asPhone(browser, address.replace(":" + server.port(), ":" + line.port()));
      // The second file is half here when the connection breaks, in the middle of a piece.
      line.breakAfter(2_800_000);
      choose(browser, files);
      browser.until("document.querySelector('#files li[data-state=waiting]')");
      assertThat(browser.all("#files li[data-state=safe]")).hasSize(1);
      assertThat(browser.find("#verdict").getText())
          .isEqualTo("Do not delete anything from the phone yet.");
      browser.look("phone-cut");
      browser.size(360, 740);
      browser.driver().executeScript("document.getElementById('files').scrollIntoView()");
      browser.glance("phone-cut");
      line.mend();
      browser.until("document.getElementById('verdict').dataset.state === 'all-safe'");
      assertThat(browser.all("#files li[data-state=safe]")).hasSize(3);
      assertThat(browser.find("#verdict").getText())
          .isEqualTo("All of them arrived and are proved. They may be deleted from the phone.");
      browser.look("phone-safe");
    }
    for (Path file : files) {
      List<UploadRow> rows =
          site.practice().store().ledger().uploads().of(ContentHash.of(Files.readAllBytes(file)));
      assertThat(rows).hasSize(1);
      assertThat(home.resolve("inbox").resolve(rows.get(0).received().arrivedAs()))
          .hasSameBinaryContentAs(file);
    }
  }

  @Test
  void aFileThatIsNoJpegIsRefusedAndTheOthersGoOn() throws Exception {
    Browser browser = Browser.shared().as(server, site.session(Role.STAFF));
    asPhone(browser, opened(browser));
    browser.find("#wanted input[value=smile]").click();
    List<Path> files = new ArrayList<>(photographs("IMG_0006.JPG"));
    files.add(0, ROLL.resolve("IMG_0041.HEIC"));
    choose(browser, files);
    browser.until("document.querySelectorAll('#files li[data-state=safe]').length === 1");
    assertThat(browser.find("#files li[data-state=no-jpeg]").getText())
        .contains("This is no JPEG photograph, and was not sent.");
    assertThat(browser.find("#verdict").getText())
        .isEqualTo("Do not delete anything from the phone yet.");
    browser.look("phone-refused");
    // Of two at once nobody said which view they are: smile is still wanted.
    assertThat(browser.all("#wanted .guides input[value=smile]")).hasSize(1);
    browser.size(360, 740);
    browser.find("#wanted input[value=smile]").click();
    choose(browser, photographs("IMG_0007.JPG"));
    browser.until("document.querySelectorAll('#wanted .guides input[value=smile]').length === 0");
  }
}
