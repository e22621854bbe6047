package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.vestibule.ExternalTool;
import org.vestibule.flow.Practice;
import org.vestibule.flow.TestHome;
import org.vestibule.samples.Scene;

/**
 * A real disk of two megabytes (tmpfs, which root alone may mount) that fills up while photographs
 * are taken in, at different moments: the secret, the ledger, an object. The run ends with 6 and
 * says so; with space again the next run completes, and nothing is lost or there twice.
 */
class FullDiskTest {

  private static final int PHOTOS = 6;

  @TempDir private static Path folder;

  private static Path disk;
  private static boolean mounted;

  @BeforeAll
  static void mount() throws Exception {
    disk = Files.createDirectory(folder.resolve("disk"));
    ExternalTool.Result result =
        ExternalTool.require("mount", "mount")
            .run("-t", "tmpfs", "-o", "size=2m", "tmpfs", disk.toString());
    mounted = result.exitCode() == 0;
    if (!mounted) {
      String message = "SKIPPED: only root may mount a small disk to fill; " + result.errors();
      System.err.println(message);
      Assumptions.abort(message);
    }
  }

  @AfterAll
  static void unmount() throws Exception {
    if (mounted) {
      assertThat(ExternalTool.require("umount", "mount").run(disk.toString()).exitCode()).isZero();
    }
  }

  /** Free space in kilobytes when the run begins; the whole run needs about 500. */
  @ParameterizedTest
  @ValueSource(ints = {0, 8, 40, 110, 200, 260, 320, 380})
  void theRunEndsInWordsAndTheNextOneCompletesIt(int freeKilobytes) throws IOException {
    TestHome home = TestHome.in(folder.resolve("from" + freeKilobytes));
    StringBuilder manifest = new StringBuilder("file,visit,view,mirror\n");
    for (int i = 0; i < PHOTOS; i++) {
      home.put("p" + i + ".jpg", Scene.FRONTAL, i);
      manifest.append("p").append(i).append(".jpg,V1,frontal,none\n");
    }
    home.manifest(manifest.toString());
    Path onDisk = disk.resolve("home");
    Files.createDirectory(onDisk);
    Files.copy(home.folder().resolve("visits.csv"), onDisk.resolve("visits.csv"));
    try {
      Path filler = fillUpTo(freeKilobytes * 1024L);
      Asked full = ingest(home, onDisk);
      assertThat(full.code()).as(full.err() + full.out()).isEqualTo(6);
      assertThat(full.err())
          .startsWith("vestibule: the disk is full")
          .contains(" Free some space and run the command again;")
          .doesNotContain("Exception")
          .doesNotContain(folder.toString());
      Files.delete(filler);
      Asked next = ingest(home, onDisk);
      assertThat(next.code()).as(next.err() + next.out()).isZero();
      try (Practice practice = TestHome.openAt(onDisk)) {
        assertThat(practice.store().objects().list()).hasSize(PHOTOS);
        assertThat(practice.store().objects().strays()).isEmpty();
        assertThat(practice.store().ledger().kept().all()).hasSize(PHOTOS);
      }
      Asked verified = Asked.in(folder, Map.of("VESTIBULE_HOME", onDisk.toString()), "verify");
      assertThat(verified.out()).endsWith("Everything is as it was kept.\n");
      Asked found =
          Asked.in(folder, Map.of("VESTIBULE_HOME", onDisk.toString()), "find", "frontal");
      assertThat(found.out().lines().filter(line -> line.contains("Orla"))).hasSize(PHOTOS);
    } finally {
      clear();
    }
  }

  /** Half a picture under its full name would be taken for the whole one. */
  @Test
  void anExportLeavesNoHalfPicture() throws IOException {
    TestHome home = TestHome.in(folder.resolve("exporting"));
    String id = home.put("p.jpg", Scene.FRONTAL, 1);
    home.manifest("file,visit,view,mirror\np.jpg,V1,frontal,none\n");
    assertThat(home.ingest().filed()).hasSize(1);
    try {
      fillUpTo(4096);
      Asked asked = Asked.of(home, "export", id, "--to", disk.resolve("p.jpg").toString());
      assertThat(asked.code()).isEqualTo(6);
      assertThat(asked.err()).startsWith("vestibule: the disk is full");
      try (var left = Files.list(disk)) {
        assertThat(left.map(file -> file.getFileName().toString())).containsExactly("filler");
      }
    } finally {
      clear();
    }
  }

