package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.base.ContentHash;
import org.vestibule.flow.Practice;
import org.vestibule.flow.Settings;
import org.vestibule.flow.Sharing;
import org.vestibule.flow.TestHome;
import org.vestibule.flow.phone.Receiving;
import org.vestibule.flow.phone.UploadRules;
import org.vestibule.samples.Scene;
import org.vestibule.store.ledger.PhoneLinkRow;
import org.vestibule.store.ledger.ShareRow;

/** What lies beside ledger and objects comes into the backup, and back from it. */
class BackupFoldersTest {

  private static final String ID = "0123456789abcdef0123456789abcdef";

  @TempDir private Path folder;
  private TestHome home;
  private Path backup;
  private Path fresh;
  private byte[] photo;

  @BeforeEach
  void layOut() throws IOException {
    home = TestHome.in(folder.resolve("home"));
    backup = folder.resolve("backup");
    fresh = folder.resolve("fresh");
    Files.writeString(
        home.folder().resolve("vestibule.toml"),
        "[audit]\non = true\n[web]\nnames = [\"photos.example\"]\ntls = \"proxy\"\nproxy-header = \"X-Forwarded-For\"\n");
    home.put("a.jpg", Scene.FRONTAL, 1);
    home.manifest("file,visit,view,mirror\na.jpg,V1,frontal,none\n");
    assertThat(Asked.by("Ada", home, "ingest", "--at-once").code()).isZero();
    photo = TestHome.photo(Scene.FRONTAL, 2).bytes();
    try (Practice practice = open(home.folder())) {
      PhoneLinkRow page =
          practice
              .store()
              .ledger()
              .phoneLinks()
              .open(
                  "mark", "V1", "", "B. Rook", TestHome.CLOCK.instant().plus(Duration.ofHours(9)));
      Receiving receiving = new Receiving(practice, UploadRules.DEFAULT);
      receiving.begin(page, ID, "IMG_0001.jpg", photo.length, "").orThrow();
      receiving
          .add(page, ID, 0, new ByteArrayInputStream(Arrays.copyOf(photo, photo.length / 2)))
          .orThrow();
    }
    Asked shared =
        Asked.by(
            "Ada",
            home,
            "share",
            "make",
            "--purpose",
            "own-copy",
            "--for",
            "the patient",
            "--asked-by",
            "the patient",
            "--why",
            "asked at the desk",
            "--visit",
            "V1");
    assertThat(shared.err()).isEmpty();
  }

  private static Practice open(Path at) throws IOException {
    Settings settings = Settings.defaults(at, TestHome.ZONE);
    return Practice.open(at, settings, TestHome.CLOCK, false).orThrow();
  }

  private Asked backUp(String... more) {
    String[] words = {"backup", "--to", backup.toString()};
    String[] all = Arrays.copyOf(words, words.length + more.length);
    System.arraycopy(more, 0, all, words.length, more.length);
    return Asked.of(home, all);
  }

  private static List<String> files(Path in) throws IOException {
    try (Stream<Path> all = Files.walk(in)) {
      return all.filter(Files::isRegularFile)
          .map(file -> in.relativize(file).toString())
          .sorted()
          .toList();
    }
  }

  private void assertSame(String name) throws IOException {
    Path there = home.folder().resolve(name);
    Path back = fresh.resolve(name);
    assertThat(files(there)).as(name).isNotEmpty();
    assertThat(files(back)).as(name).containsAll(files(there));
    for (String file : files(there)) {
      assertThat(back.resolve(file)).hasSameBinaryContentAs(there.resolve(file));
    }
  }

  @Test
  void halfSentFilesSharedCopiesAndAuditMessagesComeBack() throws IOException {
    assertThat(backUp("--secret-to", folder.resolve("apart").toString()).err()).isEmpty();
    Asked restored =
        Asked.in(
            folder,
            Map.of("VESTIBULE_HOME", fresh.toString()),
            "restore",
            "--from",
            backup.toString(),
            "--secret",
            folder.resolve("apart").resolve("practice.secret").toString());
    assertThat(restored.err()).isEmpty();
    assertThat(restored.code()).isZero();
    assertSame("uploads");
    assertThat(restored.out().replaceAll("\\s+", " "))
        .contains("A link to copies that the backup holds open was ended");
    assertThat(files(fresh.resolve("shares"))).isEmpty();
    // Messages are added while a backup is made and brought back.
    assertThat(files(fresh.resolve("audit"))).containsAll(files(backup.resolve("audit")));
    assertThat(files(backup.resolve("audit"))).isNotEmpty();
    try (Practice practice = open(fresh)) {
      ShareRow share = practice.store().ledger().shares().find(1).orElseThrow();
      assertThat(new Sharing(practice).isOpen(share)).isFalse();
      // The phone goes on where it was.
      PhoneLinkRow page = practice.store().ledger().phoneLinks().find(1).orElseThrow();
      Receiving receiving = new Receiving(practice, UploadRules.DEFAULT);
      receiving.completeInterrupted();
      int half = photo.length / 2;
      receiving
          .add(
              page,
              ID,
              half,
              new ByteArrayInputStream(Arrays.copyOfRange(photo, half, photo.length)))
          .orThrow();
      String hash = ContentHash.of(photo).hex();
      assertThat(receiving.end(page, ID, hash).orThrow().confirmed()).isTrue();
    }
  }

  @Test
  void aLinkThatWasEndedLeavesNoCopyInTheBackupAndASpoiltCopyIsMadeAnew() throws IOException {
    assertThat(backUp().code()).isZero();
    Path copy = backup.resolve("uploads").resolve(ID + ".part");
    assertThat(copy).hasSameBinaryContentAs(home.folder().resolve("uploads/" + ID + ".part"));
    byte[] spoilt = Files.readAllBytes(copy);
    spoilt[9] ^= 1;
    Files.write(copy, spoilt);
    assertThat(Asked.by("Ada", home, "share", "end", "1", "--why", "seen").code()).isZero();
    assertThat(files(backup.resolve("shares"))).isNotEmpty();
    assertThat(backUp("--reread").code()).isZero();
    assertThat(files(backup.resolve("shares"))).isEmpty();
    assertThat(copy).hasSameBinaryContentAs(home.folder().resolve("uploads/" + ID + ".part"));
    // A growing file is copied again as it is now.
    Files.write(home.folder().resolve("uploads/" + ID + ".part"), photo);
    assertThat(backUp().code()).isZero();
    assertThat(copy).hasBinaryContent(photo);
  }
}
