package org.vestibule.intake;

import java.nio.file.Path;
import java.time.Instant;

/**
 * A file in the folder before anything is known about it.
 *
 * @param path where it lies
 * @param name path below the folder, with forward slashes
 * @param sizeBytes its length
 * @param modified when the file system says it was last changed
 */
record FoundFile(Path path, String name, long sizeBytes, Instant modified) {

  LeftOut leave(LeftOutKind kind, String reason, String advice) {
    return new LeftOut(name, kind, reason, advice, null);
  }
}
