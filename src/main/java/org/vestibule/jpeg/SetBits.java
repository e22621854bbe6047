package org.vestibule.jpeg;

/**
 * The places of the bits that are set in a word, listed without a loop whose length can't be
 * foreseen: such a loop costs a processor more than everything else that is done for a refined
 * coefficient.
 */
final class SetBits {

  private static final long ONES = 0x0101010101010101L;

  /** For each byte, the places of its bits, the lowest first, a byte each. */
  private static final long[] IN_BYTE = inByte();

  /** Eight places are written at a time. */
  private final byte[] places = new byte[64 + 8];

  /** How many bits are set. */
  int count;

  private static long[] inByte() {
    long[] all = new long[256];
    for (int bits = 0; bits < 256; bits++) {
      int n = 0;
      for (int place = 0; place < 8; place++) {
        if ((bits >> place & 1) != 0) {
          all[bits] |= (long) place << (56 - 8 * n++);
        }
      }
    }
    return all;
  }

  /** Takes a word. */
  void of(long word) {
    int n = 0;
    for (int shift = 0; shift < 64; shift += 8) {
      int bits = (int) (word >>> shift) & 0xFF;
      ScanBits.WORD.set(places, n, IN_BYTE[bits] + shift * ONES);
      n += Integer.bitCount(bits);
    }
    count = n;
  }

  /** The place of the n-th bit that is set, from 0, of {@link #count}. */
  int place(int n) {
    return places[n];
  }
}
