package org.vestibule.audit;

import java.io.Closeable;
import java.io.IOException;
import java.time.Duration;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/** Closes a line on which nothing moves any more; a write that is stuck ends in no other way. */
final class LineWatch implements Closeable {

  private static final long LOOK_NANOS = TimeUnit.MILLISECONDS.toNanos(100);

  private final Closeable line;
  private final Thread thread;
  private volatile long endNanos;
  private volatile boolean struck;
  private volatile boolean closed;

  LineWatch(Closeable line, Duration first) {
    this.line = line;
    this.endNanos = System.nanoTime() + first.toNanos();
    this.thread = new Thread(this::look, "syslog-watch");
    thread.setDaemon(true);
    thread.start();
  }

  /** Begins a wait, in place of the last one. */
  void allow(Duration most) {
    endNanos = System.nanoTime() + most.toNanos();
  }

  /** True if a wait lasted too long and the line was closed for it. */
  boolean hasStruck() {
    return struck;
  }

  private void look() {
    while (!closed) {
      LockSupport.parkNanos(this, LOOK_NANOS);
      if (!closed && System.nanoTime() - endNanos >= 0) {
        struck = true;
        closed = true;
        shut();
      }
    }
  }

  private void shut() {
    try {
      line.close();
    } catch (IOException alreadyGone) {
      // Nothing is left to close, which is what was wanted.
    }
  }

  @Override
  public void close() {
    closed = true;
    LockSupport.unpark(thread);
  }
}
