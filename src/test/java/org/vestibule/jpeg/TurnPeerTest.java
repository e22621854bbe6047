package org.vestibule.jpeg;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.vestibule.base.Turn;

/**
 * Every turn of every kind of picture against libjpeg-turbo's jpegtran, coefficient for
 * coefficient, and against djpeg, pixel for pixel.
 */
final class TurnPeerTest {

  private static final List<String> SAMPLINGS = List.of("gray", "1x1", "2x1", "2x2", "1x2", "4x1");

  private final Peer peer = new Peer();

  /**
   * A picture to turn.
   *
   * @param sampling of the brightness component, or "gray"
   */
  record Kind(String sampling, boolean progressive, boolean restarts, int width, int height) {

    byte[] make(Peer peer) {
      boolean gray = sampling.equals("gray");
      List<String> options = new ArrayList<>(List.of("-quality", "83"));
      if (!gray) {
        options.addAll(List.of("-sample", sampling));
      }
      if (progressive) {
        options.add("-progressive");
      }
      if (restarts) {
        options.addAll(List.of("-restart", "3B"));
      }
      long seed = 1000L * width + height;
      return peer.compress(Peer.picture(width, height, gray, seed), options.toArray(new String[0]));
    }
  }

  static List<Kind> kinds() {
    List<int[]> sizes = sizes(Boolean.getBoolean("vestibule.long"));
    List<Kind> kinds = new ArrayList<>();
    for (String sampling : SAMPLINGS) {
      for (int i = 0; i < 4; i++) {
        for (int[] size : sizes) {
          kinds.add(new Kind(sampling, i % 2 == 1, i / 2 == 1, size[0], size[1]));
        }
      }
      kinds.add(new Kind(sampling, false, false, 64, 32));
    }
    return kinds;
  }

  /** Every width and every height from 1 to 67 three times, in different company, if asked. */
  private static List<int[]> sizes(boolean everything) {
    if (!everything) {
      return List.of(new int[] {67, 45});
    }
    List<int[]> sizes =
        new ArrayList<>(
            List.of(
                new int[] {67, 45}, new int[] {64, 96}, new int[] {1, 1}, new int[] {255, 129}));
    // 67 is a prime number: multiples of any step visit each height once.
    for (int step : new int[] {1, 5, 29}) {
      for (int width = 1; width <= 67; width++) {
        sizes.add(new int[] {width, 1 + width * step % 67});
      }
    }
    return sizes;
  }

  @ParameterizedTest
  @MethodSource("kinds")
  void turnsAsThePeerDoes(Kind kind) {
    byte[] source = kind.make(peer);
    for (Turn turn : Turn.values()) {
      String what = kind + " " + turn;
      List<String> options = Peer.options(turn);
      options.add("-trim");
      byte[] theirs = peer.transform(source, options);
      FrameSize expected = JpegStructure.read(theirs).orThrow().frame().size();
      if (!fits(kind, turn)) {
        continue;
      }

      Transcoded ours = Transcoder.transcode(source, new TranscodePlan(turn, null, true)).orThrow();

      assertThat(new FrameSize(ours.width(), ours.height())).as(what).isEqualTo(expected);
      Peer.assertSame(
          Coefficients.decode(ours.bytes()).orThrow(), Coefficients.decode(theirs).orThrow(), what);
      assertThat(peer.pixels(ours.bytes())).as(what).isEqualTo(peer.pixels(theirs));
    }
  }

  /** The peer leaves a picture that is one partial MCU wide unturned; we refuse it. */
  private static boolean fits(Kind kind, Turn turn) {
    boolean gray = kind.sampling().equals("gray");
    int across = gray ? 8 : 8 * (kind.sampling().charAt(0) - '0');
    int down = gray ? 8 : 8 * (kind.sampling().charAt(2) - '0');
    boolean flipsStoredWidth = turn.swapsAxes() ? turn.flipsVertically() : turn.flipsHorizontally();
    boolean flipsStoredHeight =
        turn.swapsAxes() ? turn.flipsHorizontally() : turn.flipsVertically();
    return (!flipsStoredWidth || kind.width() >= across)
        && (!flipsStoredHeight || kind.height() >= down);
  }
}
