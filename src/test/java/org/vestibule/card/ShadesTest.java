package org.vestibule.card;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.vestibule.jpeg.GrayRaster;

/** The sliding sums against the mean as it is defined, summed anew for each sample. */
final class ShadesTest {

  private static final int AROUND = 22;

  @ParameterizedTest
  @CsvSource({"1, 1", "7, 90", "90, 7", "44, 44", "45, 46", "101, 83"})
  void comparesWithTheMeanAround(int width, int height) {
    long seed = 22;
    byte[] samples = new byte[width * height];
    new Random(seed).nextBytes(samples);
    Shades shades = Shades.of(GrayRaster.of(width, height, samples));
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        long sum = 0;
        long count = 0;
        for (int row = Math.max(0, y - AROUND); row <= Math.min(height - 1, y + AROUND); row++) {
          for (int at = Math.max(0, x - AROUND); at <= Math.min(width - 1, x + AROUND); at++) {
            sum += samples[row * width + at] & 0xFF;
            count++;
          }
        }
        // In sixteenths; dark is what is darker than 60/64 of the mean.
        int threshold = (int) (sum * 16 * 60 / (64 * count));
        assertThat((int) shades.above[y * width + x])
            .as("seed %d, %d, %d", seed, x, y)
            .isEqualTo((samples[y * width + x] & 0xFF) * 16 - threshold);
      }
    }
  }

  /** All white: the largest sum that there can be is divided exactly too. */
  @ParameterizedTest
  @CsvSource({"60, 60", "200, 50"})
  void isExactForTheLargestSums(int width, int height) {
    byte[] samples = new byte[width * height];
    java.util.Arrays.fill(samples, (byte) 255);
    Shades shades = Shades.of(GrayRaster.of(width, height, samples));
    for (short above : shades.above) {
      assertThat((int) above).isEqualTo(255 * 16 - 255 * 15);
    }
  }
}
