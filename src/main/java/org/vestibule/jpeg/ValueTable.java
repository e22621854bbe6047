package org.vestibule.jpeg;

/**
 * A Huffman table of a sequential scan laid out for the proof's decoder ({@link ValueReader}): one
 * look gives up to two AC coefficients, or a DC difference, as values (ITU-T T.81 F.2.2).
 *
 * <p>An AC entry holds, from its lowest bit, the length of all codes and values (8 bits), the steps
 * they take along the zigzag (8), the steps of the first alone (8), and both values (16 each,
 * signed; 0 where there is none); its sign is set if the block ends with them. {@link #NONE} stands
 * for what doesn't fit: long codes, runs of sixteen zeros, and values that no baseline picture has.
 * A DC entry holds the length (8 bits) and from bit 24 the difference; or 0.
 */
final class ValueTable {

  private static final int LOOK_BITS = 11;
  private static final int WIDE_LOOK_BITS = 13;

  /** Right shift that leaves the bits looked up of 64. */
  static final int SHIFT = 64 - LOOK_BITS;

  /** The same in a wide table. */
  static final int WIDE_SHIFT = 64 - WIDE_LOOK_BITS;

  static final int MOST_DC_BITS = 11;
  static final int MOST_AC_BITS = 10;

  /** One step of all, and of the first. */
  static final long STEPS = 0x10100;

  /** What doesn't fit: past all places. */
  private static final long NONE = 64 * STEPS;

  private static final int FIRST = 24;
  private static final int SECOND = 40;
  private static final long VALUE = 0xFFFF;

  final HuffmanTable codes;
  final long[] look;
  private final int lookBits;

  private ValueTable(HuffmanTable codes, int lookBits) {
    this.codes = codes;
    this.lookBits = lookBits;
    this.look = new long[1 << lookBits];
  }

  static ValueTable dc(HuffmanTable codes) {
    ValueTable table = new ValueTable(codes, LOOK_BITS);
    for (int i = 0; i < table.look.length; i++) {
      long bits = (long) i << SHIFT;
      int entry = codes.entry((int) (bits >>> 48));
      int size = entry & 0xFF;
      if (entry != 0 && size <= MOST_DC_BITS && entry >>> 16 <= LOOK_BITS) {
        table.look[i] = entry >>> 16 | (value(entry, bits) & VALUE) << FIRST;
      }
    }
    return table;
  }

  /**
   * For AC coefficients.
   *
   * @param wide true for a table in which less is missing: worth its size where much is done with
   *     each value, so that the processor has more to lose where it could not foretell
   */
  static ValueTable ac(HuffmanTable codes, boolean wide) {
    ValueTable table = new ValueTable(codes, wide ? WIDE_LOOK_BITS : LOOK_BITS);
    for (int i = 0; i < table.look.length; i++) {
      table.look[i] = table.ac((long) i << (64 - table.lookBits));
    }
    return table;
  }

  private long ac(long bits) {
    int entry = codes.entry((int) (bits >>> 48));
    int length = entry >>> 16;
    if (!fits(entry, 0)) {
      return NONE;
    }
    if ((entry & 0xFF) == 0) {
      return Long.MIN_VALUE | length;
    }
    long first = length + steps(entry) * STEPS + ((value(entry, bits) & VALUE) << FIRST);
    int next = codes.entry((int) (bits << length >>> 48));
    if (!fits(next, length)) {
      return first;
    }
    if ((next & 0xFF) == 0) {
      return Long.MIN_VALUE | (first + (next >>> 16));
    }
    long second = (value(next, bits << length) & VALUE) << SECOND;
    return first + (next >>> 16) + (steps(next) << 8) + second;
  }

  private boolean fits(int entry, int used) {
    int size = entry & 15;
    boolean plain = size > 0 ? size <= MOST_AC_BITS : (entry & 0xFF) == 0;
    return entry != 0 && plain && used + (entry >>> 16) <= lookBits;
  }

  private static long steps(int entry) {
    return 1L + (entry >>> 4 & 15);
  }

  /** The value after an entry's code (T.81 F.2.2.1, EXTEND). */
  static int value(int entry, long bits) {
    int size = entry & 15;
    if (size == 0) {
      return 0;
    }
    int value = (int) (bits << HuffmanTable.length(entry) >>> -size);
    return value < 1 << (size - 1) ? value - (1 << size) + 1 : value;
  }
}
