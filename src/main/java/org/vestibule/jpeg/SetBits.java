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
  final byte[] places = new byte[64 + 8];

  /** How many of {@link #places} are listed. */
  int count;

  /** The upper half of the word, if it is not listed yet. */
  private int upper;

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

  /** Takes a word, and lists the places of its lower half. */
  void of(long word) {
    count = list((int) word, 0, 0);
    upper = (int) (word >>> 32);
  }

  /** Lists the places of the upper half too, and says how many there are. */
  int all() {
    count = list(upper, 32, count);
    upper = 0;
    return count;
  }

  private int list(int half, int first, int from) {
    int n = from;
    for (int shift = 0; shift < 32; shift += 8) {
      int bits = half >>> shift & 0xFF;
      ScanBits.WORD.set(places, n, IN_BYTE[bits] + (first + shift) * ONES);
      n += Integer.bitCount(bits);
    }
    return n;
  }
}
