package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.flow.Practice;
import org.vestibule.flow.TestHome;
import org.vestibule.samples.Scene;

/** Each way a command ends, as docs/operations.md lists them; 5 has a test of its own. */
class ExitCodeTest {

  @TempDir Path folder;

  private TestHome home;
  private String filed;

  @BeforeEach
  void layOut() throws IOException {
    home = TestHome.in(folder.resolve("home"));
    filed = home.put("a.jpg", Scene.FRONTAL, 1);
    home.manifest(
        """
        file,visit,view,mirror
        a.jpg,V1,frontal,none
        """);
  }

  @Test
  void zeroWhenEverythingWasDone() {
    assertThat(ingest().code()).isZero();
    assertThat(Asked.of(home, "verify").out())
        .isEqualTo(
            """
            Read 1 object again, down to every coefficient.
            Everything is as it was kept.
            """);
    assertThat(Asked.of(home, "verify").code()).isZero();
    assertThat(Asked.of(home, "waiting").code()).isZero();
    assertThat(Asked.of(home, "reindex").code()).isZero();
    assertThat(Asked.of(home, "find", "occlusal").code()).as("no answer is an answer").isZero();
    assertThat(check("objects").code()).isZero();
  }

  @Test
  void oneWhenAPersonIsNeeded() throws IOException {
    home.put("b.jpg", Scene.FRONTAL, 2);
    assertThat(ingest().code()).isEqualTo(1);
    assertThat(Asked.of(home, "waiting").code()).isEqualTo(1);
    Files.write(home.folder().resolve("c.dcm"), new byte[200]);
    assertThat(check("c.dcm").code()).isEqualTo(1);
  }

  @Test
  void oneWhenTheFolderHoldsWhatAPersonMustLookAt() throws IOException {
    home.put("empty.jpg", new byte[0]);
    assertThat(ingest().code()).isEqualTo(1);
  }

  @Test
  void twoWhenTheSettingsAreWrong() throws IOException {
    Files.writeString(
        home.folder().resolve("vestibule.toml"), "[practice]\nzone = \"Middle/Earth\"\n");
    for (List<String> words :
        List.of(
            List.of("ingest", "--by", "Ada"),
            List.of("find", "16"),
            List.of("verify"),
            List.of("waiting"))) {
      Asked asked = Asked.of(home, words.toArray(String[]::new));
      assertThat(asked.code()).isEqualTo(2);
      assertThat(asked.err())
          .isEqualTo(
              "vestibule: vestibule.toml, line 2, practice.zone: there is no time zone"
                  + " \"Middle/Earth\".\n  What to do: write a region and a city, such as"
                  + " \"Europe/Vienna\".\n");
    }
    assertThat(home.folder().resolve("ledger.sqlite")).doesNotExist();
  }

  @Test
  void threeWhenItIsUnderstoodAndRefused() throws IOException {
    Asked begun = Asked.of(home, "find", "16");
    assertThat(begun.code()).isEqualTo(3);
    assertThat(begun.err()).startsWith("vestibule: there is no practice here yet (home).\n");
    ingest();
    assertThat(Asked.of(home, "find", "oclusal").code()).isEqualTo(3);
    assertThat(Asked.of(home, "find").code()).as("an empty question").isEqualTo(3);
    assertThat(Asked.of(home, "show", "0000000000").code()).isEqualTo(3);
    assertThat(Asked.of(home, "ingest", "nowhere", "--by", "Ada").code()).isEqualTo(3);
    assertThat(Asked.of(home, "find", "16", "--most", "0").code()).isEqualTo(2);
    Asked nothing = check("inbox");
    assertThat(nothing.code()).as("nothing checked is nothing found good").isEqualTo(3);
    assertThat(nothing.err())
        .isEqualTo(
            """
            vestibule: there is no .dcm file in inbox.
              What to do: name the files themselves.
            """);
    assertThat(Asked.in(folder, Map.of(), "look", "nowhere").code()).isEqualTo(3);
    assertThat(Asked.in(folder, Map.of(), "demo", "--folder", "home").code()).isEqualTo(3);
    assertThat(Asked.in(folder, Map.of(), "demo", "--samples", "home").code()).isEqualTo(3);
  }

  @Test
  void fourWhenAnObjectIsDamagedOrGone() throws IOException {
    ingest();
    Path object = object();
    byte[] bytes = Files.readAllBytes(object);
    bytes[bytes.length / 2] ^= 1;
    Files.write(object, bytes);
    Asked damaged = Asked.of(home, "verify");
    assertThat(damaged.code()).isEqualTo(4);
    assertThat(damaged.out()).contains("Object ", "What to do: check the disk");
    Files.delete(object);
    assertThat(Asked.of(home, "verify").code()).isEqualTo(4);
    for (String command : List.of("show", "export")) {
      Asked gone = Asked.of(home, command, filed);
      assertThat(gone.code()).isEqualTo(4);
      assertThat(gone.err())
          .isEqualTo(
              "vestibule: the object of this photograph is missing from the objects folder.\n"
                  + "  What to do: restore it from the backup; verify names everything that is"
                  + " missing.\n");
    }
  }

