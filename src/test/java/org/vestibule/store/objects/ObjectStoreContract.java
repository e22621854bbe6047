package org.vestibule.store.objects;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.vestibule.base.Outcome;
import org.vestibule.store.steps.WriteSteps;

/** What every object store keeps to, whatever it lies on. */
abstract class ObjectStoreContract {

  static final String UID = "2.25.329800735698586629295641978511506172918";

  /** The same, with the last digit changed. */
  static final String OTHER = "2.25.329800735698586629295641978511506172919";

  static final byte[] BYTES = "an object of an invented practice".getBytes(UTF_8);

  private Path root;
  private ObjectStore store;

  /** A folder that does not exist yet. */
  abstract Path newRoot() throws IOException;

  @BeforeEach
  void begin() throws IOException {
    root = newRoot();
    store = new FolderObjectStore(root, WriteSteps.PASS);
  }

  private Path file(String uid) {
    return store.path(uid).orElseThrow();
  }

  @Test
  void beforeTheFirstObjectThereIsNothingAndNoFolder() throws IOException {
    assertThat(store.list()).isEmpty();
    assertThat(store.strays()).isEmpty();
    assertThat(store.clearInterrupted()).isZero();
    assertThat(store.get(UID)).isEmpty();
    assertThat(store.size(UID)).isEmpty();
    assertThat(Files.exists(root)).isFalse();
  }

  @Test
  void whatIsPutIsGotBack() throws IOException {
    assertThat(store.putIfAbsent(UID, BYTES)).isEqualTo(Outcome.done(Put.WRITTEN));
    assertThat(store.get(UID).orElseThrow()).isEqualTo(BYTES);
    assertThat(store.size(UID)).isEqualTo(OptionalLong.of(BYTES.length));
    assertThat(store.get(OTHER)).isEmpty();
    assertThat(Files.readAllBytes(file(UID))).isEqualTo(BYTES);
    assertThat(store.strays()).isEmpty();
  }

  @Test
  void anEmptyAndALargeObjectAreKeptWhole() throws IOException {
    byte[] large = new byte[300_001];
    for (int at = 0; at < large.length; at++) {
      large[at] = (byte) (at * 31);
    }
    assertThat(store.putIfAbsent(UID, new byte[0])).isEqualTo(Outcome.done(Put.WRITTEN));
    assertThat(store.putIfAbsent(OTHER, large)).isEqualTo(Outcome.done(Put.WRITTEN));
    assertThat(store.size(UID)).isEqualTo(OptionalLong.of(0));
    assertThat(store.get(OTHER).orElseThrow()).isEqualTo(large);
  }

  @Test
  void theSameAgainIsAdoptedAndNotTouched() throws IOException {
    store.putIfAbsent(UID, BYTES).orThrow();
    FileTime longAgo = FileTime.fromMillis(1_000_000_000_000L);
    Files.setLastModifiedTime(file(UID), longAgo);
    assertThat(store.putIfAbsent(UID, BYTES.clone())).isEqualTo(Outcome.done(Put.ADOPTED));
    assertThat(Files.getLastModifiedTime(file(UID))).isEqualTo(longAgo);
    assertThat(store.list()).containsExactly(UID);
  }

  @Test
  void anotherContentUnderTheSameNameIsNotWrittenAndTheOldOneStays() throws IOException {
    store.putIfAbsent(UID, BYTES).orThrow();
    byte[] other = "something else".getBytes(UTF_8);
    assertThat(store.putIfAbsent(UID, other)).isEqualTo(Outcome.done(Put.TAKEN));
    assertThat(store.get(UID).orElseThrow()).isEqualTo(BYTES);
    assertThat(store.strays()).isEmpty();
  }

  @Test
  void oneBitIsAnotherContent() throws IOException {
    store.putIfAbsent(UID, BYTES).orThrow();
    byte[] flipped = BYTES.clone();
    flipped[BYTES.length - 1] ^= 1;
    assertThat(store.putIfAbsent(UID, flipped)).isEqualTo(Outcome.done(Put.TAKEN));
    assertThat(store.get(UID).orElseThrow()).isEqualTo(BYTES);
  }

