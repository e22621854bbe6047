package org.vestibule.flow.look;

import java.io.BufferedWriter;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import org.vestibule.base.Outcome;

/** The file of a sheet: written whole or not at all, and in place of nothing but an older sheet. */
public final class SheetFile {

  private static final int SIGNATURE_WITHIN_BYTES = 200;

  private SheetFile() {}

  /** The file, if a sheet may be written there. */
  public static Outcome<Path> free(Path file) throws IOException {
    return Files.exists(file) && !isSheet(file)
        ? Outcome.refused(
            file.getFileName() + " is already there and isn't a sheet that this program wrote",
            "name another file")
        : Outcome.done(file);
  }

  private static boolean isSheet(Path file) throws IOException {
    if (!Files.isRegularFile(file)) {
      return false;
    }
    try (InputStream in = Files.newInputStream(file)) {
      String start = new String(in.readNBytes(SIGNATURE_WITHIN_BYTES), StandardCharsets.UTF_8);
      return start.contains(SheetWriter.SIGNATURE);
    }
  }

  /** Done once the sheet is written, before it gets its name. */
  @FunctionalInterface
  interface Before {
    void naming() throws IOException;
  }

  /** Writes the sheet, if it may be written there. */
  public static Outcome<Path> write(Sheet sheet, Path file) throws IOException {
    Outcome<Path> free = free(file);
    if (free instanceof Outcome.Done<Path>) {
      write(sheet, file, () -> {});
    }
    return free;
  }

  static void write(Sheet sheet, Path file, Before before) throws IOException {
    Path draft = file.resolveSibling(file.getFileName() + ".part");
    try {
      try (BufferedWriter out = Files.newBufferedWriter(draft, StandardCharsets.UTF_8)) {
        SheetWriter.write(sheet, out);
      }
      before.naming();
      Files.move(draft, file, StandardCopyOption.REPLACE_EXISTING);
    } finally {
      Files.deleteIfExists(draft);
    }
  }
}
