package org.vestibule.jpeg;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.vestibule.base.Outcome;

/** Photographs that break off: refused with the share that is sound, which can be kept. */
final class SalvageTest {

  private static final int WIDTH = 96;
  private static final int HEIGHT = 160;

  private final Peer peer = new Peer();
  private final byte[] whole =
      peer.compress(Peer.picture(WIDTH, HEIGHT, false, 8), "-sample", "2x2");

  @Test
  void saysHowMuchIsSoundAndKeepsIt() {
    byte[] cut = Arrays.copyOf(whole, whole.length * 6 / 10);

    String reason = reason(Transcoder.transcode(cut, TranscodePlan.AS_IS));
    Salvage kept = Salvage.of(cut).orThrow();

    assertThat(reason).startsWith("the picture's data ends too early, near byte ");
    assertThat(reason)
        .endsWith(
            "; the first "
                + kept.soundRows()
                + " of its 160 rows ("
                + kept.soundRows() * 100 / 160
                + " %) are sound");
    assertThat(kept.soundRows()).isBetween(64, 112);
    assertThat(kept.soundRows() % 16).isZero();
    assertThat(kept.words()).isEqualTo("rows 1 to " + kept.soundRows() + " of 160");
    assertThat(kept.picture().height()).isEqualTo(kept.soundRows());
    assertTopOf(whole, kept);
  }

  /** What the peer makes of the whole photograph's top, coefficient for coefficient. */
  private void assertTopOf(byte[] source, Salvage kept) {
    CropBox top = new CropBox(0, 0, WIDTH, kept.soundRows());
    byte[] expected =
        Transcoder.transcode(source, new TranscodePlan(org.vestibule.base.Turn.NONE, top, false))
            .orThrow()
            .bytes();
    Peer.assertSame(
        Coefficients.decode(kept.picture().bytes()).orThrow(),
        Coefficients.decode(expected).orThrow(),
        "salvaged");
    assertThat(peer.pixels(kept.picture().bytes())).isEqualTo(peer.pixels(expected));
  }

  @ParameterizedTest
  @ValueSource(ints = {64, 1000, 100_000})
  void isNotTakenInByZerosInPlaceOfTheRest(int zeros) {
    int cut = whole.length / 2;
    byte[] filled = Arrays.copyOf(Arrays.copyOf(whole, cut), cut + zeros);

    assertThat(reason(Transcoder.transcode(filled, TranscodePlan.AS_IS))).contains("sound");
    Salvage kept = Salvage.of(filled).orThrow();
    assertThat(kept.soundRows())
        .isEqualTo(Salvage.of(Arrays.copyOf(whole, cut)).orThrow().soundRows());
    assertTopOf(whole, kept);
  }

  @Test
  void keepsWhatStandsAboveADamagedPlace() {
    byte[] source =
        peer.compress(Peer.picture(WIDTH, HEIGHT, false, 8), "-sample", "2x2", "-restart", "1");
    int at = whole.length / 2;
    while (source[at] != (byte) 0xFF || (source[at + 1] & 0xF8) != 0xD0) {
      at++;
    }
    source[at + 1] ^= 1;

    Salvage kept = Salvage.of(source).orThrow();

    assertThat(kept.soundRows()).isBetween(32, 144);
    assertTopOf(whole, kept);
  }

  @Test
  void refusesWhereThereIsNothingToKeep() {
    assertThat(reason(Salvage.of(whole))).isEqualTo("the picture is whole");
    byte[] progressive = peer.compress(Peer.picture(WIDTH, HEIGHT, false, 8), "-progressive");
    assertThat(reason(Salvage.of(Arrays.copyOf(progressive, progressive.length / 2))))
        .isEqualTo("a progressive picture has no sound rows before all of its scans are there");
    int scan = 0;
    for (JpegSegment segment : JpegStructure.read(whole).orThrow().segments()) {
      scan = segment.dataEnd();
    }
    assertThat(reason(Salvage.of(Arrays.copyOf(whole, scan + 40))))
        .startsWith("the picture's data ends too early, near byte ")
        .endsWith("; none of its 160 rows is sound");
  }

  private static String reason(Outcome<?> outcome) {
    assertThat(outcome).isInstanceOf(Outcome.Refused.class);
    return ((Outcome.Refused<?>) outcome).reason();
  }
}
