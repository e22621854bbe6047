package org.vestibule.jpeg;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.vestibule.base.Turn;

/** Facts against the samples that libjpeg-turbo's djpeg decodes of the same picture. */
final class FactsTest {

  private static final int WIDTH = 160;
  private static final int HEIGHT = 120;

  private final Peer peer = new Peer();

  @ParameterizedTest
  @ValueSource(strings = {"1x1", "2x2"})
  void countsBrightnessAsThePeerDoes(String sampling) {
    byte[] jpeg =
        peer.compress(Peer.picture(WIDTH, HEIGHT, false, 3), "-quality", "95", "-sample", sampling);
    // A quarter of the size is what a patch of four by four samples averages to.
    byte[] quarter = peer.decompress(jpeg, "-scale", "2/8", "-grayscale", "-dct", "float", "-pnm");

    PictureFacts facts = facts(jpeg);

    int patches = WIDTH / 4 * (HEIGHT / 4);
    int[] theirs = new int[256];
    for (int i = 0; i < patches; i++) {
      theirs[quarter[quarter.length - patches + i] & 0xFF]++;
    }
    assertThat(facts.lumaHistogram().stream().mapToInt(n -> n).sum()).isEqualTo(patches);
    // The peer averages pairs where we drop frequencies, so a patch may land some steps away:
    // the shares below each brightness agree within a few in a hundred (chosen, no source).
    int ours = 0;
    int expected = 0;
    for (int level = 0; level < 256; level++) {
      ours += facts.lumaHistogram().get(level);
      expected += theirs[level];
      assertThat((double) ours / patches)
          .as("below %d", level)
          .isCloseTo((double) expected / patches, within(0.04));
    }
  }

  @Test
  void findsWhatIsClipped() {
    byte[] gray = new byte[64 * 64];
    Arrays.fill(gray, 0, 64 * 16, (byte) 255);
    Arrays.fill(gray, 64 * 16, 64 * 32, (byte) 0);
    Arrays.fill(gray, 64 * 32, 64 * 64, (byte) 128);

    PictureFacts facts = facts(peer.compress(pgm(64, 64, gray), "-quality", "95"));

    assertThat(facts.brightShare()).isEqualTo(0.25);
    assertThat(facts.darkShare()).isEqualTo(0.25);
    assertThat(facts.lumaHistogram().get(128)).isEqualTo(128);
    assertThat(facts.focus()).isZero();
  }

  /** The measure as it is defined, by the forward transform (T.81 A.3.3) of the peer's samples. */
  @Test
  void measuresFocusAsDefined() {
    byte[] jpeg = peer.compress(noise(4), "-quality", "98");
    byte[] samples = peer.decompress(jpeg, "-dct", "float", "-pnm");
    double[] detail = new double[WIDTH / 8 * (HEIGHT / 8)];
    for (int block = 0; block < detail.length; block++) {
      int from =
          samples.length
              - WIDTH * HEIGHT
              + block / (WIDTH / 8) * 8 * WIDTH
              + block % (WIDTH / 8) * 8;
      detail[block] = fine(samples, from);
    }
    Arrays.sort(detail);

    assertThat(facts(jpeg).focus()).isCloseTo(detail[detail.length * 9 / 10], within(0.5));
  }

  @Test
  void fallsAsThePictureIsBlurred() {
    double sharp = facts(peer.compress(noise(0), "-quality", "92")).focus();
    double soft = facts(peer.compress(noise(2), "-quality", "92")).focus();
    double blurred = facts(peer.compress(noise(8), "-quality", "92")).focus();

    assertThat(sharp).isGreaterThan(1.5 * soft);
    assertThat(soft).isGreaterThan(1.5 * blurred);
  }

  @ParameterizedTest
  @EnumSource(Turn.class)
  void isTheSameHoweverThePictureIsTurned(Turn turn) {
    byte[] jpeg = peer.compress(Peer.picture(150, 113, false, 9), "-sample", "2x1");

    PreviewReading reading = PreviewReading.of(jpeg, 100, turn).orThrow();

    assertThat(reading.facts().focus()).isEqualTo(facts(jpeg).focus());
    // Float sums in another order may round otherwise.
    assertThat(reading.facts().lumaHistogram().stream().mapToInt(n -> n).sum()).isEqualTo(38 * 29);
    assertThat(reading.preview().rgb()).isEqualTo(Preview.of(jpeg, 100, turn).orThrow().rgb());
  }

  @ParameterizedTest
  @EnumSource(Turn.class)
  void givesAllInOnePass(Turn turn) {
    byte[] jpeg = peer.compress(Peer.picture(96, 64, false, 9), "-progressive");
    TranscodePlan plan = new TranscodePlan(turn, new CropBox(16, 16, 32, 32), false);

    PictureReading reading = PictureReading.of(jpeg, plan, 48).orThrow();

    assertThat(reading.picture().bytes())
        .isEqualTo(Transcoder.transcode(jpeg, plan).orThrow().bytes());
    assertThat(reading.preview().rgb()).isEqualTo(Preview.of(jpeg, 48, turn).orThrow().rgb());
    assertThat(reading.facts().darkShare()).isEqualTo(facts(jpeg).darkShare());
  }

  private static PictureFacts facts(byte[] jpeg) {
    return PreviewReading.of(jpeg, 64, Turn.NONE).orThrow().facts();
  }

  private static double fine(byte[] samples, int from) {
    double energy = 0;
    for (int v = 0; v < 8; v++) {
      for (int u = 0; u < 8; u++) {
        if (u + v < 3 || u + v > 6) {
          continue;
        }
        double sum = 0;
        for (int y = 0; y < 8; y++) {
          for (int x = 0; x < 8; x++) {
            sum +=
                (samples[from + y * WIDTH + x] & 0xFF)
                    * Math.cos((2 * x + 1) * u * Math.PI / 16)
                    * Math.cos((2 * y + 1) * v * Math.PI / 16);
          }
        }
        double norm = (u == 0 ? Math.sqrt(0.5) : 1) * (v == 0 ? Math.sqrt(0.5) : 1) / 4;
        energy += norm * sum * norm * sum;
      }
    }
    return Math.sqrt(energy / 64);
  }

  /** Gray noise, averaged with its neighbours so many times. */
  private static byte[] noise(int blurs) {
    Random random = new Random(31);
    double[] values = random.doubles(WIDTH * HEIGHT, 40, 215).toArray();
    for (int i = 0; i < blurs; i++) {
      double[] next = values.clone();
      for (int at = WIDTH + 1; at < values.length - WIDTH - 1; at++) {
        next[at] =
            (4 * values[at]
                    + values[at - 1]
                    + values[at + 1]
                    + values[at - WIDTH]
                    + values[at + WIDTH])
                / 8;
      }
      values = next;
    }
    byte[] samples = new byte[values.length];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = (byte) Math.round(values[i]);
    }
    return pgm(WIDTH, HEIGHT, samples);
  }

  private static byte[] pgm(int width, int height, byte[] samples) {
    String head = "P5\n" + width + " " + height + "\n255\n";
    return Assembled.join(head.getBytes(StandardCharsets.US_ASCII), samples);
  }
}
