package org.vestibule.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.flow.Practice;
import org.vestibule.flow.TestHome;
import org.vestibule.samples.Scene;
import org.vestibule.store.ledger.Intent;
import org.vestibule.store.ledger.PhotoRow;
import org.vestibule.store.ledger.PhotoState;

/** Objects whose rows are lost are entered again as far as they say what they are. */
class EnterObjectsTest {

  @TempDir private Path folder;
  private TestHome home;

  @BeforeEach
  void layOut() throws IOException {
    home = TestHome.in(folder.resolve("home"));
    home.put("a.jpg", Scene.FRONTAL, 1);
    home.put("b.jpg", Scene.UPPER_OCCLUSAL, 2);
    home.put("c.jpg", Scene.FRONTAL, 3);
    home.manifest(
        """
        file,visit,view,mirror,incisors,crop,teeth,stage,treatment,note,accessories
        a.jpg,V1,frontal,none,,,"FDI 13-23 tooth, 36 implant",before,Veneers. Upper front,seen twice,ruler
        b.jpg,V1,lower occlusal,as shot,top,0.1 0.1 0.9 0.9,,after,,,
        """);
  }

  private Asked ask(String... words) {
    boolean acts = List.of("ingest", "repair", "move", "reject").contains(words[0]);
    return acts ? Asked.by("Ada", home, words) : Asked.of(home, words);
  }

  private void ingest() {
    assertThat(ask("ingest", "--at-once").code()).isEqualTo(1);
  }

  private void loseLedger() throws IOException {
    for (String file : List.of("ledger.sqlite", "ledger.sqlite-wal", "ledger.sqlite-shm")) {
      Files.deleteIfExists(home.folder().resolve(file));
    }
    remove(home.folder().resolve("index"));
  }

