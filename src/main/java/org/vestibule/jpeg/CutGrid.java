package org.vestibule.jpeg;

import java.util.List;
import java.util.stream.IntStream;
import org.vestibule.base.Outcome;
import org.vestibule.base.Turn;

/**
 * Where the turned picture can be cut without loss: between whole MCUs (ITU-T T.81 A.2.4), and at
 * its own edges.
 *
 * @param across samples from the displayed picture's left edge, ascending
 * @param down samples from its top edge, ascending
 * @param width of the displayed picture in samples
 * @param height of it
 */
public record CutGrid(List<Integer> across, List<Integer> down, int width, int height) {

  public CutGrid {
    across = List.copyOf(across);
    down = List.copyOf(down);
  }

  /**
   * The places in a file's first picture, turned.
   *
   * @param mayTrim true if edge samples that can't be turned may be dropped; otherwise a picture
   *     that has some is refused, as filing its frame would be
   */
  public static Outcome<CutGrid> of(byte[] jpeg, Turn turn, boolean mayTrim) {
    return JpegStructure.read(jpeg).then(structure -> of(structure.frame(), turn, mayTrim));
  }

  private static Outcome<CutGrid> of(JpegFrame frame, Turn turn, boolean mayTrim) {
    try {
      Layout layout = Layout.of(frame, new TranscodePlan(turn, null, mayTrim));
      return Outcome.done(
          new CutGrid(
              places(layout.across()),
              places(layout.down()),
              layout.across().samples(),
              layout.down().samples()));
    } catch (JpegFault fault) {
      return fault.refusal();
    }
  }

  private static List<Integer> places(Axis axis) {
    int whole = (axis.samples() - axis.lost()) / axis.unit();
    IntStream starts = IntStream.rangeClosed(0, whole).map(at -> axis.lost() + at * axis.unit());
    return IntStream.concat(starts, IntStream.of(axis.samples())).distinct().boxed().toList();
  }
}
