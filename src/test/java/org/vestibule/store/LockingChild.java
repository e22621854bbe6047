package org.vestibule.store;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/** A process that takes the run lock, says so by a file, and waits to be killed. */
public final class LockingChild {

  private LockingChild() {}

  /** The lock's file. */
  public static void main(String[] args) throws Exception {
    Path file = Path.of(args[0]);
    try (RunLock lock = RunLock.take(file, "nightly ingest", StoreFixture.CLOCK).orThrow()) {
      Files.createFile(file.resolveSibling("run.lock.taken"));
      TimeUnit.MINUTES.sleep(5);
      throw new IllegalStateException("nobody killed this process: " + lock.interrupted());
    }
  }
}
