package org.vestibule.keys;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Clock;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import javax.net.ssl.SSLSocket;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.vestibule.ExternalTool;
import org.vestibule.base.Outcome;

/** Keys and certificates made by OpenSSL's own program are read, and refused with words. */
class TlsFilesTest {

  @TempDir static Path folder;

  private static final Clock CLOCK = Clock.systemUTC();

  @BeforeAll
  static void make() throws Exception {
    openssl("genrsa", "-out", at("rsa8.pem"), "2048");
    openssl("rsa", "-in", at("rsa8.pem"), "-traditional", "-out", at("rsa1.pem"));
    openssl(
        "rsa",
        "-in",
        at("rsa8.pem"),
        "-traditional",
        "-aes256",
        "-passout",
        "pass:kite",
        "-out",
        at("rsa1-enc.pem"));
    openssl(
        "pkcs8",
        "-topk8",
        "-in",
        at("rsa8.pem"),
        "-passout",
        "pass:kite",
        "-out",
        at("rsa8-enc.pem"));
    certificate("rsa8.pem", "rsa-cert.pem", "localhost");
    openssl("ecparam", "-name", "prime256v1", "-genkey", "-noout", "-out", at("ec1.pem"));
    openssl("pkcs8", "-topk8", "-nocrypt", "-in", at("ec1.pem"), "-out", at("ec8.pem"));
    certificate("ec1.pem", "ec-cert.pem", "elsewhere.example");
    openssl("genrsa", "-out", at("short.pem"), "1024");
    certificate("short.pem", "short-cert.pem", "localhost");
    openssl(
        "pkcs12",
        "-export",
        "-inkey",
        at("rsa8.pem"),
        "-in",
        at("rsa-cert.pem"),
        "-passout",
        "pass:kite",
        "-out",
        at("rsa.p12"));
    Files.writeString(folder.resolve("kite.txt"), "kite\n");
    Files.writeString(folder.resolve("wrong.txt"), "string\n");
    Files.writeString(folder.resolve("empty.txt"), "\n");
    Files.writeString(folder.resolve("noise.pem"), "no key at all");
    Files.writeString(
        folder.resolve("cut.pem"),
        Files.readString(folder.resolve("rsa-cert.pem")).substring(0, 300));
  }

  private static void certificate(String key, String out, String host) throws Exception {
    openssl(
        "req",
        "-x509",
        "-new",
        "-key",
        at(key),
        "-out",
        at(out),
        "-days",
        "30",
        "-subj",
        "/CN=" + host,
        "-addext",
        "subjectAltName=DNS:" + host);
  }

  private static void openssl(String... arguments) throws Exception {
    ExternalTool.Result result = ExternalTool.require("openssl", "openssl").run(arguments);
    assertThat(result.exitCode()).as(result.errors()).isZero();
  }

  private static String at(String name) {
    return folder.resolve(name).toString();
  }

  private static TlsFiles files(String identity, String key, String password, String trusted) {
    return new TlsFiles(path(identity), path(key), path(password), path(trusted));
  }

  private static Optional<Path> path(String name) {
    return name == null || name.equals("-") ? Optional.empty() : Optional.of(folder.resolve(name));
  }

