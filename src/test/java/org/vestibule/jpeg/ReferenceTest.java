package org.vestibule.jpeg;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.vestibule.base.Outcome;
import org.vestibule.base.Turn;

/**
 * The engine against the plain reference that lives in these tests: pictures of one to four
 * components, any sampling factors, scans, tables and restart intervals.
 */
final class ReferenceTest {

  private static final int ROUNDS = Boolean.getBoolean("vestibule.long") ? 2_000 : 25;

  @ParameterizedTest
  @EnumSource(Turn.class)
  void carriesEveryCoefficient(Turn turn) {
    for (int round = 0; round < ROUNDS; round++) {
      long seed = 1000L * turn.name().hashCode() + round;
      Random random = new Random(seed);
      PlainJpeg source = picture(random);
      byte[] jpeg = coder(source, random).code();
      TranscodePlan plan = plan(source, turn, random);

      Outcome<Transcoded> outcome = Transcoder.carry(jpeg, plan);

      if (outcome instanceof Outcome.Refused<Transcoded> refused) {
        assertThat(refused.reason()).as("seed %d", seed).contains("without loss");
        continue;
      }
      Transcoded made = outcome.orThrow();
      PlainJpeg result = ReferenceDecoder.decode(made.bytes());
      assertSame(source, turn, made.effectiveCrop(), result, "seed " + seed);
    }
  }

  /** Both decoders of the engine, and both ways of the proof, agree with the reference. */
  @Test
  void decodesAndProves() {
    for (int round = 0; round < ROUNDS; round++) {
      Random random = new Random(round);
      PlainJpeg source = picture(random);
      byte[] jpeg = coder(source, random).code();
      requireFast(jpeg);

      Coefficients plain = Coefficients.decode(jpeg).orThrow();
      for (int c = 0; c < source.parts().size(); c++) {
        int[][][] blocks = source.parts().get(c).blocks();
        for (int row = 0; row < blocks.length; row++) {
          for (int column = 0; column < blocks[0].length; column++) {
            for (int k = 0; k < 64; k++) {
              int n = Zigzag.natural(k);
              if (plain.value(c, row, column, n / 8, n % 8) != blocks[row][column][k]) {
                throw new AssertionError("seed " + round + " component " + c + " place " + k);
              }
            }
          }
        }
      }
      Turn turn = Turn.ofExif(1 + round % 8);
      TranscodePlan plan = new TranscodePlan(turn, null, true);
      if (Transcoder.carry(jpeg, plan) instanceof Outcome.Done<Transcoded> done
          && source.parts().size() != 3) {
        // Three components without a word are YCbCr on both sides; others are not told apart.
        byte[] made = done.value().bytes();
        assertThat(Proof.inFull(jpeg, plan, made, false)).isInstanceOf(Outcome.Done.class);
        assertThat(Proof.inFull(jpeg, plan, made, true)).isInstanceOf(Outcome.Done.class);
      }
    }
  }

  /** A sound picture that only the plain decoder took would go unnoticed but for the time. */
  static void requireFast(byte[] jpeg) {
    JpegStructure structure = JpegStructure.read(jpeg).orThrow();
    for (boolean transposed : new boolean[] {false, true}) {
      try {
        TokenPicture picture = new TokenPicture(structure, transposed);
        Decoding.decode(jpeg, picture);
        assertThat(picture.planes).hasSameSizeAs(structure.frame().components());
      } catch (JpegFault fault) {
        throw new AssertionError("the fast decoder did not take a sound picture", fault);
      }
    }
  }

  static PlainJpeg picture(Random random) {
    int[][] factors = new int[1 + random.nextInt(4)][];
    for (int i = 0; i < factors.length; i++) {
      factors[i] = new int[] {1 + random.nextInt(4), 1 + random.nextInt(4)};
    }
    return PlainJpeg.random(1 + random.nextInt(90), 1 + random.nextInt(90), factors, random);
  }

