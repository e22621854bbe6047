package org.vestibule.jpeg;

import java.util.concurrent.Semaphore;

/**
 * Admits work by the memory it needs: what fits into the budget at all waits its turn until enough
 * is free, what never fits is refused. How many threads there are does not matter.
 */
final class MemoryBudget {

  /** Three quarters of the heap; the rest is for the files' bytes and everything else. */
  private static final MemoryBudget SHARED =
      new MemoryBudget(Runtime.getRuntime().maxMemory() / 4 * 3);

  private static final int MEGABYTE_BITS = 20;

  private final int megabytes;

  /** Free megabytes; fair, so that small pictures can't keep a large one waiting for ever. */
  private final Semaphore free;

  MemoryBudget(long bytes) {
    this.megabytes = (int) Math.min(Integer.MAX_VALUE, bytes >> MEGABYTE_BITS);
    this.free = new Semaphore(megabytes, true);
  }

  /** The budget of this program. */
  static MemoryBudget shared() {
    return SHARED;
  }

  /** What is done in admitted memory. */
  interface Work<T> {
    T run() throws JpegFault;
  }

  /** True if this much could be admitted when nothing else is. */
  boolean fits(long bytes) {
    return megabytes(bytes) <= megabytes;
  }

  /** How many wait for their turn. */
  int waiting() {
    return free.getQueueLength();
  }

  /** Waits until this much is free and works; what can't ever be is refused. */
  <T> T within(long bytes, Work<T> work) throws JpegFault {
    if (!fits(bytes)) {
      throw JpegFault.unsuited(
          "the picture needs "
              + megabytes(bytes)
              + " MB of memory, "
              + megabytes
              + " MB may be used for pictures",
          "start again with more memory (Java option -Xmx), or export a smaller copy");
    }
    int wanted = (int) megabytes(bytes);
    free.acquireUninterruptibly(wanted);
    try {
      return work.run();
    } finally {
      free.release(wanted);
    }
  }

  /** Rounded up. */
  private static long megabytes(long bytes) {
    return (bytes + (1L << MEGABYTE_BITS) - 1) >> MEGABYTE_BITS;
  }
}
