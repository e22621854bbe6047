package org.vestibule.store.index;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.vestibule.store.steps.WriteSteps;

/** Every file of the index missing, emptied, cut short or spoilt: it is made again. */
class DamagedIndexTest {

  /** Does something bad to a file. */
  private interface Damage {
    void to(Path file) throws IOException;
  }

  @TempDir private Path home;
  private FakeChanges changes;
  private int copies;

  @BeforeEach
  void fill() throws IOException {
    changes = new FakeChanges("willow-lane").put("a", 16, 1).put("b", 26, 2).put("c", 36, 3);
    try (LucenePhotoIndex index = new LucenePhotoIndex(home.resolve("sound"), WriteSteps.PASS)) {
      index.follow(changes);
      index.follow(changes.remove("b"));
    }
  }

  private List<String> files() throws IOException {
    try (Stream<Path> all = Files.list(home.resolve("sound"))) {
      return all.map(file -> file.getFileName().toString())
          .filter(name -> !name.equals("write.lock"))
          .sorted()
          .toList();
    }
  }

  private Path copyOfTheIndex() throws IOException {
    Path copy = Files.createDirectory(home.resolve("copy" + copies++));
    for (String name : files()) {
      Files.copy(home.resolve("sound").resolve(name), copy.resolve(name));
    }
    return copy;
  }

  private void assertMended(String name, Damage damage) throws IOException {
    Path copy = copyOfTheIndex();
    damage.to(copy.resolve(name));
    try (LucenePhotoIndex index = new LucenePhotoIndex(copy, WriteSteps.PASS)) {
      index.follow(changes);
      assertThat(notes(index)).as(name).containsExactly("c", "a");
      assertThat(index.values(IndexField.TOOTH)).as(name).containsExactly("16", "36");
      assertThat(index.follow(changes).kind()).as(name).isEqualTo(CaughtUp.Kind.CURRENT);
      assertThat(index.sequence()).isEqualTo(4);
    }
  }

  private static List<String> notes(PhotoIndex index) throws IOException {
    return index.search(IndexQuery.all(100)).hits().stream()
        .map(hit -> hit.record().note())
        .toList();
  }

  @Test
  void aMissingFile() throws IOException {
    assertThat(files()).hasSizeGreaterThan(2);
    for (String name : files()) {
      assertMended(name, Files::delete);
    }
  }

  @Test
  void anEmptyFile() throws IOException {
    for (String name : files()) {
      assertMended(name, file -> Files.write(file, new byte[0]));
    }
  }

  @Test
  void aFileCutShort() throws IOException {
    for (String name : files()) {
      assertMended(
          name,
          file -> {
            byte[] all = Files.readAllBytes(file);
            Files.write(file, Arrays.copyOf(all, all.length / 2));
          });
    }
  }

  @Test
  void aFileOfZeros() throws IOException {
    for (String name : files()) {
      assertMended(name, file -> Files.write(file, new byte[(int) Files.size(file)]));
    }
  }

  /**
   * A changed bit may lie where reading doesn't come past; then the check of all bytes finds it.
   */
  @Test
  void anyFlippedBitIsFoundByTheCheckOfAllBytes() throws IOException {
    long seed = 20260314;
    Random random = new Random(seed);
    for (String name : files()) {
      for (int n = 0; n < 8; n++) {
        Path copy = copyOfTheIndex();
        Path file = copy.resolve(name);
        byte[] bytes = Files.readAllBytes(file);
        int at = random.nextInt(bytes.length);
        bytes[at] ^= (byte) (1 << random.nextInt(8));
        Files.write(file, bytes);
        try (LucenePhotoIndex index = new LucenePhotoIndex(copy, WriteSteps.PASS)) {
          assertThat(index.isDamaged()).as("seed %d, %s byte %d", seed, name, at).isTrue();
        }
      }
    }
  }

  @Test
  void aSoundIndexAndNoneAtAllAreNotDamaged() throws IOException {
    try (LucenePhotoIndex index = new LucenePhotoIndex(home.resolve("sound"), WriteSteps.PASS);
        LucenePhotoIndex none = new LucenePhotoIndex(home.resolve("none"), WriteSteps.PASS)) {
      assertThat(index.isDamaged()).isFalse();
      assertThat(none.isDamaged()).isFalse();
    }
  }

  @Test
  void whatHappensWhileItIsOpenIsMendedToo() throws IOException {
    Path copy = copyOfTheIndex();
    try (LucenePhotoIndex index = new LucenePhotoIndex(copy, WriteSteps.PASS)) {
      assertThat(notes(index)).containsExactly("c", "a");
      for (String name : files()) {
        Files.delete(copy.resolve(name));
      }
      index.follow(changes.put("d", 46, 4));
      assertThat(notes(index)).containsExactly("d", "c", "a");
    }
  }
}