  @ParameterizedTest
  @CsvSource({
    "rsa-cert.pem, rsa8.pem, -",
    "rsa-cert.pem, rsa1.pem, -",
    "rsa-cert.pem, rsa1-enc.pem, kite.txt",
    "rsa-cert.pem, rsa8-enc.pem, kite.txt",
    "ec-cert.pem, ec1.pem, -",
    "ec-cert.pem, ec8.pem, -",
    "rsa.p12, -, kite.txt",
  })
  void readsEachForm(String identity, String key, String password) {
    TlsSide side = files(identity, key, password, null).server(CLOCK).orThrow();
    assertThat(side.certificateEnds()).isPresent();
    assertThat(side.parameters().getProtocols()).containsExactly("TLSv1.3", "TLSv1.2");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "gone.pem|-|-|there is no file gone.pem: check its name in the settings",
        "rsa-cert.pem|-|-|rsa-cert.pem holds no private key: name the file with the key, or put the key into this one",
        "rsa8.pem|-|-|rsa8.pem holds no certificate: give the file with the certificate that belongs to the key",
        "rsa-cert.pem|rsa8-enc.pem|-|the key in rsa8-enc.pem is encrypted and no password is given: name a password file in the settings",
        "rsa-cert.pem|rsa1-enc.pem|wrong.txt|the password does not open the key in rsa1-enc.pem: put the right password into the first line of the password file",
        "rsa-cert.pem|rsa8-enc.pem|wrong.txt|the password does not open the key in rsa8-enc.pem: put the right password into the first line of the password file",
        "rsa.p12|-|wrong.txt|the password does not open rsa.p12: put the right password into the first line of the password file",
        "rsa.p12|-|-|rsa.p12 is encrypted or damaged and no password is given: name a password file in the settings",
        "rsa.p12|-|empty.txt|the first line of empty.txt is empty: write the password into its first line",
        "ec-cert.pem|rsa8.pem|-|the key in rsa8.pem does not belong to a certificate in ec-cert.pem: give the key that the certificate was issued for",
        "noise.pem|-|-|noise.pem is neither PEM text nor PKCS#12: have it written again in one of these forms",
        "cut.pem|rsa8.pem|-|cut.pem holds a part that can't be read: it was cut or changed; copy it again from where it was made",
        "short-cert.pem|short.pem|-|the RSA key in short.pem has 1024 bits, fewer than 2048: have a longer key and a new certificate made",
        "-|rsa8.pem|-|no certificate is given for the side that is called: name a certificate and its key in the settings",
      })
  void refusesWithWords(String identity, String key, String password, String words) {
    assertThat(words(files(identity, key, password, null).server(CLOCK))).isEqualTo(words);
  }

  @Test
  void refusesWhatIsNotValidToday() {
    TlsFiles files = files("rsa-cert.pem", "rsa8.pem", null, null);
    Clock later = Clock.offset(CLOCK, Duration.ofDays(40));
    Clock earlier = Clock.offset(CLOCK, Duration.ofDays(-40));
    assertThat(words(files.server(later)))
        .matches(
            "the certificate in rsa-cert.pem ended on \\d{4}-\\d\\d-\\d\\d: have a new certificate"
                + " issued and name its file in the settings");
    assertThat(words(files.server(earlier)))
        .matches(
            "the certificate in rsa-cert.pem is not valid before \\d{4}-\\d\\d-\\d\\d: check this"
                + " computer's clock, or wait for that day");
    assertThat(words(files(null, null, null, "rsa-cert.pem").client(later)))
        .isEqualTo(
            "every certificate in rsa-cert.pem has ended: get the other side's current"
                + " certificate");
    assertThat(words(files(null, null, null, "rsa8.pem").client(CLOCK)))
        .isEqualTo(
            "rsa8.pem holds no certificate to trust: give the certificate of the other side, or of"
                + " who issued it, as PEM");
  }

  @Test
  void refusesAFileThatMayNotBeRead() throws IOException {
    Path locked = Files.copy(folder.resolve("rsa8.pem"), folder.resolve("locked.pem"));
    Files.setPosixFilePermissions(locked, PosixFilePermissions.fromString("---------"));
    if (Files.isReadable(locked)) {
      return; // root reads everything
    }
    assertThat(words(files("rsa-cert.pem", "locked.pem", null, null).server(CLOCK)))
        .isEqualTo("locked.pem may not be read by this user: give this user the right to read it");
  }

  @Test
  void aClientTrustsWhomItIsToldTo() {
    assertThat(connect(files(null, null, null, "rsa-cert.pem"), "rsa-cert.pem", "rsa8.pem", null))
        .isEqualTo("TLSv1.3");
  }

  @Test
  void aStrangerIsNotTrusted() {
    assertThat(connect(files(null, null, null, "ec-cert.pem"), "rsa-cert.pem", "rsa8.pem", null))
        .isEqualTo(
            "the certificate of peer is not trusted: name the certificate of the other side, or of"
                + " who issued it, as trusted");
  }

  @Test
  void theHostNameIsChecked() {
    assertThat(connect(files(null, null, null, "ec-cert.pem"), "ec-cert.pem", "ec8.pem", null))
        .isEqualTo(
            "the certificate of peer is not for that host name: call it by a name in its"
                + " certificate, or have one issued for this name");
  }

  @Test
  void aServerThatAsksForACertificateGetsIt() {
    TlsFiles known = files("ec-cert.pem", "ec8.pem", null, "rsa-cert.pem");
    assertThat(connect(known, "rsa-cert.pem", "rsa8.pem", "ec-cert.pem")).isEqualTo("TLSv1.3");
    assertThat(
            connect(
                files(null, null, null, "rsa-cert.pem"), "rsa-cert.pem", "rsa8.pem", "ec-cert.pem"))
        .isEqualTo(
            "peer does not accept our certificate, or asks for one and got none: name a certificate"
                + " and key that the other side trusts");
  }

  /** The protocol agreed with one of our servers, or the client's words. */
  private static String connect(TlsFiles client, String own, String key, String serverTrusts) {
    TlsSide serving = files(own, key, null, serverTrusts).server(CLOCK).orThrow();
    TlsSide calling = client.client(CLOCK).orThrow();
    try (ServerSocket listener = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      CompletableFuture<Void> served =
          CompletableFuture.runAsync(
              () -> {
                try (Socket plain = listener.accept();
                    SSLSocket tls = serving.over(plain, "client", 1)) {
                  tls.getOutputStream().write('x');
                } catch (IOException refusedByClient) {
                  // the client says why
                }
              });
      try (Socket plain = new Socket(listener.getInetAddress(), listener.getLocalPort());
          SSLSocket tls = calling.over(plain, "localhost", listener.getLocalPort())) {
        assertThat(tls.getInputStream().read()).isEqualTo('x');
        return tls.getSession().getProtocol();
      } catch (IOException failure) {
        assertThat(TlsFailure.isTls(failure)).isTrue();
        return words(TlsFailure.refused(failure, "peer"));
      } finally {
        served.join();
      }
    } catch (IOException broken) {
      throw new UncheckedIOException(broken);
    }
  }

  private static String words(Outcome<?> outcome) {
    return ((Outcome.Refused<?>) outcome).sentence();
  }
}