  private static void remove(Path below) throws IOException {
    try (Stream<Path> all = Files.walk(below)) {
      for (Path file : all.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
  }

  /** The ids of what is filed, the first filed first. */
  private List<String> ids() throws IOException {
    List<String> ids = new ArrayList<>();
    try (Practice practice = home.open()) {
      for (PhotoRow photo : practice.store().ledger().photos().in(PhotoState.KEPT)) {
        ids.add(practice.store().ids().of(photo.hash()));
      }
    }
    return ids;
  }

  private List<Intent> objects() throws IOException {
    List<Intent> objects = new ArrayList<>();
    try (Practice practice = home.open()) {
      for (PhotoRow photo : practice.store().ledger().photos().in(PhotoState.KEPT)) {
        objects.addAll(practice.store().ledger().intents().current(photo.hash()));
      }
    }
    return objects;
  }

  /** What is shown of each, without the advice, which only the lost ledger had. */
  private List<String> shown() throws IOException {
    List<String> shown = new ArrayList<>();
    for (String id : ids()) {
      shown.add(
          ask("show", id)
              .out()
              .lines()
              .skip(1)
              .filter(line -> !line.startsWith("Could be better"))
              .toList()
              .toString());
    }
    shown.sort(Comparator.naturalOrder());
    return shown;
  }

  @Test
  void aLedgerThatIsGoneIsBegunAgainFromTheObjects() throws IOException {
    ingest();
    List<String> before = shown();
    List<String> uids = objects().stream().map(Intent::sopUid).sorted().toList();
    loseLedger();
    assertThat(ask("repair").code()).as("nothing is begun unasked").isEqualTo(3);
    Asked nobody = Asked.of(home, "repair", "--enter-objects");
    assertThat(nobody.code()).isEqualTo(2);
    assertThat(nobody.err())
        .startsWith("vestibule: nobody's name was given, and decisions about patients'");
    Asked repaired = ask("repair", "--enter-objects");
    assertThat(repaired.out())
        .startsWith("2 photographs entered again from what the objects say:\n")
        .containsPattern(
            "Who decided them first, whether they\\s+were rejected since, which consents");
    assertThat(repaired.code()).as(repaired.out()).isZero();
    assertThat(objects().stream().map(Intent::sopUid).sorted().toList()).isEqualTo(uids);
    assertThat(shown()).isEqualTo(before);
    assertThat(ask("verify").out()).endsWith("Everything is as it was kept.\n");
    assertThat(ask("find", "frontal").out()).contains("frontal").contains("13-23");
    assertThat(ask("show", ids().get(0), "--history").out())
        .contains("Ada")
        .contains("filed by its object, read back")
        .contains("read back from object 2.25.");
  }

  @Test
  void theSourcesAreKnownAgainAndNotFiledTwice() throws IOException {
    ingest();
    loseLedger();
    ask("repair", "--enter-objects");
    List<Intent> objects = objects();
    Asked dry = ask("ingest", "--at-once", "--dry-run");
    assertThat(dry.out()).contains("a.jpg is not filed again: it is photograph ");
    Asked again = ask("ingest", "--at-once");
    assertThat(again.out())
        .containsPattern(
            "a\\.jpg is not filed again: it is photograph [0-9a-f]{10}, which was entered again"
                + " from its\\s+object\\.")
        .contains("b.jpg is not filed again");
    assertThat(objects()).isEqualTo(objects);
    assertThat(ask("waiting").out()).contains("c.jpg").doesNotContain("a.jpg");
    Asked third = ask("ingest", "--at-once");
    assertThat(third.out()).doesNotContain("not filed again");
    assertThat(ask("verify").code()).isZero();
  }

  @Test
  void whatWasReadBackIsCorrectedLikeAnythingElse() throws IOException {
    ingest();
    loseLedger();
    ask("repair", "--enter-objects");
    remove(home.inbox());
    for (String id : ids()) {
      Asked moved = ask("move", id, "--note", "looked at again", "--why", "typing error");
      assertThat(moved.code()).as(moved.err() + moved.out()).isZero();
      assertThat(ask("show", id).out()).contains("looked at again");
    }
    assertThat(ask("verify").code()).isZero();
  }

  @Test
  void whatAnOlderCopyOfTheLedgerLacksIsEnteredAgain() throws IOException {
    home.manifest("file,visit,view,mirror\na.jpg,V1,frontal,none\n");
    ingest();
    Path backup = folder.resolve("backup");
    assertThat(ask("backup", "--to", backup.toString()).code()).isZero();
    home.manifest(
        """
        file,visit,view,mirror,incisors,crop
        a.jpg,V1,frontal,none,,
        b.jpg,V1,lower occlusal,as shot,top,0.1 0.1 0.9 0.9
        """);
    ingest();
    List<Intent> all = objects();
    Asked restored = ask("restore", "--ledger-only", "--from", backup.toString());
    assertThat(restored.code()).as("the objects are orphans").isEqualTo(4);
    Asked dry = ask("repair", "--enter-objects", "--dry-run");
    assertThat(dry.out()).contains("1 photograph entered again from what the objects say:");
    assertThat(ids()).hasSize(1);
    Asked repaired = ask("repair", "--enter-objects");
    assertThat(repaired.code()).as(repaired.out()).isZero();
    assertThat(objects().stream().map(Intent::sopUid))
        .containsExactlyInAnyOrderElementsOf(all.stream().map(Intent::sopUid).toList());
    assertThat(ask("verify").code()).isZero();
    ingest();
    assertThat(ids()).as("b.jpg waited in the older ledger, and is known now").hasSize(2);
    assertThat(ask("repair", "--enter-objects").out()).isEqualTo("There was nothing to mend.\n");
  }

  @Test
  void aDamagedObjectIsLeftAndTheOthersAreEntered() throws IOException {
    ingest();
    Intent crop =
        objects().stream()
            .filter(one -> one.role().name().equals("CROP"))
            .findFirst()
            .orElseThrow();
    Path file;
    try (Practice practice = home.open()) {
      file = practice.store().objects().path(crop.sopUid()).orElseThrow();
    }
    byte[] bytes = Files.readAllBytes(file);
    loseLedger();
    Files.write(file, java.util.Arrays.copyOf(bytes, bytes.length / 2));
    Asked repaired = ask("repair", "--enter-objects");
    assertThat(repaired.code()).isEqualTo(4);
    assertThat(repaired.out().replaceAll("\\s+", " "))
        .startsWith("1 photograph entered again from what the objects say: ")
        .contains(
            "It was not entered again: it is a whole frame whose crop is not there or can't be read,"
                + " and may show what was cut away. What to do: ");
    Files.delete(file);
    assertThat(ask("repair", "--enter-objects").out())
        .contains("It was not entered again: it is a whole frame whose crop is not there")
        .doesNotContain("entered again from what");
    Files.write(file, bytes);
    Asked whole = ask("repair", "--enter-objects");
    assertThat(whole.out()).startsWith("1 photograph entered again");
    assertThat(whole.code()).isZero();
  }

  /** A letter of the view's name in the comment, which the code contradicts. */
  @Test
  void anObjectThatSaysTwoThingsIsLeft() throws IOException {
    ingest();
    Intent frame =
        objects().stream()
            .filter(one -> one.role().name().equals("FRAME"))
            .findFirst()
            .orElseThrow();
    Path file;
    try (Practice practice = home.open()) {
      file = practice.store().objects().path(frame.sopUid()).orElseThrow();
    }
    loseLedger();
    byte[] bytes = Files.readAllBytes(file);
    String text = new String(bytes, java.nio.charset.StandardCharsets.ISO_8859_1);
    int at = text.indexOf("Stage: before");
    at = at < 0 ? text.indexOf("Stage: after") : at;
    bytes[at + 7] = 'x';
    Files.write(file, bytes);
    assertThat(ask("repair", "--enter-objects").out())
        .contains("made again from what it says, it would not say the same: ");
  }

  @Test
  void whatWasRejectedWithANoteIsNotEnteredAgain() throws IOException {
    ingest();
    String id = ids().get(0);
    Asked rejected = ask("reject", id, "--why", "wrong patient", "--reason", "wrong-visit");
    assertThat(rejected.code()).as(rejected.err()).isZero();
    loseLedger();
    Asked repaired = ask("repair", "--enter-objects");
    assertThat(repaired.out())
        .startsWith("1 photograph entered again from what the objects say:\n")
        .containsPattern("Rejection note 2\\.25\\.\\d+ says\\s+that it no longer counts\\.");
    assertThat(ids()).hasSize(1);
  }

  @Test
  void objectsOfAnotherSecretAreLeft() throws IOException {
    ingest();
    loseLedger();
    Files.writeString(home.folder().resolve("practice.secret"), "ab".repeat(32) + "\n");
    assertThat(ask("repair", "--enter-objects").out())
        .contains("It was not entered again: its series was not made with this practice's secret.")
        .doesNotContain("entered again from what");
  }
}
