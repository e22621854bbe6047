package org.vestibule.base;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** Waits until what was written outlives a power cut. */
public final class Synced {

  private Synced() {}

  /** Puts on the disk what was written into a file. */
  public static void file(Path file) throws IOException {
    force(file, StandardOpenOption.WRITE);
  }

  /**
   * Puts the names in a folder on the disk. Windows opens no folder as a file; there the file
   * system keeps the order by itself.
   */
  public static void folder(Path folder) throws IOException {
    if (!folder.getFileSystem().getSeparator().equals("\\")) {
      force(folder, StandardOpenOption.READ);
    }
  }

  private static void force(Path path, StandardOpenOption how) throws IOException {
    try (FileChannel channel = FileChannel.open(path, how)) {
      channel.force(true);
    }
  }
}
