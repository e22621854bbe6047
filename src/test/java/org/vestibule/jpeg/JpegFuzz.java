package org.vestibule.jpeg;

import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.vestibule.base.Outcome;

/**
 * The long run of {@code conformance/long/jpeg-fuzz}: spoilt files without end, each of which must
 * end in a proved picture or in a refusal, within bounded time and the heap that was given.
 */
final class JpegFuzz {

  private static final long SLOW_NANOS = 20_000_000_000L;

  private static final int PREVIEW = 16;

  private JpegFuzz() {}

  /** Takes everything that a look gives. */
  private static int seen(FirstLook look) {
    Raster preview = look.preview();
    PictureWeight weight = look.weight();
    return look.eighth().width()
        + look.facts().hashCode()
        + (preview == null ? 0 : preview.width())
        + (weight == null ? 0 : (int) weight.first());
  }

  /** {@code COUNT SEED}: how many files, and the random numbers to make them from. */
  public static void main(String[] arguments) {
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    int count = Integer.parseInt(arguments[0]);
    long seed = Long.parseLong(arguments[1]);
    List<byte[]> sources = sources();
    int proved = 0;
    int looked = 0;
    long slowest = 0;
    for (int round = 0; round < count; round++) {
      Random random = new Random(seed + round);
      byte[] spoilt = Spoiler.spoil(sources.get(round % sources.size()), random);
      long start = System.nanoTime();
      try {
        proved += MutationTest.isProved(spoilt, Spoiler.plan(random)) ? 1 : 0;
        // What ingest does first with each file: a weight where it looks at it, or a refusal.
        looked +=
            FirstLook.use(spoilt, PREVIEW, true, JpegFuzz::seen) instanceof Outcome.Done<Integer>
                ? 1
                : 0;
      } catch (RuntimeException | Error e) {
        throw new AssertionError("seed " + seed + ", round " + round, e);
      }
      long took = System.nanoTime() - start;
      slowest = Math.max(slowest, took);
      if (took > SLOW_NANOS) {
        throw new AssertionError("seed " + seed + ", round " + round + " took " + took + " ns");
      }
      if ((round + 1) % 50_000 == 0) {
        out.println(
            (round + 1)
                + " files, "
                + proved
                + " proved, "
                + looked
                + " looked at, slowest "
                + slowest / 1_000_000
                + " ms");
      }
    }
    out.println(
        count
            + " files from seed "
            + seed
            + ": "
            + proved
            + " proved, "
            + (count - proved)
            + " refused, "
            + looked
            + " looked at, slowest "
            + slowest / 1_000_000
            + " ms, heap "
            + (Runtime.getRuntime().maxMemory() >> 20)
            + " MB");
  }

  private static List<byte[]> sources() {
    Peer peer = new Peer();
    byte[] colour = Peer.picture(40, 32, false, 1);
    List<byte[]> sources =
        new ArrayList<>(
            List.of(
                peer.compress(colour, "-restart", "2B"),
                peer.compress(colour, "-progressive"),
                peer.compress(colour, "-progressive", "-restart", "1", "-sample", "1x1"),
                peer.compress(colour, "-optimize", "-quality", "100", "-sample", "2x1"),
                peer.compress(Peer.picture(40, 32, true, 2), "-progressive"),
                Assembled.plain(40, 32)));
    for (int i = 0; i < 10; i++) {
      Random random = new Random(i);
      sources.add(ReferenceTest.coder(ReferenceTest.picture(random), random).code());
    }
    return sources;
  }
}
