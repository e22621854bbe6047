package org.vestibule.jpeg;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.vestibule.base.Outcome;
import org.vestibule.base.Turn;

/** Crops, with and without a turn, against libjpeg-turbo's jpegtran; refusals by their words. */
final class CropPeerTest {

  private static final int WIDTH = 101;
  private static final int HEIGHT = 75;

  private final Peer peer = new Peer();

  @ParameterizedTest
  @ValueSource(strings = {"gray", "1x1", "2x1", "2x2", "1x2", "2x2 progressive"})
  void cropsAsThePeerDoes(String sampling) {
    byte[] source = source(sampling);
    long seed = sampling.hashCode();
    Random random = new Random(seed);
    for (Turn turn : Turn.values()) {
      int width = turn.swapsAxes() ? HEIGHT : WIDTH;
      int height = turn.swapsAxes() ? WIDTH : HEIGHT;
      int rounds = Boolean.getBoolean("vestibule.long") ? 50 : 2;
      for (int round = 0; round < rounds; round++) {
        int left = 16 + random.nextInt(width - 16);
        int top = 16 + random.nextInt(height - 16);
        CropBox crop =
            new CropBox(
                left, top, 1 + random.nextInt(width - left), 1 + random.nextInt(height - top));
        String what = sampling + " " + turn + " " + crop + " seed " + seed;
        byte[] theirs = peer.transform(source, options(source, turn, crop, width, height));
        TranscodePlan plan = new TranscodePlan(turn, crop, false);

        Transcoded ours = Transcoder.transcode(source, plan).orThrow();

        Peer.assertSame(
            Coefficients.decode(ours.bytes()).orThrow(),
            Coefficients.decode(theirs).orThrow(),
            what);
        assertThat(peer.pixels(ours.bytes())).as(what).isEqualTo(peer.pixels(theirs));
        assertThat(ours.effectiveCrop().right()).as(what).isEqualTo(crop.right());
        assertThat(ours.effectiveCrop().bottom()).as(what).isEqualTo(crop.bottom());
        assertThat(ours.trimmedColumns() + ours.trimmedRows()).as(what).isZero();
        assertThat(Proof.of(source, plan, ours.bytes()).orThrow().kept())
            .as(what)
            .isEqualTo(ours.effectiveCrop());
      }
    }
  }

  /** The peer counts from the first whole block of a mirrored axis, we from the picture's edge. */
  private static List<String> options(
      byte[] source, Turn turn, CropBox crop, int width, int height) {
    JpegFrame frame = JpegStructure.read(source).orThrow().frame();
    int across = turn.swapsAxes() ? frame.unitHeight() : frame.unitWidth();
    int down = turn.swapsAxes() ? frame.unitWidth() : frame.unitHeight();
    int left = crop.left() - (turn.flipsHorizontally() ? width % across : 0);
    int top = crop.top() - (turn.flipsVertically() ? height % down : 0);
    List<String> options = Peer.options(turn);
    options.add("-crop");
    options.add(crop.width() + "x" + crop.height() + "+" + left + "+" + top);
    return options;
  }

  @Test
  void snapsOutwardAndSaysSo() {
    Transcoded ours =
        Transcoder.transcode(
                source("2x2"), new TranscodePlan(Turn.NONE, new CropBox(20, 40, 30, 9), false))
            .orThrow();

    assertThat(ours.effectiveCrop()).isEqualTo(new CropBox(16, 32, 34, 17));
    assertThat(ours.width()).isEqualTo(34);
    assertThat(ours.height()).isEqualTo(17);
  }

  /** The array of coefficients is used again: what a crop does not take must be forgotten too. */
  @Test
  void leavesNothingOfAProgressivePictureForTheNext() {
    byte[] full =
        peer.compress(Peer.picture(WIDTH, HEIGHT, false, 7), "-quality", "100", "-progressive");
    byte[] next =
        peer.compress(Peer.picture(WIDTH, HEIGHT, false, 8), "-quality", "60", "-progressive");
    CropBox corner = new CropBox(0, 0, 16, 16);

    Transcoder.transcode(full, new TranscodePlan(Turn.NONE, corner, false)).orThrow();
    byte[] result = Transcoder.transcode(next, TranscodePlan.AS_IS).orThrow().bytes();

    Peer.assertSame(
        Coefficients.decode(result).orThrow(), Coefficients.decode(next).orThrow(), "the next");
  }

