package org.vestibule.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.ExternalTool;
import org.vestibule.base.ContentHash;
import org.vestibule.flow.phone.Receiving;
import org.vestibule.flow.phone.UploadRules;
import org.vestibule.store.ledger.PhoneLinkRow;

/**
 * A real disk of one megabyte (tmpfs, which root alone may mount) that fills up while files come.
 */
class FullUploadTest {

  private static final int ROOM = 1 << 20;

  @TempDir private static Path home;
  private static SampleSite site;
  private static Path uploads;
  private static boolean mounted;

  @BeforeAll
  static void mount() throws Exception {
    site = SampleSite.own(home);
    site.visitsOfToday();
    uploads = Files.createDirectories(home.resolve("uploads"));
    ExternalTool.Result result =
        ExternalTool.require("mount", "mount")
            .run("-t", "tmpfs", "-o", "size=1m", "tmpfs", uploads.toString());
    mounted = result.exitCode() == 0;
    if (!mounted) {
      String message = "SKIPPED: only root may mount a small disk to fill; " + result.errors();
      System.err.println(message);
      Assumptions.abort(message);
    }
  }

  @AfterAll
  static void unmount() throws Exception {
    site.practice().close();
    if (mounted) {
      assertThat(ExternalTool.require("umount", "mount").run(uploads.toString()).exitCode())
          .isZero();
    }
  }

  @Test
  void aDiskThatIsNearlyFullIsSaidBeforeAnythingComes() throws Exception {
    PhoneLinkRow page = site.phonesPage(SampleSite.TODAY_ONE, site.secret());
    try (Server server = site.serve()) {
      Caller phone = new Caller(server, site.phone(page));
      HttpResponse<byte[]> refused =
          phone.post("/phone/files", Map.of("name", "a.jpg", "size", "1000", "view", ""));
      assertThat(refused.statusCode()).isEqualTo(409);
      assertThat(Caller.text(refused))
          .isEqualTo(
              "{\"advice\":\"leave the photographs on the phone, and tell whoever looks after"
                  + " Vestibule\",\"reason\":\"the practice's disk is nearly full\"}");
    }
  }

  @Test
  void aFileGoesOnWhereItWasWhenThereIsRoomAgain() throws Exception {
    PhoneLinkRow page = site.phonesPage(SampleSite.TODAY_ONE, site.secret());
    byte[] photo = Files.readAllBytes(Path.of("samples", "roll", "IMG_0002.JPG"));
    byte[] bytes = Arrays.copyOf(photo, 600_000);
    String id = "00112233445566778899aabbccddeeff";
    Receiving receiving = new Receiving(site.practice(), new UploadRules(ROOM, 300, 10L * ROOM, 0));
    receiving.begin(page, id, "IMG_0002.JPG", bytes.length, "").orThrow();
    Path filler = Files.write(uploads.resolve("filler"), new byte[ROOM - 300_000]);
    assertThatThrownBy(() -> send(receiving, page, id, bytes)).isInstanceOf(IOException.class);
    long here = receiving.find(page, id).orElseThrow().receivedBytes();
    assertThat(here).isBetween(1L, 300_000L);
    assertThat(receiving.find(page, id).orElseThrow().hash()).isEmpty();
    Files.delete(filler);
    send(receiving, page, id, bytes);
    String hash = ContentHash.of(bytes).hex();
    assertThat(receiving.end(page, id, hash).orThrow().confirmed()).isTrue();
    // Another disk than the inbox's: the file was copied there, and nothing is left beside it.
    Path folder = home.resolve("inbox/phone/" + page.number());
    try (var there = Files.list(folder)) {
      assertThat(there.map(file -> file.getFileName().toString())).containsExactly("IMG_0002.jpg");
    }
    assertThat(folder.resolve("IMG_0002.jpg")).hasBinaryContent(bytes);
    assertThat(uploads.resolve(id + ".part")).doesNotExist();
  }

  private static void send(Receiving receiving, PhoneLinkRow page, String id, byte[] bytes)
      throws IOException {
    int from = (int) receiving.find(page, id).orElseThrow().receivedBytes();
    while (from < bytes.length) {
      int end = Math.min(bytes.length, from + 50_000);
      from =
          (int)
              receiving
                  .add(
                      page,
                      id,
                      from,
                      new ByteArrayInputStream(Arrays.copyOfRange(bytes, from, end)))
                  .orThrow()
                  .receivedBytes();
    }
  }
}
