package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.flow.Practice;
import org.vestibule.flow.TestHome;
import org.vestibule.samples.Scene;
import org.vestibule.store.ledger.KeptObject;

/**
 * An older copy of the ledger is brought back: what was filed since lies among the objects, and the
 * ledger doesn't know it. Nothing of it is shown as valid before somebody took it in again.
 */
class OlderLedgerTest {

  private static final String ROWS = "file,visit,view,mirror\na.jpg,V1,frontal,none\n";

  @TempDir private Path folder;

  private TestHome home;
  private Path backup;
  private String before;
  private String since;

  @BeforeEach
  void layOut() throws IOException {
    home = TestHome.in(folder.resolve("home"));
    backup = folder.resolve("backup");
    before = home.put("a.jpg", Scene.FRONTAL, 1);
    home.manifest(ROWS);
    assertThat(home.ingest().filed()).hasSize(1);
    assertThat(Asked.of(home, "backup", "--to", backup.toString()).code()).isZero();
    since = home.put("b.jpg", Scene.UPPER_OCCLUSAL, 2);
    home.manifest(ROWS + "b.jpg,V1,frontal,none\n");
    assertThat(home.ingest().filed()).hasSize(1);
  }

  private void olderLedger() {
    Asked restored = Asked.of(home, "restore", "--ledger-only", "--from", backup.toString());
    assertThat(restored.code()).as(restored.err()).isEqualTo(4);
    assertThat(restored.out().replace("\n", " "))
        .contains("What happened after that moment is not in this ledger.")
        .contains("is there, but the ledger knows nothing of it");
    assertThat(Asked.of(home, "find", "frontal").out()).contains(before).doesNotContain(since);
  }

  private List<KeptObject> kept() throws IOException {
    try (Practice practice = TestHome.openAt(home.folder())) {
      return new ArrayList<>(practice.store().ledger().kept().all().toList());
    }
  }

  private List<String> files() throws IOException {
    try (Stream<Path> all = Files.walk(home.folder().resolve("objects"))) {
      return all.filter(Files::isRegularFile)
          .map(file -> file.getFileName().toString().replace(".dcm", ""))
          .sorted()
          .toList();
    }
  }

  /** The manifest still says what it said: the very object is found, compared, and adopted. */
  @Test
  void takingThePhotographInAgainAdoptsItsObject() throws IOException {
    List<KeptObject> all = kept();
    List<String> files = files();
    Asked find = Asked.of(home, "find", "frontal");
    olderLedger();
    assertThat(home.ingest().filed()).hasSize(1);
    assertThat(kept()).containsExactlyInAnyOrderElementsOf(all);
    assertThat(files()).isEqualTo(files);
    assertThat(Asked.of(home, "find", "frontal")).isEqualTo(find);
    assertThat(Asked.of(home, "verify").out()).endsWith("Everything is as it was kept.\n");
    assertThat(Asked.of(home, "repair").out()).isEqualTo("There was nothing to mend.\n");
  }

  /** A person who files it as it was filed gets the same object, too. */
  @Test
  void filingItByHandAdoptsItsObject() throws IOException {
    List<KeptObject> all = kept();
    olderLedger();
    home.manifest(ROWS);
    home.ingest();
    Asked filed =
        Asked.by(
            "Ada", home, "file", since, "--visit", "V1", "--view", "frontal", "--mirror", "none");
    assertThat(filed.code()).as(filed.err()).isZero();
    assertThat(kept()).hasSameSizeAs(all);
    assertThat(files()).doesNotHaveDuplicates();
    try (Practice practice = TestHome.openAt(home.folder())) {
      assertThat(practice.store().ledger().intents().current(TestHome.hash(practice, since)))
          .hasSize(1);
    }
    assertThat(
            Asked.of(home, "find", "frontal").out().lines().filter(line -> line.contains("Orla")))
        .hasSize(2);
  }

  /** Other photographs came first this time: the number in the series is another. */
  @Test
  void anotherOrderDoublesNothing() throws IOException {
    olderLedger();
    String other = home.put("c.jpg", Scene.FRONTAL, 3);
    home.manifest(ROWS + "c.jpg,V1,frontal,none\n");
    home.ingest();
    home.manifest(ROWS + "b.jpg,V1,frontal,none\nc.jpg,V1,frontal,none\n");
    Asked again = Asked.by("Ada", home, "ingest", "--at-once");
    assertThat(again.code()).as(again.out() + again.err()).isZero();
    Asked find = Asked.of(home, "find", "frontal");
    assertThat(find.out().lines().filter(line -> line.contains("Orla"))).hasSize(3);
    assertThat(find.out()).containsOnlyOnce(before).containsOnlyOnce(since).containsOnlyOnce(other);
    List<String> uids = kept().stream().map(KeptObject::sopUid).toList();
    assertThat(uids).hasSize(3).doesNotHaveDuplicates();
    assertThat(Asked.of(home, "verify").code()).isZero();
  }