  /** The blocks that fill up the last MCU must not show what was cropped away. */
  @Test
  void fillsUpWithoutTakingFromTheSource() {
    byte[] result =
        Transcoder.transcode(
                source("2x2"), new TranscodePlan(Turn.NONE, new CropBox(16, 16, 8, 8), false))
            .orThrow()
            .bytes();

    ComponentBlocks brightness = Coefficients.decode(result).orThrow().components().get(0);
    short[] shown = brightness.values;
    for (int block = 1; block < 4; block++) {
      assertThat(shown[64 * block]).as("block %d", block).isEqualTo(shown[0]);
      for (int i = 1; i < 64; i++) {
        assertThat(shown[64 * block + i]).as("block %d, %d", block, i).isZero();
      }
    }
  }

  @Test
  void startsBlocksOfAMirroredPictureWhereTheyAre() {
    // 101 columns are six blocks of 16 and 5 columns; mirrored, those 5 come first.
    Transcoded ours =
        Transcoder.transcode(
                source("2x2"),
                new TranscodePlan(Turn.FLIP_HORIZONTAL, new CropBox(22, 0, 10, 75), false))
            .orThrow();

    assertThat(ours.effectiveCrop()).isEqualTo(new CropBox(21, 0, 11, 75));
  }

  @Test
  void countsWhatTrimmingDrops() {
    byte[] source = source("2x2");

    Transcoded whole =
        Transcoder.transcode(source, new TranscodePlan(Turn.ROTATE_180, null, true)).orThrow();
    Transcoded cropped =
        Transcoder.transcode(
                source, new TranscodePlan(Turn.ROTATE_180, new CropBox(2, 60, 50, 10), true))
            .orThrow();

    assertThat(whole.effectiveCrop()).isEqualTo(new CropBox(5, 11, 96, 64));
    assertThat(whole.trimmedColumns()).isEqualTo(5);
    assertThat(whole.trimmedRows()).isEqualTo(11);
    assertThat(cropped.effectiveCrop()).isEqualTo(new CropBox(5, 59, 47, 11));
    assertThat(cropped.trimmedColumns()).isEqualTo(3);
    assertThat(cropped.trimmedRows()).isZero();
  }

  @Test
  void refusesWhatCannotBeTurnedWhole() {
    assertThat(refusal(new TranscodePlan(Turn.FLIP_HORIZONTAL, null, false)))
        .isEqualTo(
            "the picture can't be turned whole without loss: it is 101 samples wide as shown, not a"
                + " multiple of 16: allow trimming to drop the first 5 columns of the turned"
                + " picture, or crop them away");
    assertThat(refusal(new TranscodePlan(Turn.TRANSVERSE, null, false)))
        .isEqualTo(
            "the picture can't be turned whole without loss: it is 75 samples wide as shown, not a"
                + " multiple of 16 and 101 samples high as shown, not a multiple of 16: allow"
                + " trimming to drop the first 11 columns and the first 5 rows of the turned"
                + " picture, or crop them away");
    assertThat(refusal(new TranscodePlan(Turn.FLIP_HORIZONTAL, new CropBox(0, 0, 4, 9), true)))
        .isEqualTo(
            "none of the 4 columns can be turned without loss: they lie in an edge block narrower"
                + " than 16: keep the photo as it was taken, or choose a larger crop");
    assertThat(refusal(new TranscodePlan(Turn.NONE, new CropBox(90, 0, 12, 9), false)))
        .isEqualTo(
            "the crop of 12 x 9 at 90, 0 reaches outside the displayed picture of 101 x 75: give a"
                + " crop inside the picture");
  }

  private String refusal(TranscodePlan plan) {
    Outcome<Transcoded> outcome = Transcoder.transcode(source("2x2"), plan);
    assertThat(outcome).isInstanceOf(Outcome.Refused.class);
    return ((Outcome.Refused<Transcoded>) outcome).sentence();
  }

  private byte[] source(String sampling) {
    boolean gray = sampling.equals("gray");
    byte[] picture = Peer.picture(WIDTH, HEIGHT, gray, 7);
    List<String> options = new ArrayList<>(List.of("-quality", "90"));
    if (!gray) {
      options.addAll(List.of("-sample", sampling.substring(0, 3)));
    }
    if (sampling.endsWith("progressive")) {
      options.add("-progressive");
    }
    return peer.compress(picture, options.toArray(new String[0]));
  }
}
