package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicReference;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.RunningPeer;
import org.vestibule.flow.TestHome;
import org.vestibule.forward.LateArchive;
import org.vestibule.samples.Scene;

/** Delivery from the command line: in the night, by hand, with patience, and beside the pages. */
@Timeout(120) // a guard against waiting for ever, not a measure
class DeliveryCommandsTest {

  /** Key Object Selection Document Storage (PS3.6 annex A). */
  private static final String NOTE = "1.2.840.10008.5.1.4.1.1.88.59";

  private static final Pattern INSTANCE = Pattern.compile("SOPInstanceUID=([0-9.]+)");

  @TempDir private Path folder;
  private TestHome home;
  private HttpServer archive;
  private String photo;
  private final List<String> stored = new CopyOnWriteArrayList<>();
  private final Set<String> refuses = ConcurrentHashMap.newKeySet();
  private volatile boolean fails;
  private volatile boolean fullDisk;

  @BeforeEach
  void layOut() throws IOException {
    home = TestHome.in(folder.resolve("home"));
    photo = home.put("a.jpg", Scene.FRONTAL, 1);
    home.manifest("file,visit,view,mirror\na.jpg,V1,frontal,none\n");
    archive = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    archive.createContext("/", this::answer);
    archive.start();
  }

  @AfterEach
  void stop() {
    archive.stop(0);
  }

