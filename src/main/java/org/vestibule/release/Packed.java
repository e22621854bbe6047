package org.vestibule.release;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.Deflater;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.vestibule.base.ContentHash;

/** A release as one ZIP file; the times in it are fixed, so that the same files give the same. */
final class Packed {

  /** The first moment that a ZIP file can tell; it names no day of anybody's. */
  private static final LocalDateTime NO_TIME = LocalDateTime.of(1980, 1, 1, 0, 0);

  private Packed() {}

  static void write(Path folder, List<String> names, Path zip) throws IOException {
    try (OutputStream file = Files.newOutputStream(zip);
        ZipOutputStream out = new ZipOutputStream(file)) {
      out.setLevel(Deflater.BEST_SPEED);
      for (String name : names) {
        ZipEntry entry = new ZipEntry(name);
        entry.setTimeLocal(NO_TIME);
        out.putNextEntry(entry);
        try (InputStream in = Files.newInputStream(folder.resolve(name))) {
          in.transferTo(out);
        }
        out.closeEntry();
      }
    }
  }

  /** SHA-256 of each file, by its name. */
  static Map<String, String> hashes(Path zip) throws IOException {
    Map<String, String> hashes = new TreeMap<>();
    try (InputStream file = Files.newInputStream(zip);
        ZipInputStream in = new ZipInputStream(file)) {
      for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
        hashes.put(entry.getName(), ContentHash.of(in.readAllBytes()).hex());
      }
    }
    return hashes;
  }
}
