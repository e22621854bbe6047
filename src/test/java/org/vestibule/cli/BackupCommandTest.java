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
import org.vestibule.base.ContentHash;
import org.vestibule.flow.Practice;
import org.vestibule.flow.TestHome;
import org.vestibule.samples.Scene;
import org.vestibule.store.ledger.KeptObject;

/** Copies of the record on another disk: whole, cheap when repeated, and never the secret. */
class BackupCommandTest {

  private static final String MOMENT = "2026-03-14T06-00-00Z";

  @TempDir private Path folder;

  private TestHome home;
  private Path backup;

  @BeforeEach
  void layOut() throws IOException {
    home = TestHome.in(folder.resolve("home"));
    backup = folder.resolve("backup");
    home.put("a.jpg", Scene.FRONTAL, 1);
    home.put("b.jpg", Scene.UPPER_OCCLUSAL, 2);
    home.manifest(
        """
        file,visit,view,mirror,incisors,crop
        a.jpg,V1,frontal,none,,
        b.jpg,V1,lower occlusal,as shot,top,0.1 0.1 0.9 0.9
        """);
    assertThat(home.ingest().filed()).hasSize(2);
  }

  private Asked backUp(String... more) {
    String[] words = new String[3 + more.length];
    words[0] = "backup";
    words[1] = "--to";
    words[2] = backup.toString();
    System.arraycopy(more, 0, words, 3, more.length);
    return Asked.of(home, words);
  }

  private List<KeptObject> kept() throws IOException {
    try (Practice practice = TestHome.openAt(home.folder())) {
      return practice.store().ledger().kept().all().toList();
    }
  }

  private Path place(Path objects, String uid) throws IOException {
    try (Stream<Path> all = Files.walk(objects)) {
      return all.filter(file -> file.endsWith(uid + ".dcm")).findFirst().orElseThrow();
    }
  }

  private static List<String> names(Path in) throws IOException {
    try (Stream<Path> all = Files.list(in)) {
      return all.map(path -> path.getFileName().toString()).sorted().toList();
    }
  }

  @Test
  void everyObjectWithLedgerAndListsIsCopiedAndThePageSaysWhatIsThere() throws IOException {
    Files.writeString(home.folder().resolve("vestibule.toml"), "[practice]\nname = \"Weir\"\n");
    Asked made = backUp();
    assertThat(made.err()).isEmpty();
    assertThat(made.code()).isZero();
    assertThat(made.out())
        .isEqualTo(
            """
            Snapshot 2026-03-14T06-00-00Z: the ledger, settings and lists, and 3 objects, 3 of them copied now.
            The practice's secret is not in this backup. Without it the photographs can be looked at, but not
            taken back into a practice that works on: keep a copy apart, with --secret-to.
            """);
    assertThat(names(backup)).containsExactly("backup.txt", "objects", "snapshots");
    assertThat(names(backup.resolve("snapshots"))).containsExactly(MOMENT);
    assertThat(names(backup.resolve("snapshots").resolve(MOMENT)))
        .containsExactly("ledger.sqlite", "vestibule.toml", "visits.csv");
    long bytes = 0;
    for (KeptObject object : kept()) {
      Path copy = place(backup.resolve("objects"), object.sopUid());
      assertThat(ContentHash.of(copy)).isEqualTo(object.fileHash());
      bytes += object.sizeBytes();
    }
    assertThat(Files.readString(backup.resolve("backup.txt")))
        .contains("\nMade by: vestibule 0.")
        .contains("\nNewest snapshot: " + MOMENT + "\n")
        .contains("\nFinished: 2026-03-14T06:00:00Z\n")
        .contains("\nObjects in the newest snapshot: 3, together " + bytes + " bytes\n");
  }

