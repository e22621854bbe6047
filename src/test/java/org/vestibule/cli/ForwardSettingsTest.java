package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneId;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Settings;
import org.vestibule.forward.DestinationRules;
import org.vestibule.forward.DestinationRules.Confirm;
import org.vestibule.forward.ForwardRules;
import org.vestibule.keys.TlsFiles;

class ForwardSettingsTest {

  @TempDir private Path home;

  private Outcome<Settings> read(String text) throws IOException {
    Files.writeString(home.resolve(SettingsFile.NAME), text, StandardCharsets.UTF_8);
    return SettingsFile.read(home, ZoneId.of("Europe/Lisbon"));
  }

  @Test
  void readsEverySetting() throws IOException {
    ForwardRules rules =
        read("""
                [forward]
                attempts = 7
                first-pause-minutes = 2
                longest-pause-minutes = 60
                limit-minutes = 30
                report-port = 11113
                report-title = "WILLOW"
                unprotected = true
                [inbox]
                remove-confirmed = true
                [[destination]]
                name = "archive"
                host = "archive.example"
                port = 2762
                called = "ARCHIVE"
                trust = "archive.pem"
                report-wait-minutes = 20
                answer-seconds = 15
                [[destination]]
                name = "cloud"
                speaks = "dicomweb"
                required = false
                url = "https://cloud.example/dicom-web"
                token-file = "token"
                """)
            .orThrow()
            .forward();
    assertThat(rules.attempts()).isEqualTo(7);
    assertThat(rules.firstPause()).isEqualTo(Duration.ofMinutes(2));
    assertThat(rules.longestPause()).isEqualTo(Duration.ofMinutes(60));
    assertThat(rules.limit()).isEqualTo(Duration.ofMinutes(30));
    assertThat(rules.removal()).isEqualTo(ForwardRules.SourceRemoval.CONFIRMED);
    assertThat(rules.reports())
        .contains(new ForwardRules.ReportPort(11113, "WILLOW", Optional.empty()));
    TlsFiles trust =
        new TlsFiles(
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.of(home.resolve("archive.pem")));
    assertThat(rules.destinations())
        .containsExactly(
            new DestinationRules(
                "archive",
                true,
                new DestinationRules.Dicom(
                    "archive.example", 2762, "ARCHIVE", "VESTIBULE", Optional.of(trust)),
                Confirm.COMMITMENT,
                Duration.ofMinutes(20),
                Duration.ofSeconds(15)),
            new DestinationRules(
                "cloud",
                false,
                new DestinationRules.Web(
                    URI.create("https://cloud.example/dicom-web"),
                    TlsFiles.NONE,
                    Optional.of(home.resolve("token"))),
                Confirm.QUERY,
                Duration.ofMinutes(10),
                Duration.ofSeconds(60)));
  }

  /** Lines are separated by semicolons. */
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      textBlock =
          """
          [[destination]];name = "My PACS"|a [[destination]] has the name "My PACS"|name it with small letters, digits and hyphens, such as "archive"
          [[destination]];name = "a"|destination "a" lacks host, port or called|ask who runs the archive for its host name, port and AE title
          [[destination]];name = "a";host = "h";port = 104;called = "A TITLE THAT IS TOO LONG"|called is "A TITLE THAT IS TOO LONG", which is no AE title|write up to 16 letters, digits or spaces
          [[destination]];name = "a";host = "h";port = 104;called = "A";unprotected = true;trust = "t.pem"|a [[destination]] is unprotected and names files for TLS|take one of the two out
          [[destination]];name = "a";speaks = "dicomweb";url = "ftp://h"|destination "a" has the url "ftp://h"|write the base address of the archive's DICOMweb services, such as "https://archive.example/dicom-web"
          [[destination]];name = "a";speaks = "dicomweb";url = "https://me:secret@h/"|destination "a" has the url "https://me:secret@h/"|write the base address of the archive's DICOMweb services, such as "https://archive.example/dicom-web"
          [[destination]];name = "a";speaks = "dicomweb";url = "http://archive.example/"|destination "a" has an address without TLS (http)|use https, or write unprotected = true if this network is trusted
          [[destination]];name = "a";speaks = "dicomweb";url = "https://h/";confirm = "commitment"|destination "a" is to confirm by commitment, and speaks dicomweb|write confirm = "query"; storage commitment is asked for with speaks = "dicom"
          [[destination]];name = "a";speaks = "dicomweb";url = "https://h/";[[destination]];name = "a";speaks = "dicomweb";url = "https://h/"|two [[destination]] have the name "a"|rename one
          [forward];report-port = 11113|[forward] has a report-port but no certificate|name certificate and key, or write unprotected = true if this network is trusted
          [forward];first-pause-minutes = 9;longest-pause-minutes = 5|forward.longest-pause-minutes is shorter than the first pause|make it as long at least
          [inbox];remove-confirmed = true|inbox.remove-confirmed is true, but there is no [[destination]]|name the archive that is to confirm photographs, or take the line out
          [inbox];remove-confirmed = true;synced-both-ways = true;[[destination]];name = "a";speaks = "dicomweb";url = "https://h/"|the inbox is synchronised both ways, so what is removed there may vanish from the phone too, and that may be the only other copy|take inbox.remove-confirmed out, or say that you want it all the same with inbox.remove-even-if-synced = true
          """)
  void saysWhatIsWrong(String lines, String reason, String advice) throws IOException {
    Outcome<Settings> outcome = read(lines.replace(";", "\n"));
    assertThat(outcome).isEqualTo(new Refused<>("vestibule.toml: " + reason, advice));
  }

  @Test
  void plainWebIsForThisMachineOrByWord() throws IOException {
    String web = "[[destination]]\nname = \"a\"\nspeaks = \"dicomweb\"\nurl = ";
    assertThat(read(web + "\"http://localhost:8042/\"")).isInstanceOf(Outcome.Done.class);
    assertThat(read(web + "\"http://archive.example/\"\nunprotected = true"))
        .isInstanceOf(Outcome.Done.class);
  }
}
