package org.vestibule.jpeg;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.vestibule.base.Outcome;
import org.vestibule.base.Turn;

/** What weights say against the proof that compares block by block. */
final class WeighedProofTest {

  private final byte[] source = Assembled.plain(48, 32);

  private static boolean holds(byte[] source, TranscodePlan plan, byte[] result) {
    return holds(source, plan, result, null);
  }

  private static boolean holds(
      byte[] source, TranscodePlan plan, byte[] result, PictureWeight known) {
    JpegStructure from = JpegStructure.read(source).orThrow();
    JpegStructure to = JpegStructure.read(result).orThrow();
    ProofFrame frames = new ProofFrame(from, plan.turn(), ExpectedPart.of(from.frame(), plan), to);
    return frames.difference() == null
        && new WeighedProof(source, from, plan.turn(), frames).holds(result, to, known);
  }

  private static PictureWeight weight(byte[] jpeg) throws JpegFault {
    return PictureWeight.of(jpeg, JpegStructure.read(jpeg).orThrow());
  }

  @ParameterizedTest
  @EnumSource(Turn.class)
  void holdForEveryTurnOfItselfAndNoOther(Turn turn) throws JpegFault {
    byte[] result = Transcoder.transcode(source, TranscodePlan.turned(turn)).orThrow().bytes();

    for (Turn claimed : Turn.values()) {
      TranscodePlan plan = TranscodePlan.turned(claimed);
      assertThat(holds(source, plan, result)).as("%s", claimed).isEqualTo(turn == claimed);
      assertThat(holds(source, plan, result, weight(source)))
          .as("%s", claimed)
          .isEqualTo(turn == claimed);
    }
  }

  /** In each component, in its first and its last block, at each frequency. */
  @ParameterizedTest
  @EnumSource(Turn.class)
  void findsOneChangedCoefficientWhereverItIs(Turn turn) throws JpegFault {
    TranscodePlan plan = TranscodePlan.turned(turn);
    byte[] turned = Transcoder.transcode(source, plan).orThrow().bytes();
    PictureWeight known = weight(source);
    for (int component = 0; component < 3; component++) {
      for (int position = 0; position < 64; position++) {
        Coefficients changed = Coefficients.decode(turned).orThrow();
        ComponentBlocks blocks = changed.components().get(component);
        boolean first = position % 2 == 0;
        int row = first ? 0 : blocks.grid.high() - 1;
        int column = first ? 0 : blocks.grid.wide() - 1;
        blocks.values[blocks.base(row, column) + position]++;
        byte[] result =
            Transcoder.transcode(turned, CoefficientTokens.of(changed, false), TranscodePlan.AS_IS)
                .bytes();
        assertThat(holds(source, plan, result, known))
            .as("component %d, position %d", component, position)
            .isFalse();
        assertThat(Proof.of(source, plan, result, known)).isInstanceOf(Outcome.Refused.class);
      }
    }
  }

  @Test
  void findsTwoBlocksThatChangedPlaces() throws JpegFault {
    Coefficients changed = Coefficients.decode(source).orThrow();
    short[] values = changed.components().get(0).values;
    short[] block = Arrays.copyOf(values, 64);
    System.arraycopy(values, 64, values, 0, 64);
    System.arraycopy(block, 0, values, 64, 64);
    byte[] result =
        Transcoder.transcode(source, CoefficientTokens.of(changed, false), TranscodePlan.AS_IS)
            .bytes();

    assertThat(holds(source, TranscodePlan.AS_IS, result)).isFalse();
  }

  /** A value that leaves block i's frequency j and comes to block j's frequency i. */
  @Test
  void findsValuesThatWanderBetweenBlockAndFrequency() throws JpegFault {
    for (int i = 0; i < 24; i++) {
      for (int j = i + 1; j < 24; j++) {
        Coefficients changed = Coefficients.decode(source).orThrow();
        short[] values = changed.components().get(0).values;
        values[i * 64 + j] = (short) (values[i * 64 + j] + 5);
        values[j * 64 + i] = (short) (values[j * 64 + i] - 5);
        byte[] result =
            Transcoder.transcode(source, CoefficientTokens.of(changed, false), TranscodePlan.AS_IS)
                .bytes();
        assertThat(holds(source, TranscodePlan.AS_IS, result)).as("%d, %d", i, j).isFalse();
      }
    }
  }

