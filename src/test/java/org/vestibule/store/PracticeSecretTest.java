package org.vestibule.store;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;

import com.google.common.jimfs.Configuration;
import com.google.common.jimfs.Jimfs;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.SecureRandom;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.vestibule.base.Outcome;
import org.vestibule.store.faults.FaultyFileSystem;

/** The secret is made once, for its owner alone, and never quietly replaced. */
class PracticeSecretTest {

  private static final String DIGITS =
      "000102030405060708090a0b0c0d0e0f101112131415161718191a1b1c1d1e1f";

  private final FaultyFileSystem system =
      new FaultyFileSystem(
          Jimfs.newFileSystem(Configuration.unix().toBuilder().setAttributeViews("posix").build()));
  private Path file;

  /** The bytes 0, 1, 2 and so on. */
  private static class Counting extends SecureRandom {
    private static final long serialVersionUID = 1L;

    @Override
    public void nextBytes(byte[] bytes) {
      for (int at = 0; at < bytes.length; at++) {
        bytes[at] = (byte) at;
      }
    }
  }

  @BeforeEach
  void folder() throws IOException {
    file = system.getPath("/practice/practice.secret");
    Files.createDirectories(file.getParent());
  }

  private void write(String text, String permissions) throws IOException {
    Files.write(file, text.getBytes(ISO_8859_1));
    Files.setPosixFilePermissions(file, PosixFilePermissions.fromString(permissions));
  }

  private Outcome<byte[]> read(boolean storeExists) throws IOException {
    return PracticeSecret.readOrCreate(file, storeExists, new Counting());
  }

  @Test
  void aNewStoreGetsThirtyTwoRandomBytesForItsOwnerAlone() throws IOException {
    assertThat(read(false).orThrow()).isEqualTo(HexFormat.of().parseHex(DIGITS));
    assertThat(Files.readString(file, US_ASCII)).isEqualTo(DIGITS + "\n");
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
        .isEqualTo("rw-------");
    assertThat(inFolder(file.getParent())).containsExactly(file);
  }

  /** A store whose first objects outlive a power cut must not have lost its secret to it. */
  @Test
  void theSecretIsOnTheDiskBeforeItIsUsed() throws IOException {
    read(false).orThrow();
    List<String> deeds = system.deeds();
    int named = deeds.indexOf("link practice.secret");
    assertThat(deeds.subList(0, named)).anyMatch(deed -> deed.startsWith("force practice.secret"));
    assertThat(deeds.subList(named, deeds.size())).contains("force practice");
  }

  @Test
  void trueRandomnessGivesTwoPracticesTwoSecrets(@TempDir Path disk) throws IOException {
    byte[] one =
        PracticeSecret.readOrCreate(disk.resolve("a"), false, new SecureRandom()).orThrow();
    byte[] two =
        PracticeSecret.readOrCreate(disk.resolve("b"), false, new SecureRandom()).orThrow();
    assertThat(one).hasSize(32).isNotEqualTo(two);
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(disk.resolve("a"))))
        .isEqualTo("rw-------");
  }

  @Test
  void theSecretThatIsThereIsRead() throws IOException {
    write("ff".repeat(32), "r--------");
    byte[] expected = HexFormat.of().parseHex("ff".repeat(32));
    assertThat(read(false).orThrow()).isEqualTo(expected);
    assertThat(read(true).orThrow()).isEqualTo(expected);
  }

  @Test
  void anExistingStoreNeverStartsWithANewOne() throws IOException {
    assertThat(read(true))
        .isEqualTo(
            Outcome.refused(
                Outcome.Kind.DAMAGE,
                "the store has objects or a ledger, but its secret file practice.secret is gone",
                "restore the file from its backup; a new secret would give the same photographs"
                    + " other identities"));
    assertThat(file).doesNotExist();
  }

  @ParameterizedTest
  @ValueSource(strings = {"rw-r-----", "rw----r--", "rw--w----", "rwxrwxrwx", "r-----r--"})
  void aSecretThatOthersCanReadOrWriteIsRefused(String permissions) throws IOException {
    write(DIGITS, permissions);
    assertThat(read(true))
        .isEqualTo(
            Outcome.refused(
                "the secret file practice.secret can be read by others than its owner",
                "take that right away (on Linux and macOS: chmod 600), then run again"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "0001",
        "000102030405060708090a0b0c0d0e0f101112131415161718191a1b1c1d1e1",
        "000102030405060708090a0b0c0d0e0f101112131415161718191a1b1c1d1e1f0",
        "000102030405060708090A0B0C0D0E0F101112131415161718191A1B1C1D1E1F",
        "000102030405060708090a0b0c0d0e0f 01112131415161718191a1b1c1d1e1f",
        "\u00ff\u00fe\u0080 not text at all"
      })
  void aSecretOfAnotherLengthOrContentIsRefusedAndKept(String text) throws IOException {
    write(text, "rw-------");
    assertThat(read(true))
        .isEqualTo(
            Outcome.refused(
                Outcome.Kind.DAMAGE,
                "the secret file practice.secret should hold 64 hexadecimal digits, but holds "
                    + text.length()
                    + " characters or others",
                "restore the file from its backup"));
    assertThat(Files.readAllBytes(file)).isEqualTo(text.getBytes(ISO_8859_1));
  }

  @Test
  void whatAnInterruptedBeginningLeftIsNoSecret() throws IOException {
    Files.write(file.resolveSibling("practice.secret.part"), "0001".getBytes(US_ASCII));
    assertThat(read(false).orThrow()).hasSize(32);
    assertThat(Files.readString(file, US_ASCII)).isEqualTo(DIGITS + "\n");
  }

  /** Another process makes the secret while this one is making its own. */
  @Test
  void whoeverIsFirstGivesTheSecretToBoth() throws IOException {
    SecureRandom slow =
        new Counting() {
          private static final long serialVersionUID = 1L;

          @Override
          public void nextBytes(byte[] bytes) {
            try {
              write("ab".repeat(32) + "\n", "rw-------");
            } catch (IOException e) {
              throw new UncheckedIOException(e);
            }
          }
        };
    assertThat(PracticeSecret.readOrCreate(file, false, slow).orThrow())
        .isEqualTo(HexFormat.of().parseHex("ab".repeat(32)));
    assertThat(inFolder(file.getParent())).containsExactly(file);
  }

  private static List<Path> inFolder(Path folder) throws IOException {
    try (Stream<Path> all = Files.list(folder)) {
      return all.toList();
    }
  }
}
