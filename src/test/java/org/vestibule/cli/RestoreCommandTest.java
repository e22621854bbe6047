package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.flow.Practice;
import org.vestibule.flow.TestHome;
import org.vestibule.samples.Scene;

/** A practice that comes back from its backup, on the same machine or on a new one. */
class RestoreCommandTest {

  @TempDir private Path folder;

  private TestHome home;
  private Path backup;
  private Path secret;
  private Path fresh;
  private String filed;

  @BeforeEach
  void layOut() throws IOException {
    home = TestHome.in(folder.resolve("home"));
    backup = folder.resolve("backup");
    secret = folder.resolve("apart").resolve("practice.secret");
    fresh = folder.resolve("fresh");
    Files.writeString(
        home.folder().resolve("vestibule.toml"),
        "[practice]\nname = \"Weir\"\nzone = \"Europe/Vienna\"\n");
    filed = home.put("a.jpg", Scene.FRONTAL, 1);
    home.put("b.jpg", Scene.UPPER_OCCLUSAL, 2);
    home.put("waits.jpg", Scene.FRONTAL, 3);
    home.manifest(
        """
        file,visit,view,mirror,incisors,crop
        a.jpg,V1,frontal,none,,
        b.jpg,V1,lower occlusal,as shot,top,0.1 0.1 0.9 0.9
        """);
    assertThat(Asked.by("Ada", home, "ingest", "--at-once").code()).isEqualTo(1);
    assertThat(backUp().code()).isZero();
  }

  private Asked backUp() {
    return Asked.of(
        home, "backup", "--to", backup.toString(), "--secret-to", secret.getParent().toString());
  }

  private Asked ask(Path at, String... words) {
    return Asked.in(folder, Map.of("VESTIBULE_HOME", at.toString()), words);
  }

  private Asked restore(Path from, Path with, String... more) {
    List<String> words =
        Stream.concat(
                Stream.of("restore", "--from", from.toString(), "--secret", with.toString()),
                Stream.of(more))
            .toList();
    return ask(fresh, words.toArray(String[]::new));
  }

  private void answersTheSame() {
    for (List<String> question :
        List.of(
            List.of("find", "occlusal"),
            List.of("find", "frontal"),
            List.of("show", filed),
            List.of("show", filed, "--history"),
            List.of("waiting"),
            List.of("visits", "list"))) {
      String[] words = question.toArray(String[]::new);
      assertThat(ask(fresh, words)).as("%s", question).isEqualTo(ask(home.folder(), words));
    }
  }

