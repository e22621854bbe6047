package org.vestibule.jpeg;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.base.Turn;

/** One look against the plain ways, which decode for each answer and keep all tokens. */
final class FirstLookTest {

  /** A preview so small that a picture of some hundred samples is looked at quickly. */
  private static final int SMALL = 12;

  private final Peer peer = new Peer();

  private record Seen(
      GrayRaster eighth, GrayRaster quarter, Raster preview, PictureFacts facts, boolean sound) {}

  private static Seen look(byte[] jpeg, int side) {
    return FirstLook.use(
            jpeg,
            side,
            look ->
                new Seen(
                    look.eighth(),
                    look.quarter(1, 2, look.eighth().width() - 1, look.eighth().height()),
                    look.preview(),
                    look.facts(),
                    look.sound() != null))
        .orThrow();
  }

  private static void assertSameAsPlain(byte[] jpeg, int side, String what) {
    Seen seen = look(jpeg, side);
    PreviewReading plain = PreviewReading.of(jpeg, side, Turn.NONE).orThrow();
    assertThat(seen.preview().width()).as(what).isEqualTo(plain.preview().width());
    assertThat(seen.preview().rgb()).as(what).isEqualTo(plain.preview().rgb());
    assertThat(seen.facts()).as(what).isEqualTo(plain.facts());
    GrayRaster eighth = Brightness.use(jpeg, brightness -> brightness.whole(1)).orThrow();
    assertThat(seen.eighth().samples()).as(what).isEqualTo(eighth.samples());
    GrayRaster quarter =
        Brightness.use(
                jpeg, brightness -> brightness.part(2, 1, 2, eighth.width() - 1, eighth.height()))
            .orThrow();
    assertThat(seen.quarter().width()).as(what).isEqualTo(quarter.width());
    assertThat(seen.quarter().samples()).as(what).isEqualTo(quarter.samples());
  }

  @ParameterizedTest
  @CsvSource({
    "1x1, 92",
    "2x2, 92",
    "2x1, 92",
    "1x2, 92",
    "gray, 92",
    "2x2, 100",
    "1x1, 100",
    "2x2, 30"
  })
  void seesWhatThePlainWaysSee(String sampling, int quality) {
    boolean gray = sampling.equals("gray");
    byte[] jpeg =
        peer.compress(
            Peer.picture(203, 149, gray, 7),
            "-quality",
            Integer.toString(quality),
            "-sample",
            gray ? "1x1" : sampling);
    assertThat(QuickLook.suits(JpegStructure.read(jpeg).orThrow(), SMALL)).isTrue();

    assertSameAsPlain(jpeg, SMALL, sampling);
    assertThat(look(jpeg, SMALL).sound()).isTrue();
  }

  /** What the quick look leaves to others: progressive, coarser colours, larger previews. */
  @ParameterizedTest
  @CsvSource({"-progressive, 2x2, 12", "-baseline, 4x1, 12", "-baseline, 2x2, 100"})
  void leavesTheRestToTheTokens(String process, String sampling, int side) {
    byte[] jpeg = peer.compress(Peer.picture(203, 149, false, 7), process, "-sample", sampling);
    assertThat(QuickLook.suits(JpegStructure.read(jpeg).orThrow(), side)).isFalse();

    assertSameAsPlain(jpeg, side, process);
    assertThat(look(jpeg, side).sound()).isEqualTo(process.equals("-baseline"));
  }

  @Test
  void seesTheSameInRandomPictures() {
    long seed = 20261126;
    Random random = new Random(seed);
    String[] samplings = {"1x1", "2x2", "2x1", "1x2"};
    for (int i = 0; i < 40; i++) {
      byte[] jpeg =
          peer.compress(
              Peer.picture(100 + random.nextInt(90), 100 + random.nextInt(90), false, i),
              "-quality",
              Integer.toString(5 + random.nextInt(96)),
              "-sample",
              samplings[random.nextInt(4)],
              "-restart",
              random.nextInt(9) + "B");
      assertSameAsPlain(jpeg, SMALL, "seed " + seed + ", picture " + i);
    }
  }

  @Test
  void refusesWhatIsDamagedInTheWordsOfThePlainWay() {
    byte[] jpeg = peer.compress(Peer.picture(203, 149, false, 7), "-quality", "92");
    long seed = 5;
    Random random = new Random(seed);
    int refused = 0;
    for (int i = 0; i < 200; i++) {
      byte[] spoilt = jpeg.clone();
      spoilt[700 + random.nextInt(spoilt.length - 702)] ^= (byte) (1 << random.nextInt(8));
      Outcome<JpegStructure> plain = SoundScan.check(spoilt);
      Outcome<JpegStructure> seen = FirstLook.use(spoilt, SMALL, FirstLook::structure);
      assertThat(seen.getClass()).as("seed %d, file %d", seed, i).isEqualTo(plain.getClass());
      if (plain instanceof Refused<JpegStructure> fault) {
        refused++;
        assertThat(((Refused<JpegStructure>) seen).sentence()).isEqualTo(fault.sentence());
      }
    }
    assertThat(refused).isGreaterThan(20);
  }

  @Test
  void knownSoundBytesAreKeptAsIfTheyWereReadAgain() {
    byte[] jpeg = peer.compress(Peer.picture(203, 149, false, 7), "-quality", "92");
    SoundScan sound = FirstLook.use(jpeg, SMALL, FirstLook::sound).orThrow();
    TranscodePlan turned = TranscodePlan.turned(Turn.ROTATE_180);

    Transcoded kept = Transcoder.transcode(jpeg, TranscodePlan.AS_IS, sound).orThrow();

    assertThat(kept.bytes())
        .isEqualTo(Transcoder.transcode(jpeg, TranscodePlan.AS_IS).orThrow().bytes());
    assertThat(Transcoder.transcode(jpeg, TranscodePlan.AS_IS, null).orThrow().bytes())
        .isEqualTo(kept.bytes());
    TranscodePlan trimmed = new TranscodePlan(turned.turn(), null, true);
    assertThat(Transcoder.transcode(jpeg, trimmed, sound).orThrow().bytes())
        .isEqualTo(Transcoder.transcode(jpeg, trimmed).orThrow().bytes());
  }

  /** What was said of one file says nothing of a file of another length. */
  @Test
  void soundnessIsNotTakenOverByOtherBytes() {
    byte[] jpeg = peer.compress(Peer.picture(203, 149, false, 7), "-quality", "92");
    SoundScan sound = FirstLook.use(jpeg, SMALL, FirstLook::sound).orThrow();
    byte[] cut = java.util.Arrays.copyOf(jpeg, jpeg.length - 400);

    assertThat(Transcoder.transcode(cut, TranscodePlan.AS_IS, sound)).isInstanceOf(Refused.class);
  }
}
