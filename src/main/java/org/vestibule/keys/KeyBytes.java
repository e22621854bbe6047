package org.vestibule.keys;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;

/** The bytes of a file with keys, certificates or a password, and its name without its folder. */
@SuppressWarnings("ArrayRecordComponent") // Read once, never compared.
record KeyBytes(String name, byte[] bytes) {

  static final int MOST_BYTES = 1 << 20;
  private static final int DER_SEQUENCE = 0x30;
  private static final String PEM_MARK = "-----BEGIN ";

  static KeyBytes read(Path file) throws KeyRefusal {
    String name = String.valueOf(file.getFileName());
    try (InputStream in = Files.newInputStream(file)) {
      byte[] bytes = in.readNBytes(MOST_BYTES + 1);
      if (bytes.length > MOST_BYTES) {
        throw new KeyRefusal(
            name + " has more than " + MOST_BYTES + " bytes",
            "give a file with keys or certificates only");
      }
      return new KeyBytes(name, bytes);
    } catch (NoSuchFileException missing) {
      throw new KeyRefusal("there is no file " + name, "check its name in the settings");
    } catch (AccessDeniedException denied) {
      throw new KeyRefusal(
          name + " may not be read by this user", "give this user the right to read it");
    } catch (IOException broken) {
      throw new KeyRefusal(name + " can't be read", "check that it is a file and the disk is well");
    }
  }

  /** The first line, which must not be empty. */
  static char[] password(Path file) throws KeyRefusal {
    KeyBytes read = read(file);
    String first = read.text().split("\\R", 2)[0];
    if (first.isEmpty()) {
      throw new KeyRefusal(
          "the first line of " + read.name + " is empty", "write the password into its first line");
    }
    return first.toCharArray();
  }

  boolean isPem() {
    return text().contains(PEM_MARK);
  }

  /** PKCS#12 is one DER sequence (RFC 7292 section 4). */
  boolean looksLikePkcs12() {
    return bytes.length > 0 && (bytes[0] & 0xFF) == DER_SEQUENCE;
  }

  String text() {
    return new String(bytes, StandardCharsets.UTF_8);
  }

  KeyRefusal unknownForm() {
    return new KeyRefusal(
        name + " is neither PEM text nor PKCS#12", "have it written again in one of these forms");
  }
}