  @Test
  void theWholePracticeComesBackAndAnswersTheSame() throws IOException {
    Map<String, String> before = TestHome.everything(backup);
    Asked restored = restore(backup, secret);
    assertThat(restored.err()).isEmpty();
    assertThat(restored.code()).isZero();
    assertThat(restored.out())
        .isEqualTo(
            """
            Brought back snapshot 2026-03-14T06-00-00Z and 3 objects; the index was made again, and everything
            was read again.
            Everything is as it was kept.
            """);
    answersTheSame();
    assertThat(TestHome.everything(backup)).as("the backup is only read").isEqualTo(before);
    assertThat(
            PosixFilePermissions.toString(
                Files.getPosixFilePermissions(fresh.resolve("practice.secret"))))
        .isEqualTo("rw-------");
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(fresh)))
        .isEqualTo("rwx------");
  }

  /** Same photograph, same secret: the restored practice knows it, and files nothing twice. */
  @Test
  void whatIsTakenInAgainIsKnown() throws IOException {
    assertThat(restore(backup, secret).code()).isZero();
    Asked again =
        ask(
            fresh,
            "ingest",
            home.inbox().toString(),
            "--manifest",
            home.inbox().resolve("manifest.csv").toString(),
            "--at-once",
            "--by",
            "Ada");
    assertThat(again.code()).as(again.err()).isEqualTo(1);
    assertThat(again.out()).contains("0 photographs filed, 1 waiting, 2 known from before");
    assertThat(ask(fresh, "verify").out()).endsWith("Everything is as it was kept.\n");
  }

  private void refused(Asked asked, int code, String words) {
    assertThat(asked.code()).isEqualTo(code);
    assertThat(asked.out()).isEmpty();
    assertThat(asked.err()).isEqualTo(words);
    assertThat(fresh).doesNotExist();
  }

  @Test
  void theSecretMustBeTheRightOneAndBeThere() throws IOException {
    refused(
        ask(fresh, "restore", "--from", backup.toString()),
        2,
        "vestibule: the practice's secret is missing, and a backup does not hold it.\n  What to do:"
            + " name the copy that was kept apart, with --secret FILE.\n");
    refused(
        restore(backup, folder.resolve("nowhere")),
        3,
        "vestibule: there is no secret file nowhere there.\n  What to do: name the copy of"
            + " practice.secret that was kept apart from the backup.\n");
    Path other = Files.writeString(folder.resolve("other.secret"), "5a".repeat(32) + "\n");
    refused(
        restore(backup, other),
        3,
        "vestibule: the secret in other.secret does not belong to this backup.\n  What to do: name"
            + " the copy of this practice's own secret; with another one the same photographs would"
            + " get other identities and be filed twice.\n");
    Path text = Files.writeString(folder.resolve("text"), "not a secret");
    refused(
        restore(backup, text),
        3,
        "vestibule: the file text does not hold a practice's secret.\n  What to do: name the copy"
            + " of practice.secret that was kept apart from the backup.\n");
  }

  /** Somebody copies files by hand and takes another practice's secret along. */
  @Test
  void anotherSecretInTheHomeFolderIsNoticedWhenItIsOpened() throws IOException {
    assertThat(restore(backup, secret).code()).isZero();
    Files.writeString(fresh.resolve("practice.secret"), "5a".repeat(32) + "\n");
    Asked asked = ask(fresh, "find", "frontal");
    assertThat(asked.code()).isEqualTo(4);
    assertThat(asked.err())
        .isEqualTo(
            "vestibule: the secret file practice.secret is not the one with which this ledger was"
                + " begun.\n  What to do: put the secret back that belongs to this ledger; with"
                + " another one the same photographs would get other identities and be filed"
                + " twice.\n");
    Files.delete(fresh.resolve("practice.secret"));
    Asked missing = ask(fresh, "find", "frontal");
    assertThat(missing.code()).isEqualTo(4);
    assertThat(missing.err())
        .startsWith(
            "vestibule: the store has objects or a ledger, but its secret file practice.secret is"
                + " gone.\n");
  }

  @Test
  void whatIsNoBackupOrNoPlaceIsRefused() throws IOException {
    refused(
        restore(home.inbox(), secret),
        3,
        "vestibule: there is no backup in that folder (inbox).\n  What to do: name the folder that"
            + " backup wrote, the one with backup.txt in it.\n");
    refused(
        restore(backup, secret, "--snapshot", "2020-01-01T00-00-00Z"),
        3,
        "vestibule: the backup holds no snapshot 2020-01-01T00-00-00Z.\n  What to do: name one of"
            + " its folder snapshots, such as 2026-03-14T06-00-00Z.\n");
    Asked there =
        ask(home.folder(), "restore", "--from", backup.toString(), "--secret", secret.toString());
    assertThat(there.code()).isEqualTo(3);
    assertThat(there.err())
        .isEqualTo(
            "vestibule: there is a practice in that folder already.\n  What to do: name a new folder"
                + " with --home; to bring back the ledger alone, use --ledger-only.\n");
    Files.createDirectory(fresh);
    Files.writeString(fresh.resolve("letters.txt"), "somebody's");
    Asked full = restore(backup, secret);
    assertThat(full.code()).isEqualTo(3);
    assertThat(full.err())
        .isEqualTo(
            "vestibule: the new home folder holds other things.\n  What to do: name a new or an"
                + " empty folder with --home.\n");
  }

  /** Power cut before the ledger was there: the same command goes on. */
  @Test
  void anInterruptedRestoreIsCalledAgain() throws IOException {
    assertThat(restore(backup, secret).code()).isZero();
    Files.delete(fresh.resolve("ledger.sqlite"));
    try (Stream<Path> all = Files.walk(fresh.resolve("objects"))) {
      Files.delete(all.filter(Files::isRegularFile).findFirst().orElseThrow());
    }
    Asked again = restore(backup, secret);
    assertThat(again.code()).as(again.err()).isZero();
    assertThat(again.out()).contains(" and 1 object; ").endsWith("as it was kept.\n");
    answersTheSame();
  }

  @Test
  void aSpoiltCopyIsNamedAndNotBroughtBack() throws IOException {
    Path copy;
    try (Stream<Path> all = Files.walk(backup.resolve("objects"))) {
      copy = all.filter(Files::isRegularFile).sorted().findFirst().orElseThrow();
    }
    byte[] bytes = Files.readAllBytes(copy);
    bytes[bytes.length / 3] ^= 16;
    Files.write(copy, bytes);
    String uid = copy.getFileName().toString().replace(".dcm", "");
    Asked restored = restore(backup, secret);
    assertThat(restored.code()).isEqualTo(4);
    assertThat(restored.out().replace("\n", " "))
        .contains(" and 2 objects; ")
        .contains("The copy of object " + uid + " in the backup is damaged, and was left out.")
        .contains("Object " + uid + " is kept but not there.");
  }

  @Test
  void aSpoiltLedgerInTheBackupIsRefusedAndAnOlderOneTaken() throws IOException {
    assertThat(backUp().code()).isZero();
    Path newest = backup.resolve("snapshots/2026-03-14T06-00-00Z-2/ledger.sqlite");
    Files.writeString(newest, "these are somebody's notes, longer than a head".repeat(9));
    refused(
        restore(backup, secret),
        4,
        "vestibule: the ledger of snapshot 2026-03-14T06-00-00Z-2 can't be read as a ledger.\n  What"
            + " to do: name an older one with --snapshot; nothing was changed.\n");
    assertThat(restore(backup, secret, "--snapshot", "2026-03-14T06-00-00Z").code()).isZero();
    answersTheSame();
  }

  @Test
  void aDamagedLedgerIsReplacedAndSetAside() throws IOException {
    Path ledger = home.folder().resolve("ledger.sqlite");
    byte[] spoilt =
        "these are somebody's notes, longer than a head".repeat(9).getBytes(StandardCharsets.UTF_8);
    Files.write(ledger, spoilt);
    Asked stopped = Asked.of(home, "verify");
    assertThat(stopped.code()).isEqualTo(4);
    assertThat(stopped.err())
        .isEqualTo(
            "vestibule: the ledger's file is damaged. Bring a copy of it back with \"restore"
                + " --ledger-only\"; docs/backup.md says how.\n");
    Asked restored = Asked.of(home, "restore", "--ledger-only", "--from", backup.toString());
    assertThat(restored.err()).isEmpty();
    assertThat(restored.code()).isZero();
    assertThat(restored.out().replace("\n", " "))
        .startsWith("Brought back snapshot 2026-03-14T06-00-00Z, the ledger alone; ")
        .contains("The ledger that was there before lies in set-aside/2026-03-14T06-00-00Z.")
        .endsWith("Everything is as it was kept. ");
    assertThat(home.folder().resolve("set-aside/2026-03-14T06-00-00Z/ledger.sqlite"))
        .hasBinaryContent(spoilt);
    assertThat(Asked.of(home, "find", "frontal").out()).contains(filed);
  }

  @Test
  void theLedgerIsNotExchangedUnderARun() throws IOException {
    try (Practice practice = TestHome.openAt(home.folder());
        var run = practice.store().lock("ingest").orThrow()) {
      Asked asked = Asked.of(home, "restore", "--ledger-only", "--from", backup.toString());
      assertThat(asked.code()).isEqualTo(5);
      assertThat(run.interrupted()).isEmpty();
    }
  }
}