  /** Stores whatever it does not refuse (413), and shows whatever it is asked for. */
  private void answer(HttpExchange exchange) throws IOException {
    String body = new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.ISO_8859_1);
    String kind = body.contains(NOTE) ? "note" : "photograph";
    boolean post = exchange.getRequestMethod().equals("POST");
    Matcher asked = INSTANCE.matcher(String.valueOf(exchange.getRequestURI().getQuery()));
    if (post && fullDisk) {
      exchange.sendResponseHeaders(507, -1);
    } else if (post && fails) {
      exchange.sendResponseHeaders(500, -1);
    } else if (post && refuses.contains(kind)) {
      exchange.sendResponseHeaders(413, -1);
    } else if (asked.find()) {
      byte[] shown =
          ("[{\"00080018\":{\"vr\":\"UI\",\"Value\":[\"" + asked.group(1) + "\"]}}]")
              .getBytes(StandardCharsets.US_ASCII);
      exchange.sendResponseHeaders(200, shown.length);
      exchange.getResponseBody().write(shown);
    } else {
      if (post) {
        stored.add(kind);
      }
      exchange.sendResponseHeaders(200, -1);
    }
    exchange.close();
  }

  private void settings(String more) throws IOException {
    Files.writeString(
        home.folder().resolve("vestibule.toml"),
        "[practice]\nzone = \"Europe/Vienna\"\n[intake]\nsettle-seconds = 0\n"
            + "[night]\nfree-megabytes = 0\nbackup-to = \"../backup\"\n"
            + "backup-secret-to = \"../safe\"\n"
            + more
            + "[[destination]]\nname = \"archive\"\nspeaks = \"dicomweb\"\nurl = \"http://localhost:"
            + archive.getAddress().getPort()
            + "/\"\n");
  }

  private Asked night() {
    Asked begun =
        Asked.of(
            home,
            "backup",
            "--to",
            folder.resolve("backup").toString(),
            "--secret-to",
            folder.resolve("safe").toString());
    assertThat(begun.code()).as(begun.err()).isZero();
    return Asked.by("nightly job", home, "nightly");
  }

  @Test
  void theNightDeliversWhatItTookInAndMakesItsBackup() throws IOException {
    settings("");
    home.ingest();
    home.put("b.jpg", Scene.FRONTAL, 2);
    home.manifest("file,visit,view,mirror\na.jpg,V1,frontal,none\nb.jpg,V1,frontal,none\n");
    Asked night = night();
    assertThat(night.code()).as(night.out() + night.err()).isZero();
    assertThat(night.out().replaceAll("\\s+", " "))
        .contains("2 objects confirmed by archive this night, 0 still on the way or kept back.")
        .contains("The backup was made: 2 objects");
    assertThat(stored).containsExactly("photograph", "photograph");
  }

  @Test
  void aNightWhoseArchiveRefusesSaysSoAndMakesItsBackup() throws IOException {
    settings("");
    home.ingest();
    refuses.add("photograph");
    Asked night = night();
    assertThat(night.code()).as(night.out() + night.err()).isEqualTo(1);
    assertThat(night.out().replaceAll("\\s+", " "))
        .contains(
            "1 object needs a person at archive; \"vestibule forward list\" says which, and why.")
        .contains("The backup was made: 1 object");
  }

  /** RFC 4918 11.5: no room for it. The photographs are well, and go when there is room again. */
  @Test
  void aFullDiskOverThereIsSaidAndNothingIsLost() throws IOException {
    settings("");
    home.ingest();
    fullDisk = true;
    Asked asked = Asked.of(home, "forward");
    assertThat(asked.code()).isEqualTo(1);
    assertThat(asked.out())
        .isEqualTo(
            """
            archive  confirmed now  confirmed  sent  waiting  failed  refused
            archive  0              0          0     0        1       0
            archive was left early.
              Why: the archive is out of space (HTTP status 507).
              What to do: mend that there; the next run tries again.
            """);
    assertThat(Asked.of(home, "waiting").out()).as("no dead end").isEqualTo("Nothing waits.\n");
    assertThat(stored).isEmpty();
  }

  /** What was tried often enough is not tried for ever, and every place that tells of it does. */
  @Test
  void whatWasTriedOftenEnoughIsADeadEndThatIsSeen() throws IOException {
    settings("[forward]\nattempts = 1\n");
    home.ingest();
    fails = true;
    Asked asked = Asked.of(home, "forward");
    assertThat(asked.code()).isEqualTo(1);
    String sentence =
        "1 object needs a person at archive; \"vestibule forward list\" says which, and why.\n";
    assertThat(asked.out())
        .isEqualTo(
            """
            archive  confirmed now  confirmed  sent  waiting  failed  refused
            archive  0              0          0     0        1       0
            """
                + sentence);
    Asked list = Asked.of(home, "forward", "list");
    assertThat(list.code()).isEqualTo(1);
    assertThat(list.out())
        .startsWith(photo + "  filing 1  archive: failed for good\n")
        .contains("the archive failed while it was dealing with it (HTTP status 500)")
        .doesNotContain("Next:");
    Asked waiting = Asked.of(home, "waiting");
    assertThat(waiting.code()).isEqualTo(1);
    assertThat(waiting.out()).isEqualTo("Nothing waits.\n\n" + sentence);
    assertThat(Asked.of(home, "show", photo).out()).contains("archive: failed for good");
    fails = false;
    assertThat(Asked.of(home, "forward").code()).as("it stays one").isEqualTo(1);
    Asked.by("A. Finch", home, "forward", "again", "--why", "the archive was mended");
    assertThat(Asked.of(home, "forward").code()).isZero();
    assertThat(Asked.of(home, "waiting").out()).isEqualTo("Nothing waits.\n");
  }

  /** The archive takes no notes: its people take the old object out, and a person says so. */
  @Test
  void byAPersonsWordTheNewObjectGoesWithoutItsNote() throws IOException {
    settings("");
    home.ingest();
    assertThat(Asked.of(home, "forward").code()).isZero();
    Asked moved = Asked.by("A. Finch", home, "move", photo, "--visit", "V2", "--why", "mistaken");
    assertThat(moved.code()).as(moved.err()).isZero();
    refuses.add("note");
    assertThat(Asked.of(home, "forward").code()).isEqualTo(1);
    assertThat(Asked.of(home, "forward", "list", photo).out())
        .contains(
            "note on filing 1  archive: refused", "filing 2  archive: waiting behind its note");
    Asked early =
        Asked.by(
            "A. Finch", home, "forward", "by-hand", photo, "--to", "attic", "--why", "taken out");
    assertThat(early.code()).as("no such archive").isEqualTo(3);
    Asked said =
        Asked.by(
            "A. Finch", home, "forward", "by-hand", photo, "--to", "archive", "--why", "taken out");
    assertThat(said.code()).as(said.err()).isZero();
    assertThat(said.out())
        .isEqualTo("Recorded. The next delivery sends what stood behind the note.\n");
    assertThat(Asked.of(home, "forward").code()).isZero();
    assertThat(stored).containsExactly("photograph", "photograph");
    Asked again =
        Asked.by(
            "A. Finch", home, "forward", "by-hand", photo, "--to", "archive", "--why", "taken out");
    assertThat(again.err())
        .startsWith("vestibule: no note about this photograph came to an end at \"archive\"");
  }

  @Test
  void patienceIsWithinADayAndEndsWhereNothingIsDue() throws IOException {
    settings("");
    home.ingest();
    Asked wrong = Asked.of(home, "forward", "--patience", "1441");
    assertThat(wrong.code()).isEqualTo(2);
    assertThat(wrong.err())
        .isEqualTo("vestibule: --patience must be 0 to 1440 minutes but was 1441.\n");
    Asked patient = Asked.of(home, "forward", "--patience", "30");
    assertThat(patient.code()).as(patient.out()).isZero();
    assertThat(stored).containsExactly("photograph");
  }

  /** "serve" listens for archives, and says at once who is not one. */
  @Test
  void serveListensForReportsAndNamesWhomItTurnsAway() throws Exception {
    int port;
    try (ServerSocket free = new ServerSocket(0)) {
      port = free.getLocalPort();
    }
    settings("[forward]\nreport-port = " + port + "\nunprotected = true\n");
    home.ingest();
    AtomicReference<Asked> served = new AtomicReference<>();
    Thread serving =
        new Thread(() -> served.set(Asked.of(home, "serve", "--port", "0")), "serving");
    serving.start();
    try (Socket caller = calling(port, serving)) {
      caller.getOutputStream().write("GET / HTTP/1.1\r\n\r\n".getBytes(StandardCharsets.US_ASCII));
      while (caller.getInputStream().read() >= 0) {
        // until it hangs up, by when it has said why
      }
    }
    serving.interrupt();
    serving.join();
    assertThat(served.get().out()).contains("Archives report on port " + port + ".\n");
    assertThat(served.get().err().replaceAll("\\s+", " "))
        .contains(
            "vestibule: at the door for reports: the caller sent bytes that are no DICOM (a PDU of"
                + " type 71)");
  }

  /** "forward" has long ended when the archive reports, and "serve" runs. */
  @Test
  void aReportThatComesWhileServeRunsConfirms() throws Exception {
    int port = RunningPeer.freePort();
    try (LateArchive late = new LateArchive()) {
      Files.writeString(
          home.folder().resolve("vestibule.toml"),
          "[practice]\nzone = \"Europe/Vienna\"\n[forward]\nreport-port = "
              + port
              + "\nunprotected = true\n[[destination]]\nname = \"archive\"\nspeaks = \"dicom\"\n"
              + "host = \"localhost\"\nport = "
              + late.port()
              + "\ncalled = \"ARCHIVE\"\nunprotected = true\n");
      home.ingest();
      Thread serving = new Thread(() -> Asked.of(home, "serve", "--port", "0"), "serving");
      serving.start();
      calling(port, serving).close();
      Asked forward = Asked.of(home, "forward");
      assertThat(forward.code()).as(forward.out() + forward.err()).isZero();
      assertThat(Asked.of(home, "forward", "list", photo).out())
          .startsWith(photo + "  filing 1  archive: sent, not yet confirmed\n");
      assertThat(late.report(port)).isZero();
      assertThat(Asked.of(home, "forward", "list", photo).out())
          .isEqualTo(photo + "  filing 1  archive: confirmed\n  committed.\n");
      assertThat(late.unreported()).isZero();
      serving.interrupt();
      serving.join();
    }
  }

  private static Socket calling(int port, Thread serving) throws Exception {
    while (serving.isAlive()) {
      try {
        return new Socket(InetAddress.getLoopbackAddress(), port);
      } catch (IOException notYet) {
        Thread.sleep(50);
      }
    }
    throw new AssertionError("serve ended");
  }
}
