package org.vestibule.base;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Files that are there whole or not at all. */
public final class WholeFile {

  private WholeFile() {}

  /**
   * Writes a new file. It gets its name when all of it is written; a full disk leaves nothing.
   *
   * @throws FileAlreadyExistsException if there is something of that name; it stays as it is
   */
  public static void writeNew(Path file, byte[] bytes) throws IOException {
    if (Files.exists(file)) {
      throw new FileAlreadyExistsException(file.toString());
    }
    Path draft = file.resolveSibling(file.getFileName() + ".part");
    try {
      Files.write(draft, bytes);
      Files.move(draft, file);
    } finally {
      Files.deleteIfExists(draft);
    }
  }
}
