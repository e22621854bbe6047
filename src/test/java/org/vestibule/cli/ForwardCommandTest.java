package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.ExternalTool;
import org.vestibule.flow.Practice;
import org.vestibule.flow.TestHome;
import org.vestibule.samples.Scene;
import org.vestibule.store.ledger.Intent;

/**
 * From the inbox into an archive that shares no code with us: Python's own MIME parser and pydicom
 * (see {@code dicomweb-peer.py}).
 */
class ForwardCommandTest {

  private static final ExternalTool PYTHON = ExternalTool.require("python3", "python3-pydicom");

  @TempDir private Path folder;
  private TestHome home;
  private Path archive;
  private Process peer;
  private String photo;

  @BeforeEach
  void layOut() throws IOException {
    home = TestHome.in(folder.resolve("home"));
    archive = Files.createDirectories(folder.resolve("archive"));
    photo = home.put("a.jpg", Scene.FRONTAL, 1);
    home.manifest("file,visit,view,mirror\na.jpg,V1,frontal,none\n");
    home.ingest();
  }

  @AfterEach
  void stop() {
    if (peer != null) {
      peer.destroyForcibly();
    }
  }

  private void start(String refused) throws IOException, InterruptedException {
    Path script = folder.resolve("peer.py");
    try (InputStream in = ForwardCommandTest.class.getResourceAsStream("dicomweb-peer.py")) {
      Files.write(script, Objects.requireNonNull(in).readAllBytes());
    }
    peer = PYTHON.start(script.toString(), archive.toString(), refused);
    Path port = archive.resolve("port");
    for (int i = 0; i < 600 && !Files.exists(port); i++) {
      Thread.sleep(100);
    }
    settings("http://127.0.0.1:" + Files.readString(port), "");
  }

  private void settings(String url, String more) throws IOException {
    Files.writeString(
        home.folder().resolve("vestibule.toml"),
        "[practice]\nzone = \"Europe/Vienna\"\n"
            + more
            + "[[destination]]\nname = \"archive\"\nspeaks = \"dicomweb\"\nurl = \""
            + url
            + "\"\n");
  }

  private List<Intent> current() throws IOException {
    try (Practice practice = home.open()) {
      return practice.store().ledger().intents().current(TestHome.hash(practice, photo));
    }
  }

  private List<String> log() throws IOException {
    return Files.readAllLines(archive.resolve("log")).stream().map(String::strip).toList();
  }

  @Test
  void aPhotographArrivesBitForBitAndIsConfirmed() throws Exception {
    start("-");
    Asked dry = Asked.of(home, "forward", "--dry-run");
    assertThat(dry.out())
        .isEqualTo(
            """
            archive  confirmed now  confirmed  sent  waiting  failed  refused
            archive  -              0          0     1        0       0
            """);
    assertThat(archive.resolve("log")).doesNotExist();
    Asked asked = Asked.of(home, "forward");
    assertThat(asked.err()).isEmpty();
    assertThat(asked.out())
        .isEqualTo(
            """
            archive  confirmed now  confirmed  sent  waiting  failed  refused
            archive  1              1          0     0        0       0
            """);
    assertThat(asked.code()).isZero();
    String uid = current().get(0).sopUid();
    try (Practice practice = home.open()) {
      assertThat(Files.readAllBytes(archive.resolve(uid + ".dcm")))
          .isEqualTo(practice.store().objects().get(uid).orElseThrow());
    }
    assertThat(Asked.of(home, "forward", "list").out())
        .isEqualTo("Nothing needs a person on its way to an archive.\n");
    assertThat(Asked.of(home, "forward", "list", photo).out())
        .isEqualTo(photo + "  filing 1  archive: confirmed\n  shown when asked.\n");
    assertThat(Asked.of(home, "show", photo).out())
        .containsPattern("(?m)^Archive +archive: confirmed \\(shown when asked\\)$");
    assertThat(home.inbox().resolve("a.jpg")).as("sources stay").exists();
  }

