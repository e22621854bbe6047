package org.vestibule.encode;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.vestibule.assign.Crop;
import org.vestibule.base.Turn;
import org.vestibule.jpeg.CropBox;
import org.vestibule.jpeg.FrameSize;

/**
 * A crop marked on the sheet must show the same samples once the picture is turned as it is filed,
 * found here by carrying single samples through both turns.
 */
class CropPlaceTest {

  private static final long SEED = 20261125;

  @Test
  void showsTheSamplesThatWereMarkedOnTheSheet() {
    Random random = new Random(SEED);
    FrameSize stored = new FrameSize(60, 40);
    for (Turn sheet : Turn.values()) {
      for (Turn shown : Turn.values()) {
        for (int i = 0; i < 20; i++) {
          check(random, stored, sheet, shown);
        }
      }
    }
  }

  private static void check(Random random, FrameSize stored, Turn sheet, Turn shown) {
    int sheetWidth = sheet.swapsAxes() ? stored.height() : stored.width();
    int sheetHeight = sheet.swapsAxes() ? stored.width() : stored.height();
    int left = random.nextInt(sheetWidth - 1);
    int top = random.nextInt(sheetHeight - 1);
    int right = left + 1 + random.nextInt(sheetWidth - left - 1);
    int bottom = top + 1 + random.nextInt(sheetHeight - top - 1);
    Crop crop =
        new Crop(
            (double) left / sheetWidth,
            (double) top / sheetHeight,
            (double) right / sheetWidth,
            (double) bottom / sheetHeight);
    CropBox box = CropPlace.box(crop, sheet, shown, stored);
    for (int y = 0; y < stored.height(); y++) {
      for (int x = 0; x < stored.width(); x++) {
        int[] onSheet = carried(x, y, stored, sheet);
        int[] asShown = carried(x, y, stored, shown);
        boolean marked =
            onSheet[0] >= left && onSheet[0] < right && onSheet[1] >= top && onSheet[1] < bottom;
        boolean kept =
            asShown[0] >= box.left()
                && asShown[0] < box.right()
                && asShown[1] >= box.top()
                && asShown[1] < box.bottom();
        assertThat(kept)
            .as("seed %d, sheet %s, shown %s, sample %d,%d", SEED, sheet, shown, x, y)
            .isEqualTo(marked);
      }
    }
  }

  /** Where a stored sample comes to lie: exchange the axes, then mirror across, then down. */
  private static int[] carried(int x, int y, FrameSize stored, Turn turn) {
    int width = turn.swapsAxes() ? stored.height() : stored.width();
    int height = turn.swapsAxes() ? stored.width() : stored.height();
    int column = turn.swapsAxes() ? y : x;
    int row = turn.swapsAxes() ? x : y;
    return new int[] {
      turn.flipsHorizontally() ? width - 1 - column : column,
      turn.flipsVertically() ? height - 1 - row : row
    };
  }
}
