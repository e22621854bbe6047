package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.ExternalTool;
import org.vestibule.flow.Practice;
import org.vestibule.flow.TestHome;
import org.vestibule.samples.Scene;

/** The night makes the backup too, and never fails to say that it could not. */
class NightlyBackupTest {

  @TempDir private Path folder;
  private TestHome home;
  private Path backup;

  @BeforeEach
  void aPractice() throws IOException {
    home = TestHome.in(folder.resolve("home"));
    backup = folder.resolve("backup");
    home.put("a.jpg", Scene.FRONTAL, 1);
    home.manifest("file,visit,view,mirror\na.jpg,V1,frontal,none\n");
    settings(
        """
        [intake]
        settle-seconds = 0
        [night]
        free-megabytes = 0
        backup-to = "../backup"
        backup-secret-to = "../safe"
        """);
  }

  private void settings(String text) throws IOException {
    Files.writeString(home.folder().resolve(SettingsFile.NAME), text);
  }

  private void begun() throws IOException {
    assertThat(home.ingest().filed()).hasSize(1);
    Asked made =
        Asked.of(
            home,
            "backup",
            "--to",
            backup.toString(),
            "--secret-to",
            folder.resolve("safe").toString());
    assertThat(made.code()).as(made.err()).isZero();
  }

  private Asked night() {
    return Asked.by("nightly job", home, "nightly");
  }

  private static String words(Asked asked) {
    return asked.out().replaceAll("\\s+", " ");
  }

  private int snapshots() throws IOException {
    try (Stream<Path> all = Files.list(backup.resolve("snapshots"))) {
      return (int) all.count();
    }
  }

  @Test
  void theNightCopiesWhatIsNew() throws IOException {
    begun();
    home.put("b.jpg", Scene.FRONTAL, 2);
    home.manifest("file,visit,view,mirror\na.jpg,V1,frontal,none\nb.jpg,V1,frontal,none\n");
    Asked night = night();
    assertThat(night.code()).as(night.out() + night.err()).isZero();
    assertThat(words(night)).contains("The backup was made: 2 objects, 1 of them copied now.");
    assertThat(snapshots()).isEqualTo(2);
    Path files = home.folder().resolve("night");
    assertThat(files.resolve("last.txt")).content().contains("The backup was made: 2 objects");
    assertThat(files.resolve("vestibule.prom"))
        .content()
        .contains("vestibule_backup_made 1\n", "vestibule_backup_copied 1\n");
    try (Stream<Path> all = Files.list(files)) {
      Path log = all.filter(file -> file.toString().endsWith(".jsonl")).findFirst().orElseThrow();
      assertThat(log).content().contains("\"backupMade\":1").contains("\"backupObjects\":2");
    }
  }

  /** An empty mount point looks like a new folder: a backup there would protect nothing. */
  @Test
  void aDiskThatIsNotConnectedIsNoNewFolder() throws IOException {
    assertThat(home.ingest().filed()).hasSize(1);
    Files.createDirectory(backup);
    Asked night = night();
    assertThat(night.code()).isEqualTo(6);
    assertThat(words(night))
        .startsWith("The night is done, but THERE IS NO BACKUP OF IT.")
        .contains(
            "The backup was not made: there is no backup in the folder for the night's backup: the"
                + " disk may not be connected, or no backup was begun there yet. What to do:"
                + " connect the disk; the first time, run \"vestibule backup --to\" by hand.");
    assertThat(backup).isEmptyDirectory();
    assertThat(home.folder().resolve("night/heartbeat")).content().endsWith(" exit 6\n");
    assertThat(home.folder().resolve("night/vestibule.prom"))
        .content()
        .contains("vestibule_backup_made 0\n");
  }

  @Test
  void aSecretsFolderThatIsGoneIsTold() throws IOException {
    begun();
    Files.delete(folder.resolve("safe/practice.secret"));
    Files.delete(folder.resolve("safe"));
    Asked night = night();
    assertThat(night.code()).isEqualTo(6);
    assertThat(words(night))
        .contains(
            "The backup was not made: the folder for the copy of the secret is not there: the disk"
                + " may not be connected.");
  }

  @Test
  void damageIsTheWorstEnding() throws IOException {
    begun();
    home.put("b.jpg", Scene.CHILD_FRONTAL, 2);
    home.manifest("file,visit,view,mirror\na.jpg,V1,frontal,none\nb.jpg,V1,frontal,none\n");
    home.ingest();
    try (Practice practice = home.open()) {
      for (String uid : practice.store().objects().list()) {
        Path object = practice.store().objects().path(uid).orElseThrow();
        Path there =
            backup
                .resolve("objects")
                .resolve(object.getParent().getFileName() + "/" + uid + ".dcm");
        if (!Files.exists(there)) {
          Files.delete(object);
        }
      }
    }
    Asked night = night();
    assertThat(night.code()).isEqualTo(4);
    assertThat(words(night)).contains(" is kept but not there");
  }

  @Test
  void aFullDiskIsToldAndTheNextNightGoesOn() throws Exception {
    Path disk = Files.createDirectory(folder.resolve("disk"));
    ExternalTool.Result mounted =
        ExternalTool.require("mount", "mount")
            .run("-t", "tmpfs", "-o", "size=2m", "tmpfs", disk.toString());
    if (mounted.exitCode() != 0) {
      String message = "SKIPPED: only root may mount a small disk to fill; " + mounted.errors();
      System.err.println(message);
      Assumptions.abort(message);
    }
    try {
      settings("[night]\nfree-megabytes = 0\nbackup-to = \"" + disk.resolve("backup") + "\"\n");
      assertThat(home.ingest().filed()).hasSize(1);
      assertThat(Asked.of(home, "backup", "--to", disk.resolve("backup").toString()).code())
          .isZero();
      Path filler = disk.resolve("filler");
      Files.write(filler, new byte[(int) Files.getFileStore(disk).getUsableSpace() - 8192]);
      Asked full = night();
      assertThat(full.code()).isEqualTo(6);
      assertThat(words(full))
          .contains("The backup was not made: the disk for the backup is full.")
          .contains("until then the last backup is what there is.")
          .doesNotContain("Exception")
          .doesNotContain(folder.toString());
      Files.delete(filler);
      assertThat(words(night())).contains("The backup was made: 1 object, 0 of them copied now.");
      try (Stream<Path> all = Files.walk(disk)) {
        assertThat(all.filter(file -> file.toString().endsWith(".part"))).isEmpty();
      }
    } finally {
      assertThat(ExternalTool.require("umount", "mount").run(disk.toString()).exitCode()).isZero();
    }
  }

  @Test
  void aSecretWithoutABackupIsAWrongSetting() throws IOException {
    settings("[night]\nbackup-secret-to = \"../safe\"\n");
    Asked night = night();
    assertThat(night.code()).isEqualTo(2);
    assertThat(night.err())
        .contains("night.backup-secret-to says where the secret goes, but no backup is made");
  }
}
