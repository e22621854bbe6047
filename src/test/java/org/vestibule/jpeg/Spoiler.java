package org.vestibule.jpeg;

import java.util.Arrays;
import java.util.Random;
import org.vestibule.base.Turn;

/** Spoils files and makes up plans, the same for the same random numbers. */
final class Spoiler {

  private Spoiler() {}

  /** One to three changes: other bytes, bits, fill, a cut, bytes taken out or doubled. */
  static byte[] spoil(byte[] source, Random random) {
    byte[] spoilt = source.clone();
    int changes = 1 + random.nextInt(3);
    for (int i = 0; i < changes && spoilt.length > 0; i++) {
      int at = random.nextInt(spoilt.length);
      int to = Math.min(spoilt.length, at + 1 + random.nextInt(8));
      switch (random.nextInt(7)) {
        case 0 -> spoilt[at] = (byte) random.nextInt(256);
        case 1 -> spoilt[at] ^= (byte) (1 << random.nextInt(8));
        case 2 -> spoilt[at] = (byte) 0xFF;
        case 3 -> spoilt = Arrays.copyOf(spoilt, Math.max(2, at));
        case 4 ->
            spoilt =
                Assembled.join(
                    Arrays.copyOf(spoilt, at), Arrays.copyOfRange(spoilt, to, spoilt.length));
        case 5 ->
            spoilt =
                Assembled.join(
                    Arrays.copyOf(spoilt, to), Arrays.copyOfRange(spoilt, at, spoilt.length));
        default -> {
          // Headers matter more than their share of the bytes.
          spoilt[random.nextInt(Math.min(spoilt.length, 700))] = (byte) random.nextInt(256);
        }
      }
    }
    return spoilt;
  }

  static TranscodePlan plan(Random random) {
    Turn turn = Turn.ofExif(1 + random.nextInt(8));
    CropBox crop =
        random.nextInt(3) == 0
            ? new CropBox(random.nextInt(20), random.nextInt(20), 1 + random.nextInt(12), 9)
            : null;
    return new TranscodePlan(turn, crop, random.nextBoolean());
  }
}
