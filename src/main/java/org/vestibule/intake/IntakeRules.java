package org.vestibule.intake;

import java.time.Duration;

/**
 * How files are taken.
 *
 * @param settle how long size and time of a file must not have changed before it is taken; zero
 *     takes every file that doesn't change while it is read
 * @param largestBytes the longest file that is read; longer ones are left out
 */
public record IntakeRules(Duration settle, long largestBytes) {

  /** Ten seconds, 200 MB. */
  public static final IntakeRules DEFAULT = new IntakeRules(Duration.ofSeconds(10), 200_000_000L);

  /** The longest array that every Java runtime can hold. */
  private static final long LARGEST_ARRAY_BYTES = Integer.MAX_VALUE - 8L;

  public IntakeRules {
    if (settle.isNegative()) {
      throw new IllegalArgumentException("the time to settle must not be negative: " + settle);
    }
    if (largestBytes < 1 || largestBytes > LARGEST_ARRAY_BYTES) {
      throw new IllegalArgumentException(
          "the longest file must have 1 to " + LARGEST_ARRAY_BYTES + " bytes: " + largestBytes);
    }
  }

  /** The same rules, taking also files that were changed just now. */
  public IntakeRules withoutSettling() {
    return new IntakeRules(Duration.ZERO, largestBytes);
  }
}