  /** The secret must not be anywhere in the backup: neither its file nor its digits. */
  @Test
  void theSecretGoesApartAndIsForItsOwnerAlone() throws IOException {
    Path apart = folder.resolve("apart");
    Asked made = backUp("--secret-to", apart.toString());
    assertThat(made.code()).as(made.err()).isZero();
    assertThat(made.out())
        .contains("The practice's secret lies in the other folder. Keep it apart from the backup.");
    Path copy = apart.resolve("practice.secret");
    String secret = Files.readString(home.folder().resolve("practice.secret"));
    assertThat(copy).hasContent(secret);
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(copy)))
        .isEqualTo("rw-------");
    try (Stream<Path> all = Files.walk(backup)) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        assertThat(new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1))
            .as(file.toString())
            .doesNotContain(secret.strip());
      }
    }
    assertThat(backUp("--secret-to", apart.toString()).code()).as("again").isZero();
    Files.writeString(copy, "0".repeat(64) + "\n");
    Asked other = backUp("--secret-to", apart.toString());
    assertThat(other.code()).isEqualTo(3);
    assertThat(other.err())
        .isEqualTo(
            "vestibule: another secret lies there already (practice.secret).\n  What to do: it is"
                + " left as it is; name another folder for this practice's secret.\n");
  }

  @Test
  void aRepeatedBackupCopiesOnlyWhatIsNewAndKeepsTheOlderLedger() throws IOException {
    backUp();
    Map<String, String> first = TestHome.everything(backup);
    first.remove("backup.txt");
    home.put("c.jpg", Scene.FRONTAL, 3);
    home.manifest("file,visit,view,mirror\nc.jpg,V1,frontal,none\n");
    assertThat(home.ingest().filed()).hasSize(1);
    Asked again = backUp();
    assertThat(again.code()).as(again.err()).isZero();
    assertThat(again.out()).contains("and 4 objects, 1 of them copied\nnow.");
    assertThat(TestHome.everything(backup)).containsAllEntriesOf(first);
    assertThat(names(backup.resolve("snapshots"))).containsExactly(MOMENT, MOMENT + "-2");
  }

  @Test
  void olderLedgersGoAndTheLastOfEachMonthStays() throws IOException {
    backUp();
    Path snapshots = backup.resolve("snapshots");
    for (String older :
        List.of("2026-01-30T06-00-00Z", "2026-01-31T06-00-00Z", "2026-03-01T06-00-00Z")) {
      Files.createDirectory(snapshots.resolve(older));
      Files.copy(
          snapshots.resolve(MOMENT).resolve("ledger.sqlite"),
          snapshots.resolve(older).resolve("ledger.sqlite"));
    }
    Asked made = backUp("--keep", "2");
    assertThat(made.code()).as(made.err()).isZero();
    assertThat(made.out())
        .contains("Older snapshots removed: 2026-03-01T06-00-00Z, 2026-01-30T06-00-00Z.");
    assertThat(names(snapshots)).containsExactly("2026-01-31T06-00-00Z", MOMENT, MOMENT + "-2");
    assertThat(backUp("--keep", "0").code()).isEqualTo(2);
  }

  @Test
  void aDamagedAndAMissingObjectAreSaidAndTheRestIsCopied() throws IOException {
    List<KeptObject> kept = kept();
    Path damaged = place(home.folder().resolve("objects"), kept.get(0).sopUid());
    byte[] bytes = Files.readAllBytes(damaged);
    bytes[bytes.length / 2] ^= 1;
    Files.write(damaged, bytes);
    Files.delete(place(home.folder().resolve("objects"), kept.get(1).sopUid()));
    Asked made = backUp();
    assertThat(made.code()).isEqualTo(4);
    assertThat(made.out().replace("\n", " "))
        .contains("3 objects, 1 of them copied now.")
        .contains("Object " + kept.get(0).sopUid() + " is damaged here.")
        .contains("Object " + kept.get(1).sopUid() + " is kept but not there.")
        .contains("What to do: everything else was copied; check the disk, and run verify.");
    assertThat(ContentHash.of(place(backup.resolve("objects"), kept.get(2).sopUid())))
        .isEqualTo(kept.get(2).fileHash());
  }

  /** A sound copy outlives the damage of its original, and a spoilt copy is made anew. */
  @Test
  void soundCopiesStayAndSpoiltOnesAreMadeAnew() throws IOException {
    backUp();
    KeptObject object = kept().get(0);
    Path copy = place(backup.resolve("objects"), object.sopUid());
    byte[] bytes = Files.readAllBytes(copy);
    bytes[bytes.length / 2] ^= 1;
    Files.write(copy, bytes);
    assertThat(backUp().out()).as("only --reread reads copies").doesNotContain("made anew");
    Asked reread = backUp("--reread");
    assertThat(reread.code()).isZero();
    assertThat(reread.out()).contains("Spoilt in the backup and made anew: 1 object.\n");
    assertThat(ContentHash.of(copy)).isEqualTo(object.fileHash());
    Files.write(place(home.folder().resolve("objects"), object.sopUid()), bytes);
    assertThat(backUp("--reread").code()).as("the copy is sound").isZero();
    assertThat(ContentHash.of(copy)).isEqualTo(object.fileHash());
  }

  @Test
  void aDamagedLedgerIsNotCarriedIntoTheBackup() throws IOException {
    backUp();
    Map<String, String> before = TestHome.everything(backup);
    Path ledger = home.folder().resolve("ledger.sqlite");
    byte[] bytes = Files.readAllBytes(ledger);
    String text = new String(bytes, StandardCharsets.ISO_8859_1);
    int at = text.lastIndexOf(ContentHash.of(home.inbox().resolve("a.jpg")).hex());
    bytes[at] = (byte) (bytes[at] == 'f' ? 'e' : 'f');
    Files.write(ledger, bytes);
    Asked made = backUp();
    assertThat(made.code()).isEqualTo(4);
    assertThat(made.err())
        .startsWith("vestibule: ")
        .contains(
            "  What to do: restore the ledger from a snapshot: \"vestibule restore"
                + " --ledger-only\"; sound snapshots of a backup were left as they are.");
    assertThat(TestHome.everything(backup)).isEqualTo(before);
  }

  private void refused(Path to, String words) throws IOException {
    Map<String, String> before = TestHome.everything(folder);
    before.keySet().removeIf(file -> file.contains("ledger.sqlite-") || file.contains(".lock"));
    Asked asked = Asked.of(home, "backup", "--to", to.toString());
    assertThat(asked.code()).isEqualTo(3);
    assertThat(asked.err()).isEqualTo(words);
    Map<String, String> after = TestHome.everything(folder);
    after.keySet().removeIf(file -> file.contains("ledger.sqlite-") || file.contains(".lock"));
    assertThat(after).isEqualTo(before);
  }

  /** As a process leaves it that was killed before, or while, it said what the folder is. */
  @Test
  void aBackupThatDiedBeforeItSaidWhatItIsIsBegunAgain() throws IOException {
    Files.createDirectories(backup);
    Files.writeString(backup.resolve("backup.txt-1431.part"), "Backup of a dental pr");
    assertThat(backUp().code()).isZero();
    Files.writeString(backup.resolve("backup.txt-88.part"), "");
    assertThat(backUp().code()).isZero();
    assertThat(names(backup)).containsExactly("backup.txt", "objects", "snapshots");
  }

  @Test
  void placesThatAreNoPlacesForABackupAreRefused() throws IOException {
    String inside =
        "vestibule: the backup would lie inside the practice's own folders.\n  What to do: name a"
            + " folder on another disk; a copy on the same disk dies with it.\n";
    refused(home.folder(), inside);
    refused(home.folder().resolve("backup"), inside);
    Path link = Files.createSymbolicLink(folder.resolve("link"), home.folder());
    refused(link.resolve("x"), inside);
    refused(
        folder,
        "vestibule: the practice's own folders lie inside the folder that the backup should go"
            + " to.\n  What to do: name a folder apart, on another disk.\n");
    Path full = Files.createDirectory(folder.resolve("full"));
    Files.writeString(full.resolve("letters.txt"), "somebody's");
    refused(
        full,
        "vestibule: the folder for the backup holds other things, and no backup.\n  What to do:"
            + " name a new or an empty folder; nothing was changed.\n");
  }

  @Test
  void theSecretMayNotLieWithTheBackup() {
    for (Path place : List.of(backup, backup.resolve("secret"), folder)) {
      Asked asked = backUp("--secret-to", place.toString());
      assertThat(asked.code()).isEqualTo(3);
      assertThat(asked.err())
          .isEqualTo(
              "vestibule: the secret would lie in the same place as the backup.\n  What to do: name"
                  + " another folder, best on another disk: whoever finds both holds everything.\n");
      assertThat(backup).doesNotExist();
    }
  }

  @Test
  void theBackupOfAnotherPracticeIsLeftAlone() throws IOException {
    TestHome other = TestHome.in(folder.resolve("other"));
    other.put("a.jpg", Scene.FRONTAL, 1);
    other.ingest();
    assertThat(Asked.of(other, "backup", "--to", backup.toString()).code()).isZero();
    refused(
        backup,
        "vestibule: the folder holds the backup of another practice.\n  What to do: name another"
            + " folder; nothing was changed.\n");
  }

  @Test
  void aBackupRunsBesideAnIngestAndNotBesideABackup() throws IOException {
    try (Practice practice = TestHome.openAt(home.folder());
        var run = practice.store().lock("ingest").orThrow()) {
      assertThat(backUp().code()).isZero();
      try (var backingUp = practice.store().lockBackup().orThrow()) {
        assertThat(backUp().code()).isEqualTo(5);
      }
      assertThat(run.interrupted()).isEmpty();
    }
  }
}
