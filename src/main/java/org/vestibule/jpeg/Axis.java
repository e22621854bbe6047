package org.vestibule.jpeg;

/**
 * Where a kept stretch of one axis of the displayed picture lies in whole MCUs.
 *
 * <p>If the axis is reversed, a partial MCU at the stored picture's far edge would have to start
 * the displayed picture, which no JPEG can do: those samples, at the near edge as displayed, are
 * lost to whoever wants them.
 *
 * @param samples length of the displayed axis
 * @param unit samples of one MCU
 * @param reversed true if the axis runs against the stored picture
 * @param start first kept sample
 * @param length kept samples
 * @param trimmed samples that were asked for and can't be kept
 */
record Axis(int samples, int unit, boolean reversed, int start, int length, int trimmed) {

  /** Lays out an axis of which {@code wantedLength} samples from {@code wantedStart} are wanted. */
  static Axis lay(int samples, int unit, boolean reversed, int wantedStart, int wantedLength) {
    int lost = reversed ? samples % unit : 0;
    int end = wantedStart + wantedLength;
    int start = wantedStart < lost ? lost : lost + (wantedStart - lost) / unit * unit;
    int trimmed = Math.max(0, Math.min(lost, end) - wantedStart);
    return new Axis(samples, unit, reversed, start, Math.max(0, end - start), trimmed);
  }

  /** Samples at the near edge that no crop can keep. */
  int lost() {
    return reversed ? samples % unit : 0;
  }

  /** MCUs of the displayed axis before the kept stretch. */
  int unitsBefore() {
    return (start - lost()) / unit;
  }

  /** Whole MCUs of the axis. */
  int wholeUnits() {
    return samples / unit;
  }
}
