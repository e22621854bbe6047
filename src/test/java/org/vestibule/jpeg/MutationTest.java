package org.vestibule.jpeg;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.vestibule.base.Outcome;
import org.vestibule.base.Turn;

/** Spoilt files end in a refusal or in a result that can be proved, never in an exception. */
final class MutationTest {

  private static final long SEED = 8421;
  private static final int ROUNDS = Boolean.getBoolean("vestibule.long") ? 1_000_000 : 2_000;

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
      byte[] spoilt = spoil(sources.get(round % sources.size()), random);
      TranscodePlan plan = plan(random);
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

  private static boolean isProved(byte[] spoilt, TranscodePlan plan) {
    Outcome<JpegStructure> structure = JpegStructure.read(spoilt);
    Outcome<Transcoded> result = Transcoder.transcode(spoilt, plan);
    if (result instanceof Outcome.Done<Transcoded> done) {
      assertThat(structure).isInstanceOf(Outcome.Done.class);
      assertThat(Proof.of(spoilt, plan, done.value().bytes())).isInstanceOf(Outcome.Done.class);
      assertThat(Preview.of(spoilt, 16, plan.turn())).isInstanceOf(Outcome.Done.class);
      return true;
    }
    Outcome.Refused<Transcoded> refused = (Outcome.Refused<Transcoded>) result;
    assertThat(refused.reason()).isNotBlank();
    assertThat(refused.advice()).isNotBlank();
    return false;
  }

  private static TranscodePlan plan(Random random) {
    Turn turn = Turn.ofExif(1 + random.nextInt(8));
    CropBox crop =
        random.nextInt(3) == 0
            ? new CropBox(random.nextInt(20), random.nextInt(20), 1 + random.nextInt(12), 9)
            : null;
    return new TranscodePlan(turn, crop, random.nextBoolean());
  }

  private static byte[] spoil(byte[] source, Random random) {
    byte[] spoilt = source.clone();
    int changes = 1 + random.nextInt(3);
    for (int i = 0; i < changes; i++) {
      int at = random.nextInt(spoilt.length);
      switch (random.nextInt(6)) {
        case 0 -> spoilt[at] = (byte) random.nextInt(256);
        case 1 -> spoilt[at] ^= (byte) (1 << random.nextInt(8));
        case 2 -> spoilt[at] = (byte) 0xFF;
        case 3 -> spoilt = Arrays.copyOf(spoilt, Math.max(2, at));
        case 4 -> {
          int to = Math.min(spoilt.length, at + 1 + random.nextInt(8));
          spoilt =
              Assembled.join(
                  Arrays.copyOf(spoilt, at), Arrays.copyOfRange(spoilt, to, spoilt.length));
        }
        default -> {
          // Headers matter more than their share of the bytes.
          spoilt[random.nextInt(Math.min(spoilt.length, 700))] = (byte) random.nextInt(256);
        }
      }
      if (spoilt.length == 0) {
        return spoilt;
      }
    }
    return spoilt;
  }
}
