package org.vestibule.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.base.ContentHash;
import org.vestibule.store.ledger.PhoneLinkRow;

/** The server's process is killed while a phone sends; the phone goes on with the next one. */
class KilledUploadTest {

  @TempDir private Path home;
  private Process process;

  /** Starts a server in a process of its own; its port. */
  private int serve() throws IOException {
    process =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1",
                "-Xshare:auto",
                "-cp",
                System.getProperty("java.class.path"),
                ServingChild.class.getName(),
                home.toString())
            .redirectError(ProcessBuilder.Redirect.INHERIT)
            .start();
    BufferedReader said =
        new BufferedReader(
            new InputStreamReader(process.getInputStream(), StandardCharsets.US_ASCII));
    return Integer.parseInt(Objects.requireNonNull(said.readLine(), "the child did not serve"));
  }

  @AfterEach
  void kill() throws Exception {
    process.destroyForcibly().waitFor();
  }

  private static HttpResponse<byte[]> piece(Caller phone, String id, int from, byte[] bytes)
      throws Exception {
    return phone.send(
        phone
            .proved("/phone/files/" + id + "/from/" + from)
            .PUT(BodyPublishers.ofByteArray(bytes)));
  }

  private static int received(HttpResponse<byte[]> response) {
    return Integer.parseInt(Caller.text(response).replaceAll(".*\"received\":(\\d+).*", "$1"));
  }

  @Test
  void whatWasSentStaysAndTheRestIsSentToTheNextProcess() throws Exception {
    byte[] photo = Files.readAllBytes(Path.of("samples", "roll", "IMG_0002.JPG"));
    byte[] bytes = Arrays.copyOf(photo, 1_000_000);
    String hash = ContentHash.of(bytes).hex();
    SampleSite site = SampleSite.own(home);
    PhoneLinkRow page = site.phonesPage(SampleSite.TODAY_ONE, site.secret());
    String secret = site.phone(page);
    site.practice().close();

    int port = serve();
    Caller first = new Caller(port, secret);
    String id =
        Caller.text(
                first.post(
                    "/phone/files", Map.of("name", "IMG_0002.JPG", "size", "1000000", "view", "")))
            .replaceAll(".*\"id\":\"([0-9a-f]{32})\".*", "$1");
    assertThat(received(piece(first, id, 0, Arrays.copyOf(bytes, 400_000)))).isEqualTo(400_000);
    // The next piece is half on its way.
    try (SlowSocket half = new SlowSocket("127.0.0.1", port)) {
      half.say(
          "PUT /phone/files/" + id + "/from/400000 HTTP/1.1",
          "Host: 127.0.0.1",
          "Cookie: vestibule=" + secret,
          "X-Vestibule-Form: " + Secrets.csrf(secret),
          "Content-Length: 300000",
          "",
          "a part of it");
      kill();
    }

    Caller second = new Caller(serve(), secret);
    int here = received(second.get("/phone/files/" + id));
    assertThat(here).isEqualTo(400_000);
    piece(second, id, here, Arrays.copyOfRange(bytes, here, here + 300_000));
    piece(second, id, here + 300_000, Arrays.copyOfRange(bytes, here + 300_000, bytes.length));
    HttpResponse<byte[]> end = second.post("/phone/files/" + id + "/end", Map.of("hash", hash));
    assertThat(Caller.text(end)).contains("\"confirmed\":true", hash);
    // Killed right after it said so: what was promised is there, and said again.
    kill();
    assertThat(home.resolve("inbox/phone/" + page.number() + "/IMG_0002.jpg"))
        .hasBinaryContent(bytes);
    Caller third = new Caller(serve(), secret);
    assertThat(Caller.text(third.get("/phone/files"))).contains("\"confirmed\":true", hash);
  }
}
