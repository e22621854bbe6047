package org.vestibule.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import javax.net.ssl.SSLSocket;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** Servers that stand still: no command hangs on them, and nothing counts as delivered. */
@Timeout(value = 60, threadMode = Timeout.ThreadMode.SEPARATE_THREAD) // a guard, not a measure
class TlsLineTest {

  private static final Duration SILENCE = Duration.ofSeconds(1);

  /** What a server does once the handshake is done. */
  @FunctionalInterface
  private interface Manner {
    void serve(SSLSocket socket) throws IOException, InterruptedException;
  }

  @TempDir private Path folder;
  private TestCertificate certificate;
  private ServerSocket door;

  @BeforeEach
  void certify() throws Exception {
    certificate = TestCertificate.make(folder, "server");
    door = new ServerSocket(0, 1, InetAddress.getLoopbackAddress());
  }

  @AfterEach
  void close() throws IOException {
    door.close();
  }

  private TlsLine to(Manner manner) throws IOException {
    Thread thread =
        new Thread(
            () -> {
              try (Socket plain = door.accept();
                  SSLSocket socket =
                      certificate
                          .identity()
                          .server(Clock.systemUTC())
                          .orThrow()
                          .over(plain, "", 0)) {
                socket.startHandshake();
                manner.serve(socket);
              } catch (IOException | InterruptedException over) {
                // the test is over
              }
            },
            "syslog-server");
    thread.setDaemon(true);
    thread.start();
    return new TlsLine(
        "localhost",
        door.getLocalPort(),
        certificate.trusted().client(Clock.systemUTC()).orThrow(),
        new SyslogFrame("here", 1),
        SILENCE);
  }

  @Test
  void aServerThatStopsReadingEndsTheLine() throws Exception {
    try (TlsLine line = to(socket -> Thread.sleep(60_000))) {
      String much = "x".repeat(100_000);
      assertThatThrownBy(
              () -> {
                for (int i = 0; i < 1_000; i++) {
                  line.send("2026-03-14T06:00:00Z", much);
                }
              })
          .isInstanceOf(LineEndedException.class)
          .hasMessage("has taken nothing for 1 seconds");
    }
  }

  /** RFC 5425 4.4: it must say goodbye in its turn. */
  @Test
  void aServerThatNeverClosesIsNotTakenForOneThatHasEverything() throws Exception {
    try (TlsLine line =
        to(socket -> socket.getInputStream().transferTo(OutputStream.nullOutputStream()))) {
      line.send("2026-03-14T06:00:00Z", "<AuditMessage/>");
      assertThat(line.settle()).isTrue();
    }
    try (TlsLine line =
        to(
            socket -> {
              socket.getInputStream().transferTo(OutputStream.nullOutputStream());
              Thread.sleep(60_000);
            })) {
      line.send("2026-03-14T06:00:00Z", "<AuditMessage/>");
      assertThat(line.settle()).isFalse();
    }
  }

  @Test
  void aServerThatTalksForEverIsNotListenedToForEver() throws Exception {
    try (TlsLine line =
        to(
            socket -> {
              while (true) {
                socket.getOutputStream().write(' ');
                Thread.sleep(20);
              }
            })) {
      line.send("2026-03-14T06:00:00Z", "<AuditMessage/>");
      assertThat(line.settle()).isFalse();
    }
  }
}
