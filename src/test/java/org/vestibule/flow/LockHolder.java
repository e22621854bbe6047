package org.vestibule.flow;

import java.nio.file.Path;
import org.vestibule.store.RunLock;

/** A process that holds the run lock of a home folder until its input ends. */
public final class LockHolder {

  private LockHolder() {}

  /** The home folder. */
  public static void main(String[] args) throws Exception {
    Path home = Path.of(args[0]);
    try (Practice practice =
            Practice.open(home, Settings.defaults(home, TestHome.ZONE), TestHome.CLOCK, false)
                .orThrow();
        RunLock lock = practice.store().lock("a test").orThrow()) {
      System.out.write('!');
      System.out.flush();
      while (System.in.read() >= 0) {}
    }
  }
}
