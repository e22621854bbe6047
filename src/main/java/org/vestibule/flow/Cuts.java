package org.vestibule.flow;

import java.util.Comparator;
import java.util.List;
import org.vestibule.base.Turn;
import org.vestibule.jpeg.CutGrid;

/**
 * Where the picture can be cut without loss, as the person sees it who marks the crop.
 *
 * @param across samples from the left edge of the picture on the sheet, ascending
 * @param down samples from its top edge, ascending
 * @param width of the picture on the sheet in samples
 * @param height of it
 */
public record Cuts(List<Integer> across, List<Integer> down, int width, int height) {

  public Cuts {
    across = List.copyOf(across);
    down = List.copyOf(down);
  }

  /**
   * The places of the shown picture, on the sheet.
   *
   * @param further the turn from the picture on the sheet to the shown one
   */
  static Cuts onSheet(CutGrid shown, Turn further) {
    List<Integer> across = flipped(shown.across(), shown.width(), further.flipsHorizontally());
    List<Integer> down = flipped(shown.down(), shown.height(), further.flipsVertically());
    return further.swapsAxes()
        ? new Cuts(down, across, shown.height(), shown.width())
        : new Cuts(across, down, shown.width(), shown.height());
  }

  private static List<Integer> flipped(List<Integer> places, int samples, boolean flips) {
    return flips
        ? places.stream().map(at -> samples - at).sorted(Comparator.naturalOrder()).toList()
        : places;
  }
}
