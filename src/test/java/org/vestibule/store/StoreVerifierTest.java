package org.vestibule.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.base.ContentHash;
import org.vestibule.encode.Role;
import org.vestibule.store.ledger.Intent;
import org.vestibule.store.ledger.SeenFile;

/** Each kind of harm to objects and filings is found and said in words. */
class StoreVerifierTest {

  @TempDir private Path home;
  private Store store;
  private Intent sound;
  private Intent harmed;

  @BeforeEach
  void fill() throws IOException {
    store = StoreFixture.open(home).orThrow();
    sound = StoreFixture.file(store, "sound.jpg", Role.FRAME, Role.CROP);
    harmed = StoreFixture.file(store, "harmed.jpg");
  }

  @AfterEach
  void close() throws IOException {
    store.close();
  }

  private Path file(String uid) {
    return store.objects().path(uid).orElseThrow();
  }

  private List<Finding> verify() throws IOException {
    return store.verifier().verify();
  }

  @Test
  void aSoundStoreHasNothingToSay() throws IOException {
    assertThat(verify()).isEmpty();
    StoreFixture.file(store, "harmed.jpg");
    assertThat(verify()).as("with a replaced object").isEmpty();
    store.ledger().corrections().reject(harmed.hash(), "A. Finch", "not a tooth", "unsafe");
    store.followIndex();
    assertThat(verify()).as("with a rejected one").isEmpty();
  }

  @Test
  void oneFlippedBitAnywhereIsDamage() throws IOException {
    byte[] whole = StoreFixture.bytes(harmed);
    for (int at = 0; at < whole.length; at += 9) {
      byte[] flipped = whole.clone();
      flipped[at] ^= 1;
      Files.write(file(harmed.sopUid()), flipped);
      assertThat(verify()).containsExactly(damage(whole, flipped));
    }
  }

  private Finding damage(byte[] kept, byte[] now) {
    return new Finding(
        Finding.Kind.DAMAGE,
        "object "
            + harmed.sopUid()
            + " was kept with "
            + kept.length
            + " bytes and hash "
            + ContentHash.of(kept).brief()
            + ", and now has "
            + now.length
            + " bytes and hash "
            + ContentHash.of(now).brief(),
        "check the disk, and restore the object from the backup");
  }

  @Test
  void aFileCutShortOrReplacedIsDamage() throws IOException {
    byte[] whole = StoreFixture.bytes(harmed);
    byte[] half = Arrays.copyOf(whole, whole.length / 2);
    Files.write(file(harmed.sopUid()), half);
    assertThat(verify()).containsExactly(damage(whole, half));
    byte[] other = StoreFixture.bytes(sound);
    Files.write(file(harmed.sopUid()), other);
    assertThat(verify()).containsExactly(damage(whole, other));
    Files.write(file(harmed.sopUid()), new byte[0]);
    assertThat(verify()).containsExactly(damage(whole, new byte[0]));
  }

  @Test
  void aMissingObjectIsNamed() throws IOException {
    Files.delete(file(harmed.sopUid()));
    assertThat(verify())
        .containsExactly(
            new Finding(
                Finding.Kind.MISSING,
                "object " + harmed.sopUid() + " is kept but not there",
                "restore it from the backup of the objects"));
    assertThat(verify().get(0).isSerious()).isTrue();
  }

  /** A bad sector must not end the look at everything else. */
  @Test
  void anObjectThatCannotBeReadIsDamageAndTheRestIsStillLookedAt() throws IOException {
    Files.delete(file(harmed.sopUid()));
    Files.createDirectory(file(harmed.sopUid()));
    Files.delete(file(sound.sopUid()));
    assertThat(verify())
        .extracting(Finding::kind, Finding::what)
        .containsExactlyInAnyOrder(
            tuple(
                Finding.Kind.DAMAGE, "object " + harmed.sopUid() + " can't be read from the disk"),
            tuple(Finding.Kind.MISSING, "object " + sound.sopUid() + " is kept but not there"));
  }