  /** Free space in kilobytes; the whole release needs about 50. */
  @ParameterizedTest
  @CsvSource({"0, out", "8, out", "24, out", "40, out", "0, out.zip", "8, out.zip", "24, out.zip"})
  void copiesLeaveWholeOrNotAtAll(int freeKilobytes, String name) throws IOException {
    TestHome home = TestHome.in(folder.resolve("releasing" + freeKilobytes + name));
    String id = home.put("p.jpg", Scene.FRONTAL, 1);
    home.manifest("file,visit,view,mirror\np.jpg,V1,frontal,none\n");
    assertThat(home.ingest().filed()).hasSize(1);
    String[] consent = {
      "consent",
      "add",
      "--patient",
      "P1",
      "--purpose",
      "teaching",
      "--given",
      "2026-03-12",
      "--form",
      "form 3"
    };
    assertThat(Asked.by("Ada Example", home, consent).code()).isZero();
    String[] make = {
      "release",
      "make",
      "--purpose",
      "teaching",
      "--for",
      "a course",
      "--asked-by",
      "Ada Example",
      "--why",
      "to teach",
      "--looked-by",
      "Ada Example",
      "--to",
      disk.resolve(name).toString(),
      id
    };
    try {
      Path filler = fillUpTo(freeKilobytes * 1024L);
      Asked full = Asked.by("Ada Example", home, make);
      assertThat(full.code()).as(full.err() + full.out()).isEqualTo(6);
      assertThat(full.err()).startsWith("vestibule: the disk is full").doesNotContain("Exception");
      try (var left = Files.list(disk)) {
        assertThat(left.map(file -> file.getFileName().toString())).containsExactly("filler");
      }
      assertThat(Asked.of(home, "release", "list").out())
          .isEqualTo("No copies have left the practice.\n");
      Files.delete(filler);
      Asked again = Asked.by("Ada Example", home, make);
      assertThat(again.code()).as(again.err()).isZero();
    } finally {
      clear();
    }
  }

  /** Free space in kilobytes; the whole backup needs about 450. */
  @ParameterizedTest
  @ValueSource(ints = {0, 60, 250, 330})
  void aBackupLeavesNoHalfFileAndIsCompletedByTheNextOne(int freeKilobytes) throws IOException {
    TestHome home = TestHome.in(folder.resolve("backing" + freeKilobytes));
    StringBuilder manifest = new StringBuilder("file,visit,view,mirror\n");
    for (int i = 0; i < PHOTOS; i++) {
      home.put("p" + i + ".jpg", Scene.FRONTAL, i);
      manifest.append("p").append(i).append(".jpg,V1,frontal,none\n");
    }
    home.manifest(manifest.toString());
    assertThat(home.ingest().filed()).hasSize(PHOTOS);
    try {
      Path filler = fillUpTo(freeKilobytes * 1024L);
      String to = disk.resolve("backup").toString();
      Asked full = Asked.of(home, "backup", "--to", to);
      assertThat(full.code()).as(full.err() + full.out()).isEqualTo(6);
      assertThat(full.err())
          .startsWith("vestibule: the disk is full")
          .doesNotContain("Exception")
          .doesNotContain(folder.toString());
      try (var left = Files.walk(disk)) {
        assertThat(left.map(file -> file.getFileName().toString()))
            .noneMatch(name -> name.endsWith(".part") || name.contains("ledger"));
      }
      Files.delete(filler);
      assertThat(Asked.of(home, "backup", "--to", to, "--reread").out())
          .contains(PHOTOS + " objects")
          .doesNotContain("poilt");
    } finally {
      clear();
    }
  }

  private static Asked ingest(TestHome home, Path onDisk) {
    return Asked.in(
        folder,
        Map.of("VESTIBULE_HOME", onDisk.toString(), "VESTIBULE_BY", "nightly job"),
        "ingest",
        home.inbox().toString(),
        "--at-once");
  }

  private static Path fillUpTo(long freeBytes) throws IOException {
    FileStore store = Files.getFileStore(disk);
    long bytes = store.getUsableSpace() - freeBytes;
    return Files.write(disk.resolve("filler"), new byte[Math.toIntExact(bytes)]);
  }

  private static void clear() throws IOException {
    try (var files = Files.walk(disk)) {
      for (Path file : files.sorted(java.util.Comparator.reverseOrder()).toList()) {
        if (!file.equals(disk)) {
          Files.delete(file);
        }
      }
    }
  }
}
