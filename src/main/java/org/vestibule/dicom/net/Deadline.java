package org.vestibule.dicom.net;

import java.time.Duration;

/**
 * When something that takes several waits has to be over, however often the other side moves.
 *
 * @param endNanos by {@link System#nanoTime}
 */
record Deadline(long endNanos) {

  /** What never may be waited for longer than this from now. */
  static Deadline after(Duration most) {
    return new Deadline(System.nanoTime() + most.toNanos());
  }

  boolean isOver() {
    return endNanos - System.nanoTime() <= 0;
  }

  /**
   * This wait, or what is left if that is less; at least a millisecond, so that it can be begun.
   */
  Duration atMost(Duration wait) {
    Duration left = Duration.ofNanos(Math.max(1_000_000, endNanos - System.nanoTime()));
    return left.compareTo(wait) < 0 ? left : wait;
  }
}
