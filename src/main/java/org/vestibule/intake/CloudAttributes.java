package org.vestibule.intake;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;

/**
 * Windows marks files whose bytes lie elsewhere with the attributes OFFLINE, RECALL_ON_OPEN and
 * RECALL_ON_DATA_ACCESS (winnt.h, from memory): reading them would start a download.
 */
final class CloudAttributes {

  private static final int OFFLINE = 0x1000;
  private static final int RECALL_ON_OPEN = 0x40000;
  private static final int RECALL_ON_DATA_ACCESS = 0x400000;

  private CloudAttributes() {}

  /** True if the bytes must be fetched first; false wherever the file system has no such marks. */
  static boolean mustBeFetched(Path file) {
    if (!"\\".equals(file.getFileSystem().getSeparator())) {
      return false;
    }
    try {
      Object value = Files.getAttribute(file, "dos:attributes", LinkOption.NOFOLLOW_LINKS);
      return value instanceof Integer bits && marked(bits);
    } catch (UnsupportedOperationException | IllegalArgumentException | IOException e) {
      return false;
    }
  }

  static boolean marked(int bits) {
    return (bits & (OFFLINE | RECALL_ON_OPEN | RECALL_ON_DATA_ACCESS)) != 0;
  }
}
