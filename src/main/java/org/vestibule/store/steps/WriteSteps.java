package org.vestibule.store.steps;

import java.io.IOException;

/** Told of every {@link WriteStep}: in tests it ends the process, or fails as a disk would. */
@FunctionalInterface
public interface WriteSteps {

  /** Lets every step pass. */
  WriteSteps PASS = step -> {};

  /**
   * Says that a step has been reached.
   *
   * @throws IOException to make the write fail here
   */
  void reached(WriteStep step) throws IOException;
}