  /** First the note, then the new object; the old one is never overwritten. */
  @Test
  void aCorrectionTravels() throws Exception {
    start("-");
    Asked.of(home, "forward");
    String old = current().get(0).sopUid();
    byte[] there = Files.readAllBytes(archive.resolve(old + ".dcm"));
    Asked moved =
        Asked.by("A. Finch", home, "move", photo, "--visit", "V2", "--why", "wrong patient chosen");
    assertThat(moved.code()).as(moved.err()).isZero();
    Asked asked = Asked.of(home, "forward");
    assertThat(asked.code()).as(asked.out() + asked.err()).isZero();
    assertThat(log()).hasSize(3);
    assertThat(log().get(0)).endsWith(" XC");
    assertThat(log().get(1)).endsWith(" KO");
    assertThat(log().get(2)).isEqualTo(current().get(0).sopUid() + " XC");
    assertThat(log().stream().distinct()).as("each under an identifier of its own").hasSize(3);
    assertThat(Files.readAllBytes(archive.resolve(old + ".dcm"))).isEqualTo(there);
    try (Practice practice = home.open()) {
      assertThat(practice.store().objects().get(old)).hasValue(there);
    }
  }

  @Test
  void aRefusedObjectIsListedAndTriedAgainByAPersonsWord() throws Exception {
    start(current().get(0).sopUid());
    Asked asked = Asked.of(home, "forward");
    assertThat(asked.code()).isEqualTo(1);
    assertThat(asked.out())
        .isEqualTo(
            """
            archive  confirmed now  confirmed  sent  waiting  failed  refused
            archive  0              0          0     0        0       1
            1 object needs a person at archive; "vestibule forward list" says which, and why.
            """);
    Asked list = Asked.of(home, "forward", "list");
    assertThat(list.code()).isEqualTo(1);
    assertThat(list.out())
        .isEqualTo(
            photo
                + """
                  filing 1  archive: refused
                  Why: the archive can't understand the object (status C000).
                  What to do: mend the reason, then "vestibule forward again"; docs/delivery.md has the reasons.
                """
                    .replaceFirst("^", "  ")
                    .replaceFirst("^ {4}", "  "));
    Asked waiting = Asked.of(home, "waiting");
    assertThat(waiting.code()).isEqualTo(1);
    assertThat(waiting.out())
        .isEqualTo(
            """
            Nothing waits.

            1 object needs a person at archive; "vestibule forward list" says which, and why.
            """);
    Asked again =
        Asked.by("A. Finch", home, "forward", "again", photo, "--why", "archive was updated");
    assertThat(again.out()).isEqualTo("1 object will be tried again by the next delivery.\n");
    Asked second = Asked.of(home, "forward");
    assertThat(second.code()).isEqualTo(1);
    assertThat(log()).as(second.out() + second.err()).hasSize(2);
  }

  @Test
  void sourcesLeaveTheInboxOnlyWhenTheSettingsSaySo() throws Exception {
    start("-");
    String url = "http://127.0.0.1:" + Files.readString(archive.resolve("port"));
    settings(url, "[inbox]\nremove-confirmed = true\n");
    Asked asked = Asked.of(home, "forward");
    assertThat(asked.out()).endsWith("1 file left the inbox, confirmed by every archive.\n");
    assertThat(home.inbox().resolve("a.jpg")).doesNotExist();
    assertThat(home.inbox().resolve("manifest.csv")).exists();
  }

  @Test
  void anArchiveThatIsDownIsSaidAndCostsNothing() throws Exception {
    settings("http://127.0.0.1:1", "[inbox]\nremove-confirmed = true\n");
    Asked asked = Asked.of(home, "forward");
    assertThat(asked.code()).isEqualTo(1);
    assertThat(asked.out())
        .isEqualTo(
            """
            archive  confirmed now  confirmed  sent  waiting  failed  refused
            archive  0              0          0     1        0       0
            archive was left early.
              Why: 127.0.0.1:1 can't be reached.
              What to do: see whether it runs, and whether its address is right.
            """);
    assertThat(home.inbox().resolve("a.jpg")).exists();
  }

  @Test
  void withoutAnArchiveThereIsNothingToDo() {
    Asked asked = Asked.of(home, "forward");
    assertThat(asked.code()).isEqualTo(3);
    assertThat(asked.err())
        .isEqualTo(
            """
            vestibule: the settings name no archive, so there is nowhere to deliver to.
              What to do: add a [[destination]] to vestibule.toml; docs/delivery.md says how.
            """);
  }

  @Test
  void anUnknownArchiveIsRefused() throws IOException {
    settings("http://127.0.0.1:1", "");
    Asked asked = Asked.of(home, "forward", "--to", "attic");
    assertThat(asked.code()).isEqualTo(3);
    assertThat(asked.err())
        .isEqualTo(
            """
            vestibule: there is no destination "attic".
              What to do: the settings name archive.
            """);
  }
}
