package org.vestibule.release;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.zip.Deflater;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

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
}
