package org.vestibule.jpeg;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.vestibule.base.Turn;

/** Previews against libjpeg-turbo's djpeg at the same scale. */
final class PreviewTest {

  private final Peer peer = new Peer();

  /**
   * At 1/8 and 1/1 both programs do the same sum; at 1/4 and 1/2 (and for the colours of 4:2:0 at
   * 1/8) the peer averages pairs where we drop frequencies, so single pixels may differ more
   * (tolerances chosen, no source).
   */
  @ParameterizedTest
  @CsvSource({
    "1, 16, 3, 1x1", "1, 16, 24, 2x2", "1, 16, 3, gray", "2, 32, 24, 1x1", "2, 32, 24, 2x1",
    "4, 63, 24, 1x1", "4, 63, 24, 2x2", "8, 125, 3, 1x1", "8, 125, 3, 2x2", "8, 125, 3, 1x2",
    "8, 125, 3, gray", "8, 125, 3, 4x1"
  })
  void looksAsThePeersPicture(int eighths, int side, int tolerance, String sampling) {
    boolean gray = sampling.equals("gray");
    byte[] picture = smooth(125, 99, gray);
    byte[] jpeg =
        gray
            ? peer.compress(picture, "-quality", "95")
            : peer.compress(picture, "-quality", "95", "-sample", sampling);
    byte[] theirs =
        peer.decompress(jpeg, "-scale", eighths + "/8", "-nosmooth", "-dct", "float", "-pnm");

    Raster ours = Preview.of(jpeg, side, Turn.NONE).orThrow();

    int offset = theirs.length - ours.width() * ours.height() * (gray ? 1 : 3);
    String head = new String(theirs, 0, offset, StandardCharsets.US_ASCII);
    assertThat(head).contains("\n" + ours.width() + " " + ours.height() + "\n");
    for (int i = 0; i < ours.width() * ours.height(); i++) {
      int pixel = ours.pixel(i % ours.width(), i / ours.width());
      for (int channel = 0; channel < 3; channel++) {
        int value = pixel >> (16 - 8 * channel) & 0xFF;
        int expected = theirs[gray ? offset + i : offset + 3 * i + channel] & 0xFF;
        assertThat(value)
            .as("pixel %d channel %d", i, channel)
            .isBetween(expected - tolerance, expected + tolerance);
      }
    }
  }

  @ParameterizedTest
  @EnumSource(Turn.class)
  void turnsAsTheTranscoderDoes(Turn turn) {
    byte[] jpeg = Assembled.plain(64, 48);
    byte[] turned = Transcoder.transcode(jpeg, TranscodePlan.turned(turn)).orThrow().bytes();

    Raster ours = Preview.of(jpeg, 64, turn).orThrow();
    Raster expected = Preview.of(turned, 64, Turn.NONE).orThrow();

    assertThat(ours.width()).isEqualTo(expected.width());
    for (int i = 0; i < ours.width() * ours.height(); i++) {
      int a = ours.pixel(i % ours.width(), i / ours.width());
      int b = expected.pixel(i % ours.width(), i / ours.width());
      assertThat(Math.abs((a >> 8 & 0xFF) - (b >> 8 & 0xFF))).isLessThanOrEqualTo(2);
    }
  }

  @Test
  void fitsTheSideThatWasAskedFor() {
    byte[] jpeg = Assembled.plain(300, 200);

    assertThat(Preview.of(jpeg, 100, Turn.ROTATE_90).orThrow().height()).isEqualTo(100);
    assertThat(Preview.of(jpeg, 100, Turn.ROTATE_90).orThrow().width()).isEqualTo(66);
    assertThat(Preview.of(jpeg, 1, Turn.NONE).orThrow().height()).isEqualTo(1);
    assertThat(Preview.of(jpeg, 4096, Turn.NONE).orThrow().width()).isEqualTo(300);
    assertThatThrownBy(() -> Preview.of(jpeg, 0, Turn.NONE))
        .hasMessage("maxSide must be 1 to 4096 but was 0");
  }

  private static byte[] smooth(int width, int height, boolean gray) {
    int channels = gray ? 1 : 3;
    String head = (gray ? "P5" : "P6") + "\n" + width + " " + height + "\n255\n";
    byte[] samples = new byte[width * height * channels];
    for (int i = 0; i < samples.length; i++) {
      int x = i / channels % width;
      int y = i / channels / width;
      samples[i] = (byte) (128 + 90 * Math.sin(x * 0.11 + i % channels) * Math.cos(y * 0.07));
    }
    return Assembled.join(head.getBytes(StandardCharsets.US_ASCII), samples);
  }
}
