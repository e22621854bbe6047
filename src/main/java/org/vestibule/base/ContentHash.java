package org.vestibule.base;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * The SHA-256 of a file's bytes (FIPS 180-4), by which the ledger knows it.
 *
 * @param hex 64 lower-case hexadecimal digits
 */
public record ContentHash(String hex) implements Comparable<ContentHash> {

  private static final int BUFFER_BYTES = 1 << 16;

  public ContentHash {
    if (!hex.matches("[0-9a-f]{64}")) {
      throw new IllegalArgumentException(
          "a content hash has 64 lower-case hexadecimal digits but this has " + hex.length());
    }
  }

  /** The hash of these bytes. */
  public static ContentHash of(byte[] bytes) {
    return new ContentHash(HexFormat.of().formatHex(sha256().digest(bytes)));
  }

  /** The hash of a file's bytes, read as a stream. */
  public static ContentHash of(Path file) throws IOException {
    MessageDigest digest = sha256();
    byte[] buffer = new byte[BUFFER_BYTES];
    try (InputStream in = Files.newInputStream(file)) {
      for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
        digest.update(buffer, 0, n);
      }
    }
    return new ContentHash(HexFormat.of().formatHex(digest.digest()));
  }

  /** The first ten digits: enough for a person to tell photographs apart. */
  public String brief() {
    return hex.substring(0, 10);
  }

  @Override
  public int compareTo(ContentHash other) {
    return hex.compareTo(other.hex);
  }

  @Override
  public String toString() {
    return hex;
  }

  /** The digest that it is made by, begun anew. */
  public static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("this Java runtime lacks SHA-256", e);
    }
  }
}
