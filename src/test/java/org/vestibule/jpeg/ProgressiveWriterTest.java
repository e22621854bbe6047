package org.vestibule.jpeg;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.vestibule.base.Outcome;
import org.vestibule.base.Turn;

/**
 * Progressive pictures so high that the Huffman tables are made from some of their rows, against
 * libjpeg-turbo's jpegtran; and values in the rows between that no baseline picture can carry
 * (ITU-T T.81 Tables F.1 and F.2).
 */
final class ProgressiveWriterTest {

  private static final int BLOCKS = 64;

  /** A row of blocks that is passed over when symbols are counted: 64 rows, each fifth counted. */
  private static final int PASSED_OVER = 3;

  private final Peer peer = new Peer();

  @ParameterizedTest
  @EnumSource(
      value = Turn.class,
      names = {"NONE", "FLIP_HORIZONTAL", "FLIP_VERTICAL", "ROTATE_180"})
  void writesAHighPictureAsThePeerDoes(Turn turn) {
    byte[] source = high("1x1");

    byte[] ours = Transcoder.transcode(source, TranscodePlan.turned(turn)).orThrow().bytes();

    Peer.assertSame(
        Coefficients.decode(ours).orThrow(),
        Coefficients.decode(peer.transform(source, Peer.options(turn))).orThrow(),
        turn.toString());
  }

  /**
   * The tables fit the whole picture nearly as well as those that the peer makes from all of it.
   */
  @Test
  void takesHardlyMoreBytesThanTheBestTables() {
    byte[] source = high("2x2");

    int ours = Transcoder.transcode(source, TranscodePlan.AS_IS).orThrow().bytes().length;

    int best = peer.transform(source, List.of("-optimize", "-copy", "none")).length;
    assertThat(ours).isBetween(best - 64, best + best / 50);
  }

  private static String refusal(byte[] jpeg) {
    Outcome<Transcoded> made = Transcoder.transcode(jpeg, TranscodePlan.AS_IS);
    assertThat(made).isInstanceOf(Outcome.Refused.class);
    return ((Outcome.Refused<Transcoded>) made).reason();
  }

  private byte[] high(String sampling) {
    return peer.compress(
        Peer.picture(96, 800, false, 5), "-quality", "85", "-progressive", "-sample", sampling);
  }

  @ParameterizedTest
  @ValueSource(ints = {0, PASSED_OVER})
  void refusesAnAcValueThatABaselinePictureCannotCarry(int block) {
    assertThat(refusal(picture(0, 11, block)))
        .isEqualTo(
            "the picture holds a value of 11 bits, more than the 10 that a baseline JPEG can"
                + " carry");
  }

  @ParameterizedTest
  @ValueSource(ints = {0, PASSED_OVER})
  void refusesADcDifferenceThatABaselinePictureCannotCarry(int block) {
    assertThat(refusal(picture(12, 0, block)))
        .isEqualTo(
            "the picture holds a value of 12 bits, more than the 11 that a baseline JPEG can"
                + " carry");
  }

  @Test
  void writesWhatABaselinePictureCanCarry() {
    byte[] source = picture(11, 10, PASSED_OVER);

    byte[] ours = Transcoder.transcode(source, TranscodePlan.AS_IS).orThrow().bytes();

    Peer.assertSame(
        Coefficients.decode(ours).orThrow(),
        Coefficients.decode(peer.transform(source, List.of("-copy", "none"))).orThrow(),
        "largest values");
  }

  /** A picture that was refused half-way leaves its values behind; the next must not show them. */
  @Test
  void leavesNothingOfARefusedPictureForTheNext() {
    byte[] source = high("1x1");
    byte[] first = Transcoder.transcode(source, TranscodePlan.AS_IS).orThrow().bytes();

    assertThat(refusal(picture(0, 11, PASSED_OVER))).isNotEmpty();

    assertThat(Transcoder.transcode(source, TranscodePlan.AS_IS).orThrow().bytes())
        .isEqualTo(first);
  }

  /**
   * A gray picture of one column of blocks, all of them zero but one.
   *
   * @param dcBits of that block's DC difference, whose bits are all ones; 0 for none
   * @param acBits of its first AC coefficient
   */
  private static byte[] picture(int dcBits, int acBits, int block) {
    byte[] steps = new byte[65];
    Arrays.fill(steps, 1, 65, (byte) 1);
    byte[] frame = Assembled.bytes(8, BLOCKS / 32, 0, 0, 8, 1, 1, 0x11, 0);
    StringBuilder dc = new StringBuilder();
    StringBuilder ac = new StringBuilder();
    for (int i = 0; i < BLOCKS; i++) {
      dc.append(i == block && dcBits > 0 ? "10" + "1".repeat(dcBits) : "0");
      ac.append(i == block && acBits > 0 ? "10" + "1".repeat(acBits) + "0" : "0");
      // The block after it takes the difference back.
      if (i == block + 1 && dcBits > 0) {
        dc.setLength(dc.length() - 1);
        dc.append("10").append("0".repeat(dcBits));
      }
    }
    return Assembled.join(
        Assembled.bytes(0xFF, Markers.SOI & 255),
        Assembled.segment(0xDB, steps),
        Assembled.segment(0xC2, frame),
        Assembled.segment(0xC4, table(0x00, dcBits)),
        Assembled.segment(0xDA, Assembled.bytes(1, 1, 0x00, 0, 0, 0)),
        coded(dc),
        Assembled.segment(0xC4, table(0x10, acBits)),
        Assembled.segment(0xDA, Assembled.bytes(1, 1, 0x00, 1, 63, 0)),
        coded(ac),
        Assembled.bytes(0xFF, 0xD9));
  }

  /** Two symbols: 0 is coded as 0, the other as 10. */
  private static byte[] table(int kind, int other) {
    byte[] table = new byte[17 + 2];
    table[0] = (byte) kind;
    table[1] = 1;
    table[2] = 1;
    table[18] = (byte) Math.max(1, other);
    return table;
  }

  private static byte[] coded(StringBuilder bits) {
    while (bits.length() % 8 != 0) {
      bits.append('1');
    }
    byte[] out = new byte[0];
    for (int i = 0; i < bits.length(); i += 8) {
      int next = Integer.parseInt(bits.substring(i, i + 8), 2);
      out = Assembled.join(out, next == 255 ? Assembled.bytes(255, 0) : Assembled.bytes(next));
    }
    return out;
  }
}
