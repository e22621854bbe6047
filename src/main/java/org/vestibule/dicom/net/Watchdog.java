package org.vestibule.dicom.net;

import java.io.IOException;
import java.nio.channels.Channel;
import java.time.Duration;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/**
 * Closes a connection whose current wait lasts too long.
 *
 * <p>Closing is the one thing that ends a blocked connect, handshake, read and write alike. A wait
 * is over by at most a tenth of a second more than it may last.
 */
final class Watchdog implements AutoCloseable {

  private static final long LOOK_NANOS = TimeUnit.MILLISECONDS.toNanos(100);

  private final Channel channel;
  private final Thread thread;
  private volatile long endNanos;
  private volatile boolean armed;
  private volatile boolean struck;
  private volatile boolean closed;

  Watchdog(Channel channel) {
    this.channel = channel;
    this.thread = new Thread(this::look, "association-watchdog");
    thread.setDaemon(true);
    thread.start();
  }

  /** Begins a wait, in place of any other. */
  void arm(Duration limit) {
    endNanos = System.nanoTime() + limit.toNanos();
    armed = true;
  }

  void disarm() {
    armed = false;
  }

  /** True if a wait lasted too long and the connection was closed for it. */
  boolean hasStruck() {
    return struck;
  }

  private void look() {
    while (!closed) {
      LockSupport.parkNanos(this, LOOK_NANOS);
      if (armed && System.nanoTime() - endNanos >= 0) {
        struck = true;
        closed = true;
        shut();
      }
    }
  }

  private void shut() {
    try {
      channel.close();
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
