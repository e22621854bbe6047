package org.vestibule.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * The archive of loaded classes that makes a start quick. Java passes over one that was made in
 * another folder or by another Java; taking it away lets the start script make a fresh one.
 */
final class StartArchive {

  private StartArchive() {}

  /**
   * Deletes the archive if Java started without it.
   *
   * @param archive where the start script said it lies; null without the script
   * @param machine the virtual machine's own words about itself, such as {@code mixed mode,
   *     sharing}
   */
  static void dropIfOfNoUse(@Nullable String archive, String machine) {
    if (archive == null || machine.contains("sharing")) {
      return;
    }
    try {
      Files.deleteIfExists(Path.of(archive));
    } catch (IOException kept) {
      // Not ours to delete: the program works as well without it, only its start is slower.
      return;
    }
  }
}
