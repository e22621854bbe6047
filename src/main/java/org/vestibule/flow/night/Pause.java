package org.vestibule.flow.night;

import java.time.Duration;

/** Waits. */
@FunctionalInterface
public interface Pause {

  /** The machine's own. */
  Pause SLEEP =
      time -> {
        try {
          Thread.sleep(time.toMillis());
          return true;
        } catch (InterruptedException e) {
          Thread.currentThread().interrupt();
          return false;
        }
      };

  /** False if somebody ended the waiting. */
  boolean wait(Duration time);
}
