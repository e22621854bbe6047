package org.vestibule.audit;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.ExternalTool;

/** An independent syslog server (Debian's rsyslog) takes the messages over TLS and over UDP. */
class RsyslogTest {

  @TempDir private Path folder;

  @Test
  void rsyslogReadsEveryMessageOverTlsAndUdp() throws Exception {
    ExternalTool.require("openssl", "openssl");
    Path program = Path.of("/usr/sbin/rsyslogd");
    boolean there =
        Files.exists(program)
            && Files.exists(Path.of("/usr/lib/x86_64-linux-gnu/rsyslog/lmnsd_ossl.so"));
    if (!there) {
      ExternalTool.require("rsyslogd", "rsyslog and rsyslog-openssl");
    }
    TestCertificate certificate = TestCertificate.make(folder, "server");
    int port = freePort();
    Path got = folder.resolve("got.log");
    Path settings = folder.resolve("rsyslog.conf");
    Files.writeString(settings, settings(certificate, port, got));
    Process server =
        new ProcessBuilder(
                program.toString(),
                "-n",
                "-f",
                settings.toString(),
                "-i",
                folder.resolve("pid").toString())
            .redirectErrorStream(true)
            .redirectOutput(folder.resolve("rsyslog.out").toFile())
            .start();
    try {
      awaitPort(port, server);
      send(Optional.of(certificate.trusted()), port, "over TLS ü你", 20);
      send(Optional.empty(), port, "over UDP", 5);
      List<String> lines = await(got, 25);
      assertThat(lines.stream().filter(line -> line.contains("over TLS ü你"))).hasSize(20);
      assertThat(lines.stream().filter(line -> line.contains("over UDP"))).hasSize(5);
      for (String line : lines) {
        assertThat(line).startsWith("85|vestibule|DICOM+RFC3881|");
        Invented.read(line.substring(line.indexOf("<?xml")));
      }
    } finally {
      server.destroy();
      if (!server.waitFor(10, TimeUnit.SECONDS)) {
        server.destroyForcibly();
      }
    }
  }

  private void send(Optional<org.vestibule.keys.TlsFiles> tls, int port, String word, int count)
      throws IOException {
    AuditRules rules =
        new AuditRules(
            true, "vestibule", "", Optional.of(new AuditRules.Syslog("localhost", port, tls)));
    Path home = Files.createDirectory(folder.resolve(tls.isPresent() ? "tls" : "udp"));
    try (AuditTrail trail = new AuditTrail(rules, home, Invented.CLOCK)) {
      for (int i = 0; i < count; i++) {
        trail.record(
            Invented.EVENTS.login(
                Invented.ADA, true, AuditOutcome.SUCCESS, word + " \"" + i + "\" <&>"));
      }
      assertThat(trail.send()).isEqualTo(new SendReport(count, 0, 0, ""));
    }
  }

  private static String settings(TestCertificate certificate, int port, Path got) {
    return String.format(
        Locale.ROOT,
        """
        global(maxMessageSize="128k" workDirectory="%s"
          defaultNetstreamDriver="ossl" defaultNetstreamDriverCAFile="%s"
          defaultNetstreamDriverCertFile="%s" defaultNetstreamDriverKeyFile="%s")
        module(load="imtcp" StreamDriver.Name="ossl" StreamDriver.Mode="1"
          StreamDriver.AuthMode="anon")
        module(load="imudp")
        input(type="imtcp" address="127.0.0.1" port="%d" ruleset="all")
        input(type="imudp" address="127.0.0.1" port="%d" ruleset="all")
        template(name="line" type="string" string="%%pri%%|%%app-name%%|%%msgid%%|%%msg%%\\n")
        ruleset(name="all") { action(type="omfile" file="%s" template="line") }
        """,
        got.getParent(),
        certificate.certificate(),
        certificate.certificate(),
        certificate.key(),
        port,
        port,
        got);
  }

  private void awaitPort(int port, Process server) throws Exception {
    for (int i = 0; i < 200; i++) {
      try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
        assertThat(socket.isConnected()).isTrue();
        return;
      } catch (IOException notYet) {
        assertThat(server.isAlive())
            .as(Files.readString(folder.resolve("rsyslog.out"), StandardCharsets.UTF_8))
            .isTrue();
        Thread.sleep(50);
      }
    }
    throw new AssertionError(Files.readString(folder.resolve("rsyslog.out")));
  }

  private List<String> await(Path file, int count) throws Exception {
    List<String> lines = List.of();
    for (int i = 0; i < 200 && lines.size() < count; i++) {
      Thread.sleep(50);
      lines = Files.exists(file) ? Files.readAllLines(file) : List.of();
    }
    assertThat(lines)
        .as(Files.readString(folder.resolve("rsyslog.out"), StandardCharsets.UTF_8))
        .hasSize(count);
    return lines;
  }

  private static int freePort() throws IOException {
    try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return free.getLocalPort();
    }
  }
}
