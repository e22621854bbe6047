package org.vestibule.jpeg;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.vestibule.base.Outcome;

/** Spoilt files end in a refusal or in a result that can be proved, never in an exception. */
final class MutationTest {

  private static final long SEED = 8421;
  private static final int ROUNDS = 2_000;

  @Test
  void survivesSpoiltFiles() {
    Peer peer = new Peer();
    byte[] colour = Peer.picture(40, 32, false, 1);
    List<byte[]> sources =
        List.of(
            peer.compress(colour, "-restart", "2B"),
            peer.compress(colour, "-progressive"),
            peer.compress(Peer.picture(40, 32, true, 2), "-progressive"),
            Assembled.plain(40, 32));
    Random random = new Random(SEED);
    int proved = 0;
    int refused = 0;
    for (int round = 0; round < ROUNDS; round++) {
      byte[] spoilt = Spoiler.spoil(sources.get(round % sources.size()), random);
      TranscodePlan plan = Spoiler.plan(random);
      try {
        if (isProved(spoilt, plan)) {
          proved++;
        } else {
          refused++;
        }
      } catch (RuntimeException | Error e) {
        throw new AssertionError("seed " + SEED + ", round " + round, e);
      }
    }
    assertThat(proved).as("seed %d", SEED).isGreaterThan(ROUNDS / 20);
    assertThat(refused).as("seed %d", SEED).isGreaterThan(ROUNDS / 5);
  }

  /** True if a picture came of it, which must be proved; else there must be a refusal. */
  static boolean isProved(byte[] spoilt, TranscodePlan plan) {
    Outcome<JpegStructure> structure = JpegStructure.read(spoilt);
    Outcome<Transcoded> result = Transcoder.transcode(spoilt, plan);
    if (result instanceof Outcome.Done<Transcoded> done) {
      assertThat(structure).isInstanceOf(Outcome.Done.class);
      byte[] made = done.value().bytes();
      assertThat(Proof.of(spoilt, plan, made)).isInstanceOf(Outcome.Done.class);
      assertThat(Preview.of(spoilt, 16, plan.turn())).isInstanceOf(Outcome.Done.class);
      assertThat(SoundScan.check(spoilt)).isInstanceOf(Outcome.Done.class);
      return true;
    }
    Outcome.Refused<Transcoded> refused = (Outcome.Refused<Transcoded>) result;
    assertThat(refused.reason()).isNotBlank();
    assertThat(refused.advice()).isNotBlank();
    if (Salvage.of(spoilt) instanceof Outcome.Done<Salvage> part) {
      assertThat(SoundScan.check(part.value().picture().bytes())).isInstanceOf(Outcome.Done.class);
    }
    return false;
  }
}
