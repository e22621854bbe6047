package org.vestibule.flow.night;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.RunningPeer;
import org.vestibule.audit.AuditRules;
import org.vestibule.flow.Practice;
import org.vestibule.flow.Settings;
import org.vestibule.flow.SettingsWith;
import org.vestibule.flow.TestHome;
import org.vestibule.forward.worklist.WorklistRules;
import org.vestibule.keys.TlsFiles;

/** A night whose site does not answer goes on, and says what it could not do. */
class NightLinesTest {

  @TempDir private Path folder;

  @Test
  void aWorklistThatIsDownIsToldAndStopsNothing() throws Exception {
    int port = RunningPeer.freePort();
    WorklistRules worklist =
        new WorklistRules(
            "localhost",
            port,
            "WORKLIST",
            "VESTIBULE",
            Optional.empty(),
            "",
            "XC",
            Duration.ofMinutes(45));
    try (Practice practice = open(SettingsWith.worklist(defaults(), worklist))) {
      List<String> warnings = new NightLines(practice).orders("nightly job");
      assertThat(warnings)
          .singleElement()
          .asString()
          .startsWith(
              "the orders of 2026-03-13 could not be fetched: nothing takes connections for"
                  + " WORKLIST at localhost:"
                  + port);
    }
  }

  @Test
  void aSyslogServerThatIsDownIsTold() throws Exception {
    int port = RunningPeer.freePort();
    AuditRules audit =
        new AuditRules(
            true,
            "vestibule",
            "",
            Optional.of(new AuditRules.Syslog("localhost", port, Optional.of(TlsFiles.NONE))));
    try (Practice practice = open(SettingsWith.audit(defaults(), audit))) {
      practice.audit().asked("frontal", "Ada");
      assertThat(new NightLines(practice).audit())
          .containsExactly(
              "1 audit messages wait for the site's server: the syslog server localhost:"
                  + port
                  + " can't be reached: check that it runs; the messages are kept and sent later");
    }
  }

  @Test
  void withoutEitherThereIsNothingToSay() throws Exception {
    try (Practice practice = open(defaults())) {
      assertThat(new NightLines(practice).orders("nightly job")).isEmpty();
      assertThat(new NightLines(practice).audit()).isEmpty();
    }
  }

  private Settings defaults() {
    return Settings.defaults(folder, TestHome.ZONE);
  }

  private Practice open(Settings settings) throws Exception {
    return Practice.open(folder, settings, TestHome.CLOCK, true).orThrow();
  }
}