  @Test
  void objectsAreListedInTheOrderOfTheirText() throws IOException {
    for (String uid : new String[] {"2.25.3", "2.25.20", "1.2.840.1", "2.25.100"}) {
      store.putIfAbsent(uid, BYTES).orThrow();
    }
    assertThat(store.list()).containsExactly("1.2.840.1", "2.25.100", "2.25.20", "2.25.3");
  }

  /** The first byte of each SHA-256 was computed with sha256sum from GNU coreutils. */
  @Test
  void anObjectLiesWhereTheFormatSays() throws IOException {
    assertThat(file("2.25.1")).isEqualTo(root.resolve("49").resolve("2.25.1.dcm"));
    assertThat(file(UID)).isEqualTo(root.resolve("09").resolve(UID + ".dcm"));
  }

  @Test
  void whatInterruptedWritesLeftIsNoObjectAndIsRemoved() throws IOException {
    store.putIfAbsent(UID, BYTES).orThrow();
    Path half = file(UID).resolveSibling(UID + ".dcm-8412.part");
    Files.write(half, new byte[] {1, 2, 3});
    Path otherHalf = file(OTHER).resolveSibling(OTHER + ".dcm-77.part");
    Files.createDirectories(otherHalf.getParent());
    Files.write(otherHalf, BYTES);
    assertThat(store.list()).containsExactly(UID);
    assertThat(store.get(OTHER)).isEmpty();
    assertThat(store.strays())
        .containsExactlyInAnyOrder(
            folderOf(half) + "/" + UID + ".dcm-8412.part",
            folderOf(otherHalf) + "/" + OTHER + ".dcm-77.part");
    assertThat(store.putIfAbsent(OTHER, BYTES)).isEqualTo(Outcome.done(Put.WRITTEN));
    assertThat(store.clearInterrupted()).isEqualTo(2);
    assertThat(store.strays()).isEmpty();
    assertThat(store.list()).containsExactly(UID, OTHER);
  }

  private static String folderOf(Path file) {
    return file.getParent().getFileName().toString();
  }

  /** Nothing is ever lost: a person's file is not an interrupted write, whatever it is called. */
  @Test
  void filesOfOthersAreNamedButNeverRemoved() throws IOException {
    store.putIfAbsent(UID, BYTES).orThrow();
    String[] foreign = {
      "holiday.part", "notes.txt", UID + ".dcm", UID + ".dcm-8412.part", "1.02.dcm", "x.dcm"
    };
    for (String name : foreign) {
      Files.write(root.resolve(name), BYTES);
    }
    assertThat(store.clearInterrupted()).isZero();
    assertThat(store.strays()).containsExactlyInAnyOrder(foreign);
    assertThat(store.list()).containsExactly(UID);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "1",
        "1.",
        ".1",
        "1..2",
        "1.02",
        "1.2.x",
        "../1.2",
        "1.2/3",
        "1.2\\3",
        "1.2 ",
        "2.25.00",
        "1.2\n",
        "1.2:3",
        "1.2.3456789012345678901234567890123456789012345678901234567890123"
      })
  void aNameThatIsNoUidNeverReachesTheDisk(String name) {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> store.putIfAbsent(name, BYTES))
        .withMessage(
            "a UID has at most 64 characters, numbers and dots only, but this has "
                + name.length()
                + " characters");
    assertThatIllegalArgumentException().isThrownBy(() -> store.get(name));
    assertThat(Files.exists(root)).isFalse();
  }

  /** 64 characters are the most that PS3.5 9.1 allows. */
  @Test
  void theLongestUidIsTaken() throws IOException {
    String longest = "1.2." + "9".repeat(60);
    assertThat(store.putIfAbsent(longest, BYTES)).isEqualTo(Outcome.done(Put.WRITTEN));
    assertThat(store.list()).containsExactly(longest);
    assertThat(store.get(longest).map(bytes -> bytes.length)).isEqualTo(Optional.of(33));
  }
}