  /** Cropped and trimmed parts are weighed for themselves, whatever all of the source weighs. */
  @Test
  void agreesWithTheFullProofOnPartsOfPictures() throws JpegFault {
    long seed = 20261127;
    Random random = new Random(seed);
    Peer peer = new Peer();
    String[] samplings = {"1x1", "2x2", "2x1", "1x2"};
    for (int i = 0; i < 60; i++) {
      int width = 60 + random.nextInt(90);
      int height = 60 + random.nextInt(90);
      byte[] jpeg =
          peer.compress(
              Peer.picture(width, height, i % 5 == 0, i),
              "-quality",
              Integer.toString(40 + random.nextInt(61)),
              "-sample",
              i % 5 == 0 ? "1x1" : samplings[random.nextInt(4)],
              "-restart",
              random.nextInt(5) + "B");
      Turn turn = Turn.ofExif(1 + random.nextInt(8));
      CropBox crop = i % 2 == 0 ? null : new CropBox(16, 16, 32, 24);
      TranscodePlan plan = new TranscodePlan(turn, crop, true);
      byte[] result = Transcoder.transcode(jpeg, plan).orThrow().bytes();
      String what = "seed " + seed + ", picture " + i;
      assertThat(Proof.inFull(jpeg, plan, result, false)).as(what).isInstanceOf(Outcome.Done.class);
      assertThat(holds(jpeg, plan, result)).as(what).isTrue();
      assertThat(holds(jpeg, plan, result, weight(jpeg))).as(what).isTrue();
    }
  }

  @Test
  void agreesWithTheFullProofOnSpoiltResults() throws JpegFault {
    long seed = 20261128;
    Random random = new Random(seed);
    TranscodePlan plan = TranscodePlan.turned(Turn.ROTATE_90);
    byte[] jpeg = new Peer().compress(Peer.picture(160, 128, false, 3), "-quality", "90");
    byte[] result = Transcoder.transcode(jpeg, plan).orThrow().bytes();
    PictureWeight known = weight(jpeg);
    int readable = 0;
    for (int i = 0; i < 400; i++) {
      byte[] spoilt = result.clone();
      spoilt[spoilt.length / 4 + random.nextInt(spoilt.length / 2)] ^=
          (byte) (1 << random.nextInt(8));
      Outcome<Proof.Proved> full = Proof.inFull(jpeg, plan, spoilt, false);
      assertThat(Proof.of(jpeg, plan, spoilt, known))
          .as("seed %d, file %d", seed, i)
          .isEqualTo(full);
      readable += Coefficients.decode(spoilt) instanceof Outcome.Done ? 1 : 0;
    }
    assertThat(readable).isGreaterThan(20);
  }

  /** What is known of another picture proves nothing, and does no harm to what is right. */
  @Test
  void doesNotTakeAnothersWeightForItsOwn() throws JpegFault {
    byte[] other = Assembled.plain(32, 48);
    TranscodePlan plan = TranscodePlan.turned(Turn.ROTATE_180);
    byte[] result = Transcoder.transcode(source, plan).orThrow().bytes();
    PictureWeight strange =
        new PictureWeight(source.length, weight(other).first(), 0, weight(source).blocks());

    assertThat(holds(source, plan, result, strange)).isFalse();
    assertThat(Proof.of(source, plan, result, strange)).isInstanceOf(Outcome.Done.class);
    assertThat(Proof.of(other, plan, result, weight(source))).isInstanceOf(Outcome.Refused.class);
  }

  @Test
  void aFirstLookWeighsOnlyWhereItIsAsked() throws JpegFault {
    byte[] jpeg = new Peer().compress(Peer.picture(203, 149, false, 7), "-quality", "92");

    assertThat(FirstLook.use(jpeg, 12, true, FirstLook::weight).orThrow()).isEqualTo(weight(jpeg));
    assertThat(FirstLook.<Boolean>use(jpeg, 12, look -> look.weight() == null).orThrow()).isTrue();
    PictureFacts facts = FirstLook.use(jpeg, 12, FirstLook::facts).orThrow();
    assertThat(FirstLook.use(jpeg, 12, true, FirstLook::facts).orThrow()).isEqualTo(facts);
    Raster preview = FirstLook.use(jpeg, 12, FirstLook::preview).orThrow();
    assertThat(FirstLook.use(jpeg, 12, true, FirstLook::preview).orThrow().rgb())
        .isEqualTo(preview.rgb());
  }
}