  @Test
  void fourWhenTheLedgerOrTheSecretIsSpoilt() throws IOException {
    ingest();
    Path secret = home.folder().resolve("practice.secret");
    byte[] kept = Files.readAllBytes(secret);
    Files.write(secret, new byte[] {(byte) 0xE4, 10});
    assertThat(Asked.of(home, "verify").code()).isEqualTo(4);
    Files.delete(secret);
    Asked lost = Asked.of(home, "find", "frontal");
    assertThat(lost.code()).isEqualTo(4);
    assertThat(lost.err()).contains("its secret file practice.secret is gone");
    Files.write(secret, kept);
    Files.setPosixFilePermissions(
        secret, java.nio.file.attribute.PosixFilePermissions.fromString("rw-------"));
    assertThat(Asked.of(home, "verify").code()).isZero();
    Files.writeString(home.folder().resolve("ledger.sqlite"), "this is no database. ".repeat(500));
    for (String command : List.of("verify", "waiting", "reindex")) {
      Asked asked = Asked.of(home, command);
      assertThat(asked.code()).isEqualTo(4);
      assertThat(asked.err())
          .isEqualTo(
              "vestibule: the ledger's file is damaged. Bring a copy of it back with \"restore"
                  + " --ledger-only\"; docs/backup.md says how.\n");
    }
  }

  @Test
  void sixWhenTheMachineFails() throws IOException {
    Asked noFile = check("nowhere.dcm");
    assertThat(noFile.code()).isEqualTo(6);
    assertThat(noFile.err())
        .isEqualTo(
            "vestibule: there is no such file or folder (nowhere.dcm). Check the name and try"
                + " again.\n");
    Path file = Files.writeString(folder.resolve("file"), "not a folder");
    for (String[] words :
        new String[][] {
          {"look", "home/inbox", "--to", "file"},
          {"ingest", "--by", "Ada", "--home", "file"}
        }) {
      Asked asked = Asked.in(folder, Map.of(), words);
      assertThat(asked.code()).as(asked.err()).isEqualTo(6);
      assertThat(asked.err()).startsWith("vestibule: ").doesNotContain(folder.toString());
    }
    assertThat(file).hasContent("not a folder");
    ingest();
    Files.delete(home.folder().resolve("ledger.sqlite"));
    Files.createDirectory(home.folder().resolve("ledger.sqlite"));
    Asked folderForLedger = Asked.of(home, "verify");
    assertThat(folderForLedger.code()).isEqualTo(6);
    assertThat(folderForLedger.err())
        .isEqualTo(
            "vestibule: the ledger can't be read or written. Check who may write in the home"
                + " folder, and that its disk is there.\n");
  }

  @Test
  void seventyWhenTheProgramItselfIsWrongAndATraceOnlyIfAsked() {
    Asked bug = failing(() -> new IllegalStateException("hidden words"));
    assertThat(bug.code()).isEqualTo(70);
    assertThat(bug.err())
        .isEqualTo(
            "vestibule: a defect in this program stopped the command (IllegalStateException)."
                + " Nothing that was already filed is harmed. Call it again with --trace to see"
                + " where, and report that.\n");
    Asked traced = failing(() -> new IllegalStateException("hidden words"), "--trace");
    assertThat(traced.code()).isEqualTo(70);
    assertThat(traced.err()).contains("hidden words").contains("\tat org.vestibule.");
    assertThat(traced.out()).isEmpty();
  }

  @Test
  void anErrorOfTheMachineLeavesNoTraceEither() {
    Asked memory = failing(OutOfMemoryError::new);
    assertThat(memory.code()).isEqualTo(6);
    assertThat(memory.err())
        .isEqualTo(
            "vestibule: there is not enough memory. Close other programs, or take fewer"
                + " photographs at once.\n");
    assertThat(failing(StackOverflowError::new).code()).isEqualTo(70);
  }

  /** A clock that fails stands for any place in the program that does. */
  private Asked failing(Supplier<Throwable> failure, String... more) {
    Clock broken =
        new Clock() {
          @Override
          public ZoneId getZone() {
            return TestHome.ZONE;
          }

          @Override
          public Clock withZone(ZoneId zone) {
            return this;
          }

          @Override
          public Instant instant() {
            Throwable thrown = failure.get();
            if (thrown instanceof Error error) {
              throw error;
            }
            throw (RuntimeException) thrown;
          }
        };
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    Console console = new Console(utf8(out), utf8(err), false);
    Map<String, String> environment = Map.of("VESTIBULE_HOME", home.folder().toString());
    Surroundings around = new Surroundings(console, environment, folder, broken, TestHome.ZONE);
    List<String> words = new ArrayList<>(List.of("ingest", "--by", "Ada"));
    words.addAll(List.of(more));
    int code = new Launcher(around).run(words.toArray(String[]::new));
    return new Asked(
        code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }

  private Asked ingest() {
    return Asked.by("Ada Example", home, "ingest", "--at-once");
  }

  private Asked check(String file) {
    return Asked.in(home.folder(), Map.of(), "check", file);
  }

  private Path object() throws IOException {
    try (Practice practice = home.open()) {
      String uid = practice.store().objects().list().get(0);
      return practice.store().objects().path(uid).orElseThrow();
    }
  }

  private static PrintStream utf8(ByteArrayOutputStream to) {
    return new PrintStream(to, true, StandardCharsets.UTF_8);
  }
}