  @Test
  void anObjectThatTheLedgerDoesNotKnowIsAnOrphan() throws IOException {
    store.objects().putIfAbsent("2.25.7", new byte[] {1}).orThrow();
    assertThat(verify())
        .containsExactly(
            new Finding(
                Finding.Kind.ORPHAN,
                "object 2.25.7 is there, but the ledger knows nothing of it",
                "the ledger may be older than the objects: bring back its newest snapshot, or"
                    + " let repair list what the object holds"));
  }

  @Test
  void foreignFilesAndLeftoversAreStrays() throws IOException {
    Path objects = home.resolve("objects");
    String folder = objects.relativize(file(harmed.sopUid()).getParent()).toString();
    String left = harmed.sopUid() + ".dcm-42.part";
    Files.write(objects.resolve(folder).resolve(left), new byte[3]);
    Files.write(objects.resolve("notes.txt"), new byte[3]);
    Files.write(objects.resolve("holiday.part"), new byte[3]);
    assertThat(verify())
        .containsExactlyInAnyOrder(
            stray(folder + "/" + left, "an interrupted write left it; the next ingest removes it"),
            stray("notes.txt", "move it elsewhere; nothing else belongs among the objects"),
            stray("holiday.part", "move it elsewhere; nothing else belongs among the objects"));
    assertThat(verify()).noneMatch(Finding::isSerious);
  }

  private static Finding stray(String name, String advice) {
    return new Finding(Finding.Kind.STRAY, "objects/" + name + " is not an object", advice);
  }

  @Test
  void anIntentWithoutItsObjectIsAGap() throws IOException {
    Intent begun = StoreFixture.begin(store, "begun.jpg").get(0);
    Finding gap =
        new Finding(
            Finding.Kind.GAP,
            "photograph "
                + begun.hash().brief()
                + " is being filed, and its object "
                + begun.sopUid()
                + " is not kept",
            "run ingest: it completes what was interrupted");
    assertThat(verify()).containsExactly(gap);
    store.objects().putIfAbsent(begun.sopUid(), StoreFixture.bytes(begun)).orThrow();
    assertThat(verify()).as("written but not told").containsExactly(gap);
  }

  @Test
  void anObjectOfAFilingThatWasGivenUpMayStay() throws IOException {
    Intent begun = StoreFixture.begin(store, "begun.jpg").get(0);
    store.objects().putIfAbsent(begun.sopUid(), StoreFixture.bytes(begun)).orThrow();
    store.ledger().intents().abandon(begun.hash(), "A. Finch", "can't be turned");
    assertThat(verify())
        .contains(
            new Finding(
                Finding.Kind.GIVEN_UP,
                "object "
                    + begun.sopUid()
                    + " belongs to a filing that was given up: can't be turned",
                "nothing: it is in no record and no search, and may stay"));
  }

  @Test
  void aPhotographThatArrivedAndGotNoFurtherIsAGap() throws IOException {
    ContentHash hash = StoreFixture.photo("seen.jpg");
    store.ledger().arrivals().seen(new SeenFile(hash, "seen.jpg", 9, StoreFixture.NOW));
    assertThat(verify())
        .containsExactly(
            new Finding(
                Finding.Kind.GAP,
                "photograph " + hash.brief() + " arrived, and is neither filed nor waiting",
                "run ingest: it completes what was interrupted"));
  }

  @Test
  void whatALookIntoAnObjectFindsIsSaid() throws IOException {
    assertThat(
            store
                .verifier()
                .verify(
                    uid -> true,
                    (intent, kept, bytes) ->
                        intent.equals(harmed) ? Optional.of("no picture in it") : Optional.empty()))
        .containsExactly(
            new Finding(
                Finding.Kind.DAMAGE,
                "object " + harmed.sopUid() + ": no picture in it",
                "please report this: the file is as it was written"));
  }

  /** What is not this time's share is not read, and everything else is looked at all the same. */
  @Test
  void anObjectThatIsNotInTheShareIsNotRead() throws IOException {
    StoreVerifier.Inspection finds = (intent, kept, bytes) -> Optional.of("looked into");
    assertThat(store.verifier().verify(uid -> true, finds)).isNotEmpty();
    assertThat(store.verifier().verify(uid -> false, finds)).isEmpty();
  }
}
