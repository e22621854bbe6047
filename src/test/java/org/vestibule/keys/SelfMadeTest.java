package org.vestibule.keys;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.ExternalTool;
import org.vestibule.forward.MovingClock;

/** The practice's own certificate: what it is, and when it is made anew. */
class SelfMadeTest {

  private static final List<String> NAMES = List.of("localhost", "127.0.0.1", "photos.example");

  @TempDir private Path home;
  private final MovingClock clock = new MovingClock(Instant.parse("2026-03-14T06:00:00Z"));

  private Path folder() {
    return home.resolve("tls");
  }

  private String made(List<String> names) throws Exception {
    TlsFiles files = SelfMade.in(folder(), names, clock).orThrow();
    assertThat(files.server(clock).orThrow()).isNotNull();
    return Files.readString(folder().resolve("own-certificate.pem"), StandardCharsets.US_ASCII);
  }

  @Test
  void itStaysForAYearAndIsMadeAnewAMonthBeforeItsEnd() throws Exception {
    String first = made(NAMES);
    assertThat(made(NAMES)).isEqualTo(first);
    // 397 days are a certificate's, and 30 of them are left.
    clock.move(Duration.ofDays(367).minusSeconds(1));
    assertThat(made(NAMES)).isEqualTo(first);
    clock.move(Duration.ofSeconds(1));
    String second = made(NAMES);
    assertThat(second).isNotEqualTo(first);
    assertThat(made(NAMES)).isEqualTo(second);
    clock.move(Duration.ofDays(398));
    assertThat(made(NAMES)).isNotEqualTo(second);
  }

  @Test
  void otherNamesOrADamagedFileHaveItMadeAnew() throws Exception {
    String first = made(NAMES);
    String fewer = made(NAMES.subList(0, 2));
    assertThat(fewer).isNotEqualTo(first);
    // The order of names says nothing.
    assertThat(made(List.of("127.0.0.1", "localhost"))).isEqualTo(fewer);
    Path file = folder().resolve("own-certificate.pem");
    Files.writeString(file, fewer.substring(0, 300));
    assertThat(made(NAMES.subList(0, 2))).isNotEqualTo(fewer);
  }

  /** OpenSSL reads it as RFC 5280 has it: for these names, by this issuer, which signs no other. */
  @Test
  void opensslTrustsItByItsIssuerForItsNames() throws Exception {
    made(NAMES);
    String at = String.valueOf(clock.instant().getEpochSecond());
    String issuer = folder().resolve("own-issuer.pem").toString();
    String own = folder().resolve("own-certificate.pem").toString();
    ExternalTool openssl = ExternalTool.require("openssl", "openssl");
    ExternalTool.Result trusted =
        openssl.run(
            "verify",
            "-attime",
            at,
            "-x509_strict",
            "-purpose",
            "sslserver",
            "-verify_hostname",
            "photos.example",
            "-CAfile",
            issuer,
            own);
    assertThat(trusted.exitCode()).as(trusted.errors()).isZero();
    ExternalTool.Result other =
        openssl.run(
            "verify", "-attime", at, "-verify_hostname", "other.example", "-CAfile", issuer, own);
    assertThat(other.exitCode()).isNotZero();
    String late = String.valueOf(clock.instant().plus(Duration.ofDays(397)).getEpochSecond() + 1);
    assertThat(openssl.run("verify", "-attime", late, "-CAfile", issuer, own).exitCode())
        .isNotZero();
  }

  @Test
  void theKeyIsItsOwnersAlone() throws Exception {
    made(NAMES);
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(folder())))
        .isEqualTo("rwx------");
    assertThat(Files.readString(folder().resolve("own-key.pem"))).contains("PRIVATE KEY");
    assertThat(Files.readString(folder().resolve("own-issuer.pem"))).doesNotContain("PRIVATE KEY");
  }
}
