package org.vestibule.jpeg;

/** Counts MCUs and goes on after each restart marker where it is due (ITU-T T.81 E.2.4). */
final class Restarts {

  private final int interval;
  private final ScanBits in;
  private int left;
  private int next;

  /**
   * For one scan.
   *
   * @param interval MCUs between restart markers; 0 for none
   */
  Restarts(int interval, ScanBits in) {
    this.interval = interval;
    this.in = in;
    this.left = interval;
  }

  /** True if the scan has restart markers. */
  boolean any() {
    return interval > 0;
  }

  /** Called before each MCU; true if a new interval starts with it. */
  boolean due() throws JpegFault {
    if (interval == 0 || left-- > 0) {
      return false;
    }
    in.restart(next);
    next = (next + 1) & 7;
    left = interval - 1;
    return true;
  }
}
