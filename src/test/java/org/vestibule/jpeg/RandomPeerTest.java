package org.vestibule.jpeg;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.vestibule.base.Outcome;
import org.vestibule.base.Turn;

/** Pictures coded by libjpeg-turbo's cjpeg with random options, turned by us and by jpegtran. */
final class RandomPeerTest {

  private static final int ROUNDS = Boolean.getBoolean("vestibule.long") ? 1_500 : 24;
  private static final long SEED = 1126;
  private static final List<String> SAMPLINGS =
      List.of("1x1", "2x1", "1x2", "2x2", "4x1", "1x4", "4x2", "3x1", "2x2,1x2", "1x1,2x1,1x2");

  private final Peer peer = new Peer();

  @Test
  void turnsAsThePeerDoes() {
    int compared = 0;
    for (int round = 0; round < ROUNDS; round++) {
      Random random = new Random(SEED + round);
      boolean large = random.nextInt(12) == 0;
      int width = 1 + random.nextInt(large ? 700 : 67);
      int height = 1 + random.nextInt(large ? 700 : 67);
      boolean gray = random.nextInt(6) == 0;
      List<String> options = options(random, gray);
      byte[] source =
          peer.compress(Peer.picture(width, height, gray, round), options.toArray(new String[0]));
      ReferenceTest.requireFast(source);
      Turn turn = Turn.ofExif(1 + random.nextInt(8));
      String what =
          "seed " + (SEED + round) + " " + width + "x" + height + " " + turn + " " + options;

      Outcome<Transcoded> outcome =
          Transcoder.transcode(source, new TranscodePlan(turn, null, true));

      if (outcome instanceof Outcome.Refused<Transcoded> refused) {
        // A picture narrower than one MCU, or steps that a baseline picture can't have.
        assertThat(refused.reason()).as(what).containsAnyOf("without loss", "quantisation step");
        continue;
      }
      List<String> theirs = Peer.options(turn);
      theirs.add("-trim");
      Coefficients expected = Coefficients.decode(peer.transform(source, theirs)).orThrow();
      byte[] made = outcome.orThrow().bytes();
      Peer.assertSame(Coefficients.decode(made).orThrow(), expected, what);
      assertThat(Proof.inFull(source, new TranscodePlan(turn, null, true), made, true))
          .as(what)
          .isInstanceOf(Outcome.Done.class);
      compared++;
    }
    assertThat(compared).isGreaterThan(ROUNDS / 2);
  }

  private static List<String> options(Random random, boolean gray) {
    List<String> options = new ArrayList<>();
    options.add("-quality");
    options.add(Integer.toString(20 + random.nextInt(81)));
    if (!gray) {
      options.add("-sample");
      options.add(SAMPLINGS.get(random.nextInt(SAMPLINGS.size())));
    }
    if (random.nextInt(3) == 0) {
      options.add("-progressive");
    } else if (random.nextBoolean()) {
      options.add("-optimize");
    }
    if (random.nextInt(3) == 0) {
      options.add("-restart");
      options.add(1 + random.nextInt(9) + (random.nextBoolean() ? "B" : ""));
    }
    return options;
  }
}