  @Test
  void repairListsWhatTheObjectHoldsAndPutsNothingIntoTheRecord() throws IOException {
    List<String> known = kept().stream().map(KeptObject::sopUid).toList();
    olderLedger();
    String uid =
        files().stream()
            .filter(file -> known.contains(file))
            .filter(file -> !keptUids().contains(file))
            .findFirst()
            .orElseThrow();
    for (List<String> words : List.of(List.of("repair", "--dry-run"), List.of("repair"))) {
      Map<String, String> found = TestHome.everything(home.folder().resolve("objects"));
      Asked repaired = Asked.of(home, words.toArray(String[]::new));
      assertThat(repaired.code()).isEqualTo(4);
      assertThat(repaired.out())
          .contains("Objects that the ledger doesn't know: 1\n")
          .contains("Object                " + uid + "\n")
          .contains("Patient               Orla Tallgrass\n")
          .contains("Patient number        P1\n")
          .contains("Visit                 2026-03-12, V1\n")
          .contains("Taken                 2026-03-12 09:02:00 (UTC+0100)\n")
          .contains("View                  Frontal")
          .contains("What to do: take its photograph in again: decided as it was, it gets this")
          .doesNotContain("Photograph " + before + " is filed");
      assertThat(repaired.out().replace("\n", " "))
          .contains("or which consents were given and which copies left the house");
      assertThat(TestHome.everything(home.folder().resolve("objects"))).isEqualTo(found);
    }
    assertThat(Asked.of(home, "find", "frontal").out()).doesNotContain(since);
  }

  private List<String> keptUids() {
    try {
      return kept().stream().map(KeptObject::sopUid).toList();
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }

  /**
   * Wrong patient, corrected after the copy: the ledger shows the wrong one again, and it's said.
   */
  @Test
  void aCorrectionSinceIsToldBesideThePhotographItCorrects() throws IOException {
    Asked moved = Asked.by("Ada", home, "move", before, "--visit", "V2", "--why", "wrong patient");
    assertThat(moved.code()).as(moved.err()).isZero();
    olderLedger();
    Asked repaired = Asked.of(home, "repair");
    assertThat(repaired.code()).isEqualTo(4);
    assertThat(repaired.out())
        .contains("Objects that the ledger doesn't know: 3\n")
        .contains("Patient               Ned Brightwater\n");
    assertThat(repaired.out().replaceAll("\\s+", " "))
        .containsPattern(
            "[0-9.]+: it is a rejection note, by which these objects no longer count: 2\\.25\\.[0-9]+\\."
                + " What to do: the ledger doesn't know that correction: make it again, with move or"
                + " reject, unless that was done; this file is in no search\\.")
        .contains(
            "Photograph "
                + before
                + " is filed and has the same picture or the same second: this may be a correction"
                + " of it that the ledger does not know, or one that was taken back. What to do:"
                + " look at both; if what is filed is right, do nothing; if this one is right,"
                + " correct the filed one with move.");
    Asked again = Asked.by("Ada", home, "move", before, "--visit", "V2", "--why", "wrong patient");
    assertThat(again.code()).as(again.err()).isZero();
    assertThat(Asked.of(home, "repair").out())
        .contains("Objects that the ledger doesn't know: 1\n");
    assertThat(Asked.of(home, "find", "frontal").out()).contains("Ned Brightwater");
  }

  /** Filed and corrected since: which of two unknown objects counts, the files don't say. */
  @Test
  void twoObjectsOfOneShotAreBothDoubted() throws IOException {
    assertThat(Asked.by("Ada", home, "move", since, "--visit", "V2", "--why", "x").code()).isZero();
    olderLedger();
    assertThat(Asked.of(home, "repair").out().replaceAll("\\s+", " "))
        .contains("Objects that the ledger doesn't know: 3 ")
        .contains(
            "which the ledger doesn't know either, has the same picture or the same second: which"
                + " of them counts can't be told from the files.");
  }

  @Test
  void whatIsNoSoundObjectOfOursIsNamed() throws IOException {
    List<String> known = keptUids();
    olderLedger();
    String uid = files().stream().filter(f -> !keptUids().contains(f)).findFirst().orElseThrow();
    assertThat(known).contains(uid);
    Path file;
    try (Practice practice = TestHome.openAt(home.folder())) {
      file = practice.store().objects().path(uid).orElseThrow();
    }
    byte[] bytes = Files.readAllBytes(file);
    Files.write(file, java.util.Arrays.copyOf(bytes, bytes.length / 2));
    Asked repaired = Asked.of(home, "repair");
    assertThat(repaired.code()).isEqualTo(4);
    assertThat(repaired.out())
        .contains(uid + ": ")
        .contains("What to do: leave it as it is, or look for a sound copy in a backup;")
        .doesNotContain("Patient ");
  }
}
