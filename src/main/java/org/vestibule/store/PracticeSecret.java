package org.vestibule.store;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.SecureRandom;
import java.util.HexFormat;
import org.vestibule.base.Outcome;
import org.vestibule.base.Synced;

/**
 * The practice's secret, from which all its UIDs are made: 32 random bytes as hexadecimal digits in
 * a file of their own that the owner alone can read.
 */
final class PracticeSecret {

  private static final int BYTES = 32;

  private PracticeSecret() {}

  /**
   * Reads the secret, or makes it where nothing was ever stored. With a new secret the same
   * photograph would become another object, so an existing store never gets one.
   */
  static Outcome<byte[]> readOrCreate(Path file, boolean storeExists, SecureRandom random)
      throws IOException {
    if (Files.exists(file)) {
      return read(file);
    }
    return storeExists ? lost(file) : create(file, random);
  }

  private static Outcome<byte[]> lost(Path file) {
    return Outcome.refused(
        Outcome.Kind.DAMAGE,
        "the store has objects or a ledger, but its secret file " + file.getFileName() + " is gone",
        "restore the file from its backup; a new secret would give the same photographs other"
            + " identities");
  }

  private static Outcome<byte[]> read(Path file) throws IOException {
    if (OwnerOnly.isOpenToOthers(file)) {
      return Outcome.refused(
          "the secret file " + file.getFileName() + " can be read by others than its owner",
          "take that right away (on Linux and macOS: chmod 600), then run again");
    }
    String text = Files.readString(file, StandardCharsets.ISO_8859_1).trim();
    if (!text.matches("[0-9a-f]{" + 2 * BYTES + "}")) {
      return Outcome.refused(
          Outcome.Kind.DAMAGE,
          "the secret file "
              + file.getFileName()
              + " should hold "
              + 2 * BYTES
              + " hexadecimal digits, but holds "
              + text.length()
              + " characters or others",
          "restore the file from its backup");
    }
    return Outcome.done(HexFormat.of().parseHex(text));
  }

  private static Outcome<byte[]> create(Path file, SecureRandom random) throws IOException {
    byte[] secret = new byte[BYTES];
    random.nextBytes(secret);
    String line = HexFormat.of().formatHex(secret) + "\n";
    Path partial =
        file.resolveSibling(file.getFileName() + "-" + ProcessHandle.current().pid() + ".part");
    Files.deleteIfExists(partial);
    try {
      OwnerOnly.createFile(partial);
      write(partial, line);
      name(partial, file);
      Path folder = file.toAbsolutePath().getParent();
      if (folder != null) {
        // Objects must not outlive a power cut that their secret does not.
        Synced.folder(folder);
      }
    } finally {
      Files.deleteIfExists(partial);
    }
    return read(file);
  }

  private static void write(Path partial, String line) throws IOException {
    try (FileChannel channel = FileChannel.open(partial, StandardOpenOption.WRITE)) {
      ByteBuffer bytes = ByteBuffer.wrap(line.getBytes(StandardCharsets.US_ASCII));
      while (bytes.hasRemaining()) {
        channel.write(bytes);
      }
      channel.force(true);
    }
  }

  /** Another process may have been faster: then its secret is the one. */
  private static void name(Path partial, Path file) throws IOException {
    try {
      Files.createLink(file, partial);
    } catch (FileAlreadyExistsException faster) {
      return;
    } catch (UnsupportedOperationException | FileSystemException noLinks) {
      if (!Files.exists(file)) {
        Files.move(partial, file);
      }
    }
  }
}
