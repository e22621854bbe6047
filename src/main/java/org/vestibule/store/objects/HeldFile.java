package org.vestibule.store.objects;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/** Does something to a file again, after a pause, where another program has the file open. */
final class HeldFile {

  private static final int TRIES = 6;
  private static final long FIRST_PAUSE_MILLIS = 20;

  /** What is to be done. */
  @FunctionalInterface
  interface Work<T> {
    T run() throws IOException;
  }

  private HeldFile() {}

  static <T> T retry(Path file, Work<T> work) throws IOException {
    long pause = FIRST_PAUSE_MILLIS;
    for (int tries = 1; ; tries++) {
      try {
        return work.run();
      } catch (FileSystemException e) {
        if (tries == TRIES || !isPerhapsHeld(file, e)) {
          throw e;
        }
        LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(pause));
        pause *= 2;
      }
    }
  }

  /**
   * Windows tells a sharing violation in the words of its own language, by an exception of no
   * special kind; so there every such one is tried again.
   */
  private static boolean isPerhapsHeld(Path file, FileSystemException e) {
    return e instanceof AccessDeniedException
        || (isWindows(file) && e.getClass().equals(FileSystemException.class));
  }

  static boolean isWindows(Path file) {
    return file.getFileSystem().getSeparator().equals("\\");
  }
}
