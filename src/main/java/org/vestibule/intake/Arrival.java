package org.vestibule.intake;

import java.nio.file.Path;
import java.time.Instant;
import org.vestibule.base.ContentHash;

/**
 * A settled file, known by the hash of its bytes.
 *
 * @param file where it lies
 * @param name path below the folder that was read, with forward slashes, as the file system spells
 *     it; use {@link #shownName()} in messages
 * @param sizeBytes its length
 * @param modified when the file system says it was last changed
 * @param hash SHA-256 of the bytes that were read
 */
public record Arrival(Path file, String name, long sizeBytes, Instant modified, ContentHash hash) {

  public Arrival {
    if (sizeBytes < 0) {
      throw new IllegalArgumentException("a file has 0 bytes or more but this has " + sizeBytes);
    }
  }

  /** The name with control and direction-changing characters escaped. */
  public String shownName() {
    return FileNames.shown(name);
  }
}
