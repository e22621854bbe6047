package org.vestibule.jpeg;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.vestibule.base.Outcome;
import org.vestibule.base.Turn;

/** The proof accepts what is right and finds every single thing that is wrong. */
final class ProofTest {

  private final byte[] source = Assembled.plain(48, 32);

  @ParameterizedTest
  @EnumSource(Turn.class)
  void acceptsEveryTurnOfItselfAndNoOther(Turn turn) {
    byte[] result = Transcoder.transcode(source, TranscodePlan.turned(turn)).orThrow().bytes();

    for (Turn claimed : Turn.values()) {
      Outcome<Proof.Proved> outcome = Proof.of(source, TranscodePlan.turned(claimed), result);
      assertThat(outcome instanceof Outcome.Done)
          .as(turn + " " + claimed)
          .isEqualTo(turn == claimed);
    }
  }

  /** Mirroring a picture of one block moves nothing: only signs change. */
  @Test
  void tellsSignsApartWithAndWithoutDigests() {
    byte[] block = new Peer().compress(Peer.picture(8, 8, true, 5), "-quality", "90");
    TranscodePlan mirrored = TranscodePlan.turned(Turn.FLIP_HORIZONTAL);
    byte[] result = Transcoder.transcode(block, mirrored).orThrow().bytes();

    for (boolean digests : new boolean[] {false, true}) {
      assertThat(Proof.inFull(block, mirrored, result, digests)).isInstanceOf(Outcome.Done.class);
      assertThat(reason(Proof.inFull(block, TranscodePlan.AS_IS, result, digests)))
          .isEqualTo("component 1 differs in block row 0, column 0");
    }
  }

  @Test
  void saysHowMuchItCompared() {
    byte[] result =
        Transcoder.transcode(source, TranscodePlan.turned(Turn.ROTATE_90)).orThrow().bytes();

    // 4:2:0 of 48 x 32: 24 blocks of brightness, 2 x 6 of colour.
    assertThat(Proof.of(source, TranscodePlan.turned(Turn.ROTATE_90), result).orThrow())
        .isEqualTo(new Proof.Proved(36, new CropBox(0, 0, 32, 48)));
  }

  @Test
  void findsOneChangedCoefficient() {
    assertThat(difference(result -> result.components().get(2).values[64 * 5 + 63]++))
        .isEqualTo("component 3 differs in block row 1, column 2");
    assertThat(difference(result -> result.components().get(0).values[0] ^= 1))
        .isEqualTo("component 1 differs in block row 0, column 0");
  }

  /** At each place, in whichever of the two it is, also in a block that is empty but for it. */
  @ParameterizedTest
  @EnumSource(Turn.class)
  void findsOneChangedCoefficientWhereverItIs(Turn turn) {
    TranscodePlan plan = TranscodePlan.turned(turn);
    byte[] turned = Transcoder.transcode(source, plan).orThrow().bytes();
    for (int position = 0; position < 64; position++) {
      for (boolean inSource : new boolean[] {false, true}) {
        for (boolean empty : new boolean[] {false, true}) {
          Coefficients from = Coefficients.decode(source).orThrow();
          Coefficients to = Coefficients.decode(turned).orThrow();
          if (empty) {
            Arrays.fill(from.components().get(0).values, (short) 0);
            Arrays.fill(to.components().get(0).values, (short) 0);
          }
          assertThat(Proof.same(from, plan, to)).isInstanceOf(Outcome.Done.class);
          (inSource ? from : to).components().get(0).values[position]++;
          assertThat(Proof.same(from, plan, to))
              .as("%s, position %d", turn, position)
              .isInstanceOf(Outcome.Refused.class);
        }
      }
    }
  }

  @Test
  void findsOneChangedQuantisationStep() {
    assertThat(difference(result -> result.components().get(1).quantisation[63]++))
        .isEqualTo("component 2 has another quantisation step at 7, 7");
  }

  @Test
  void findsAnotherSizeSamplingOrColour() {
    assertThat(against(Assembled.plain(47, 32)))
        .isEqualTo("it is 47 x 32 samples, 48 x 32 were expected");
    assertThat(against(Assembled.withComponentIds(Assembled.withoutJfif(source), 'R', 'G', 'B')))
        .isEqualTo("its colours are RGB components, YCbCr was expected");
  }

  @Test
  void findsWhatDoesNotBelongInAResult() {
    assertThat(reason(Proof.of(source, TranscodePlan.AS_IS, source)))
        .isEqualTo("it still carries a JFIF header");
    byte[] bare = Transcoder.transcode(source, TranscodePlan.AS_IS).orThrow().bytes();
    assertThat(reason(Proof.of(source, TranscodePlan.AS_IS, Assembled.join(bare, bare))))
        .isEqualTo("it does not end with its picture");
  }

  private String difference(Consumer<Coefficients> spoil) {
    Coefficients result = Coefficients.decode(source).orThrow();
    spoil.accept(result);
    return reason(Proof.same(Coefficients.decode(source).orThrow(), TranscodePlan.AS_IS, result));
  }

  private String against(byte[] other) {
    return reason(
        Proof.same(
            Coefficients.decode(source).orThrow(),
            TranscodePlan.AS_IS,
            Coefficients.decode(other).orThrow()));
  }

  private static String reason(Outcome<Proof.Proved> outcome) {
    assertThat(outcome).isInstanceOf(Outcome.Refused.class);
    return ((Outcome.Refused<Proof.Proved>) outcome)
        .reason()
        .replace("the result is not the source's picture: ", "");
  }
}
