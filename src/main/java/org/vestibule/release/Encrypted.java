package org.vestibule.release;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import net.lingala.zip4j.io.inputstream.ZipInputStream;
import net.lingala.zip4j.io.outputstream.ZipOutputStream;
import net.lingala.zip4j.model.LocalFileHeader;
import net.lingala.zip4j.model.ZipParameters;
import net.lingala.zip4j.model.enums.AesKeyStrength;
import net.lingala.zip4j.model.enums.AesVersion;
import net.lingala.zip4j.model.enums.EncryptionMethod;
import org.vestibule.base.ContentHash;

/**
 * A release as one ZIP file whose files are encrypted with AES-256 (WinZip AE-2). Their names stay
 * readable; they are numbers. Each writing has a random salt, so that no two have the same bytes.
 */
final class Encrypted {

  /** Before 1980, where the time in a ZIP file begins: it becomes the first moment there is. */
  private static final long NO_TIME = 1;

  private Encrypted() {}

  static void write(Path folder, List<String> names, Path zip, Passphrase passphrase)
      throws IOException {
    try (OutputStream file = Files.newOutputStream(zip);
        ZipOutputStream out = new ZipOutputStream(file, passphrase.characters())) {
      for (String name : names) {
        out.putNextEntry(entry(name));
        try (InputStream in = Files.newInputStream(folder.resolve(name))) {
          in.transferTo(out);
        }
        out.closeEntry();
      }
    }
  }

  private static ZipParameters entry(String name) {
    ZipParameters entry = new ZipParameters();
    entry.setFileNameInZip(name);
    entry.setLastModifiedFileTime(NO_TIME);
    entry.setEncryptFiles(true);
    entry.setEncryptionMethod(EncryptionMethod.AES);
    entry.setAesKeyStrength(AesKeyStrength.KEY_STRENGTH_256);
    entry.setAesVersion(AesVersion.TWO);
    return entry;
  }

  /** SHA-256 of each file, by its name. */
  static Map<String, String> hashes(Path zip, Passphrase passphrase) throws IOException {
    Map<String, String> hashes = new TreeMap<>();
    try (InputStream file = Files.newInputStream(zip);
        ZipInputStream in = new ZipInputStream(file, passphrase.characters())) {
      for (LocalFileHeader entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
        hashes.put(entry.getFileName(), ContentHash.of(in.readAllBytes()).hex());
      }
    }
    return hashes;
  }
}
