package org.vestibule.card;

import java.util.Locale;

/** An address as a QR code (ISO/IEC 18004) for a screen, of middle error correction. */
public final class LinkCode {

  private LinkCode() {}

  /**
   * The dark modules as the path of an SVG drawing.
   *
   * @param path filled shapes, one unit a module, the quiet zone around them included
   * @param side of the drawing in modules, the quiet zone included
   */
  public record Drawing(String path, int side) {}

  /**
   * The code of an address.
   *
   * @throws IllegalStateException if the address is too long for any code
   */
  public static Drawing of(String address) {
    Symbol symbol = Symbol.ofLink(address);
    StringBuilder path = new StringBuilder();
    for (int row = 0; row < symbol.side(); row++) {
      for (int column = 0; column < symbol.side(); column++) {
        int end = column;
        while (end < symbol.side() && symbol.dark(end, row)) {
          end++;
        }
        if (end > column) {
          path.append(
              String.format(
                  Locale.ROOT,
                  "M%d %dh%dv1h-%dz",
                  column + Symbol.QUIET,
                  row + Symbol.QUIET,
                  end - column,
                  end - column));
          column = end;
        }
      }
    }
    return new Drawing(path.toString(), symbol.side() + 2 * Symbol.QUIET);
  }
}