  static ReferenceCoder coder(PlainJpeg source, Random random) {
    ReferenceCoder coder = new ReferenceCoder(source);
    int count = source.parts().size();
    coder.ownTables = random.nextBoolean();
    coder.frameMarker = random.nextBoolean() || coder.ownTables ? 0xC1 : 0xC0;
    coder.restartInterval = random.nextInt(3) == 0 ? 1 + random.nextInt(9) : 0;
    coder.fill = random.nextInt(3);
    List<int[]> scans = new ArrayList<>();
    int next = 0;
    while (next < count) {
      int blocks = 0;
      int to = next;
      int limit = 1 + random.nextInt(count);
      while (to < count && to - next < limit) {
        PlainJpeg.Part part = source.parts().get(to);
        blocks += part.horizontal() * part.vertical();
        if (blocks > 10 && to > next) {
          break;
        }
        to++;
      }
      int[] scan = new int[to - next];
      for (int i = 0; i < scan.length; i++) {
        scan[i] = next + i;
      }
      scans.add(scan);
      next = to;
    }
    coder.scans = scans;
    return coder;
  }

  private static TranscodePlan plan(PlainJpeg source, Turn turn, Random random) {
    if (random.nextBoolean()) {
      return new TranscodePlan(turn, null, true);
    }
    int width = turn.swapsAxes() ? source.height() : source.width();
    int height = turn.swapsAxes() ? source.width() : source.height();
    int left = random.nextInt(width);
    int top = random.nextInt(height);
    CropBox crop =
        new CropBox(left, top, 1 + random.nextInt(width - left), 1 + random.nextInt(height - top));
    return new TranscodePlan(turn, crop, true);
  }

  /** Traces every displayed block back by the samples it covers, in 1/12 of a sample. */
  private static void assertSame(
      PlainJpeg source, Turn turn, CropBox kept, PlainJpeg result, String what) {
    assertThat(result.width()).as(what).isEqualTo(kept.width());
    assertThat(result.height()).as(what).isEqualTo(kept.height());
    for (int c = 0; c < source.parts().size(); c++) {
      PlainJpeg.Part from = source.parts().get(c);
      PlainJpeg.Part to = result.parts().get(c);
      boolean single = source.parts().size() == 1;
      int across = single ? 96 : 96 * source.largest(false) / from.horizontal();
      int down = single ? 96 : 96 * source.largest(true) / from.vertical();
      for (int row = 0; row < to.blocks().length; row++) {
        for (int column = 0; column < to.blocks()[0].length; column++) {
          int left = 12 * kept.left() + column * (turn.swapsAxes() ? down : across);
          int top = 12 * kept.top() + row * (turn.swapsAxes() ? across : down);
          int x = turn.swapsAxes() ? top : left;
          int y = turn.swapsAxes() ? left : top;
          boolean mirrorX = turn.swapsAxes() ? turn.flipsVertically() : turn.flipsHorizontally();
          boolean mirrorY = turn.swapsAxes() ? turn.flipsHorizontally() : turn.flipsVertically();
          x = mirrorX ? 12 * source.width() - x - across : x;
          y = mirrorY ? 12 * source.height() - y - down : y;
          int[] stored = from.blocks()[y / down][x / across];
          int[] shown = to.blocks()[row][column];
          for (int k = 0; k < 64; k++) {
            int v = Zigzag.natural(k) / 8;
            int u = Zigzag.natural(k) % 8;
            int place = turn.swapsAxes() ? Zigzag.position(u, v) : k;
            boolean odd =
                (turn.flipsHorizontally() && u % 2 == 1) != (turn.flipsVertically() && v % 2 == 1);
            if (shown[k] != (odd ? -stored[place] : stored[place])
                || to.steps()[k] != from.steps()[place]) {
              throw new AssertionError(
                  what + " component " + c + " block " + row + "," + column + " place " + k);
            }
          }
        }
      }
    }
  }
}
