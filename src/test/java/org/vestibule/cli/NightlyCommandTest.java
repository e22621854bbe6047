package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.ExternalTool;
import org.vestibule.flow.TestHome;
import org.vestibule.samples.Scene;
import org.w3c.dom.Document;

/** A night as a scheduler starts it: exit codes, what it leaves, and the schedulers' own files. */
class NightlyCommandTest {

  private static final Path SCHEDULE = Path.of("src/main/dist/schedule");

  @TempDir private Path folder;

  @Test
  void endsWithOneIfSomethingWaits() throws IOException {
    TestHome home = TestHome.in(folder);
    settings(home, "[intake]\nsettle-seconds = 0\n[night]\nfree-megabytes = 0\n");
    home.put("a.jpg", Scene.FRONTAL, 1);
    Asked asked = Asked.by("nightly job", home, "nightly");
    assertThat(asked.err()).isEmpty();
    assertThat(asked.code()).isEqualTo(1);
    assertThat(asked.out()).startsWith("The night is done, and something needs a person.\n");
    assertThat(folder.resolve("night/heartbeat")).content().endsWith(" exit 1\n");
  }

  @Test
  void endsWithSixIfTheMachineIsNotReady() throws IOException {
    TestHome home = TestHome.in(folder);
    settings(home, "[night]\nfree-megabytes = 10000000\n");
    Asked asked = Asked.by("nightly job", home, "nightly");
    assertThat(asked.code()).isEqualTo(6);
    assertThat(asked.out().replaceAll("\\s+", " "))
        .contains(" MB are wanted before anything is begun.");
    assertThat(folder.resolve("night/heartbeat")).content().endsWith(" exit 6\n");
  }

  /**
   * Where the run itself fails, the log says so by the failure's kind, and what it said is said.
   */
  @Test
  void aFailureIsInTheLogAndTheHeartbeat() throws IOException {
    TestHome home = TestHome.in(folder);
    settings(home, "[night]\nfree-megabytes = 0\n[folders]\ninbox = \"visits.csv/inbox\"\n");
    Asked asked = Asked.by("nightly job", home, "nightly");
    assertThat(asked.code()).as(asked.out() + asked.err()).isEqualTo(6);
    assertThat(folder.resolve("night/heartbeat")).content().endsWith(" exit 6\n");
    assertThat(folder.resolve("night/last.txt")).content().contains("Run it by hand to see why.");
  }

  @Test
  void systemdAcceptsTheUnits() throws Exception {
    String program = folder.resolve("vestibule").toString();
    Files.writeString(Path.of(program), "#!/bin/sh\n");
    assertThat(Path.of(program).toFile().setExecutable(true)).isTrue();
    Path units = Files.createDirectory(folder.resolve("units"));
    for (String name : new String[] {"vestibule-nightly.service", "vestibule-nightly.timer"}) {
      String unit = Files.readString(SCHEDULE.resolve(name));
      Files.writeString(units.resolve(name), unit.replace("/opt/vestibule/bin/vestibule", program));
    }
    ExternalTool.Result result =
        ExternalTool.require("systemd-analyze", "systemd")
            .run(
                "verify",
                "--man=no",
                units.resolve("vestibule-nightly.service").toString(),
                units.resolve("vestibule-nightly.timer").toString());
    assertThat(result.text() + result.errors()).doesNotContain("vestibule");
    assertThat(result.exitCode()).isZero();
  }

  /** The Windows Task Scheduler's elements (task schema 1.2, from memory), in their order. */
  @Test
  void theWindowsTaskIsWellFormed() throws Exception {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setNamespaceAware(true);
    Document task =
        factory.newDocumentBuilder().parse(SCHEDULE.resolve("vestibule-nightly.xml").toFile());
    assertThat(task.getDocumentElement().getLocalName()).isEqualTo("Task");
    assertThat(task.getElementsByTagName("Arguments").item(0).getTextContent())
        .startsWith("nightly --home ");
  }

  private static void settings(TestHome home, String text) throws IOException {
    Files.writeString(home.folder().resolve(SettingsFile.NAME), text);
  }
}
