package org.vestibule.samples;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.util.Arrays;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.vestibule.samples.RawState.Axes;

/**
 * The pictures of the roll are those the generator draws, and what is on the patient's right lies
 * where the geometry says.
 */
class SamplePicturesTest {

  /** Gold on 16: no other thing in a mouth is so yellow. */
  private static boolean gold(int rgb) {
    int red = rgb >> 16 & 0xff;
    int green = rgb >> 8 & 0xff;
    int blue = rgb & 0xff;
    return red > 140 && red - blue > 90 && green - blue > 50;
  }

  private static Shot shot(String file) {
    return SampleRoll.plan().stream().filter(s -> s.file().equals(file)).findFirst().orElseThrow();
  }

  private static BufferedImage stored(String file) throws IOException {
    return ImageIO.read(SampleFolder.roll().resolve(file).toFile());
  }

  /**
   * JPEG writers differ from one JDK to another, so bytes may too; then the pictures must still be
   * the same within what two writers' rounding makes.
   */
  @ParameterizedTest
  @ValueSource(strings = {"IMG_0001.JPG", "IMG_0010.JPG", "IMG_0025.JPG", "IMG_E0007.JPG"})
  void drawingAgainGivesTheSameFile(String file) throws IOException {
    byte[] again = new SampleRoll().bytes(shot(file));
    byte[] kept = Files.readAllBytes(SampleFolder.roll().resolve(file));
    if (!Arrays.equals(again, kept)) {
      BufferedImage one = ImageIO.read(new ByteArrayInputStream(again));
      BufferedImage other = stored(file);
      assertThat(one.getWidth()).isEqualTo(other.getWidth());
      assertThat(one.getHeight()).isEqualTo(other.getHeight());
      assertThat(meanDifference(one, other))
          .as("mean difference of samples; run MakeSamples if the drawing was changed on purpose")
          .isLessThan(1.5);
    }
  }

  @Test
  void aBuilderWritesTheSameBytesEachTime() {
    Shot small = shot("IMG_0010.JPG");
    assertThat(new SampleRoll().bytes(small)).isEqualTo(new SampleRoll().bytes(small));
  }

  /** Tooth 16 is on the patient's right and far back, whichever way the raw picture lies. */
  @ParameterizedTest
  @ValueSource(strings = {"IMG_0005.JPG", "IMG_0009.JPG"})
  void theGoldToothLiesWhereTheGeometrySays(String file) throws IOException {
    Shot shot = shot(file);
    Axes raw = RawState.rawFor(shot.seen(), shot.exif());
    double[] middle = middleOfGold(stored(file));
    assertThat(middle[0] > 0).isEqualTo("RP".indexOf(raw.right()) >= 0);
    assertThat(middle[1] > 0).isEqualTo("RP".indexOf(raw.down()) >= 0);
  }

  @Test
  void theGoldToothIsAtTheBackOfTheRightBuccalPicture() throws IOException {
    // Mirrored, P\F: the back of the mouth to the right.
    assertThat(middleOfGold(stored("IMG_0003.JPG"))[0]).isGreaterThan(0);
    assertThat(middleOfGold(SampleRoll.picture(Scene.RIGHT_BUCCAL))[0]).isLessThan(0);
  }

  @Test
  void theSpoiltPicturesAreSpoilt() throws IOException {
    assertThat(sharpness(stored("20260312_104502.jpg")))
        .isLessThan(sharpness(stored("20260312_102011.jpg")) / 4);
    assertThat(sharpness(stored("20260312_104630.jpg")))
        .isLessThan(sharpness(stored("20260312_102011.jpg")) / 2);
    assertThat(whiteShare(stored("20260312_104455.jpg")))
        .isGreaterThan(0.15)
        .isGreaterThan(4 * whiteShare(stored("20260312_102011.jpg")));
  }

  /** Mean place of the gold, from -1 to 1 across and down. */
  private static double[] middleOfGold(BufferedImage picture) {
    long count = 0;
    double x = 0;
    double y = 0;
    for (int row = 0; row < picture.getHeight(); row++) {
      for (int column = 0; column < picture.getWidth(); column++) {
        if (gold(picture.getRGB(column, row))) {
          count++;
          x += 2.0 * column / picture.getWidth() - 1;
          y += 2.0 * row / picture.getHeight() - 1;
        }
      }
    }
    assertThat(count).as("gold samples").isGreaterThan(300);
    return new double[] {x / count, y / count};
  }

  private static double meanDifference(BufferedImage one, BufferedImage other) {
    double sum = 0;
    for (int row = 0; row < one.getHeight(); row++) {
      for (int column = 0; column < one.getWidth(); column++) {
        sum += Math.abs(green(one, column, row) - green(other, column, row));
      }
    }
    return sum / one.getWidth() / one.getHeight();
  }

  /** Mean absolute difference of neighbours: nothing fine, enough to tell blurred from sharp. */
  private static double sharpness(BufferedImage picture) {
    double sum = 0;
    for (int row = 0; row < picture.getHeight(); row++) {
      for (int column = 1; column < picture.getWidth(); column++) {
        double step = green(picture, column, row) - green(picture, column - 1, row);
        sum += step * step;
      }
    }
    return sum / picture.getWidth() / picture.getHeight();
  }

  private static double whiteShare(BufferedImage picture) {
    long white = 0;
    for (int row = 0; row < picture.getHeight(); row++) {
      for (int column = 0; column < picture.getWidth(); column++) {
        white += green(picture, column, row) >= 250 ? 1 : 0;
      }
    }
    return (double) white / picture.getWidth() / picture.getHeight();
  }

  private static int green(BufferedImage picture, int column, int row) {
    return picture.getRGB(column, row) >> 8 & 0xff;
  }
}
