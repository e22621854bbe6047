package org.vestibule.jpeg;

import java.lang.ref.SoftReference;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;

/**
 * Keeps the coefficients' array of the last progressive picture for the next, as long as memory is
 * not needed for something else. Setting tens of megabytes to zero takes as long as decoding a
 * scan, and whoever used the array has set back what was not zero on the way.
 */
final class SpareValues {

  /** Coefficients of a picture of 24 million samples with full colour. */
  private static final int LARGEST = 72 << 20;

  private static final AtomicReference<@Nullable SoftReference<byte[]>> SPARE =
      new AtomicReference<>();

  private SpareValues() {}

  /** An array of at least this length, all zero. */
  static byte[] take(int length) {
    SoftReference<byte[]> kept = SPARE.getAndSet(null);
    byte[] spare = kept == null ? null : kept.get();
    return spare != null && spare.length >= length ? spare : new byte[length];
  }

  /** Gives an array back, all zero again. */
  static void give(byte[] values) {
    if (values.length <= LARGEST) {
      SPARE.set(new SoftReference<>(values));
    }
  }
}
