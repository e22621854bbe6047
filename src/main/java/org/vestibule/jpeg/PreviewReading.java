package org.vestibule.jpeg;

import org.vestibule.base.Outcome;
import org.vestibule.base.Turn;

/**
 * What one pass over a photograph's bytes gives to someone who looks at it.
 *
 * @param preview the photograph small, turned
 * @param facts what its coefficients say
 */
public record PreviewReading(Raster preview, PictureFacts facts) {

  /**
   * Decodes a file's first picture once and makes both.
   *
   * @param maxSide the preview's longer side has at most this many pixels, 1 to 4096
   */
  public static Outcome<PreviewReading> of(byte[] bytes, int maxSide, Turn turn) {
    Preview.requireSide(maxSide);
    try {
      return Outcome.done(
          Decoding.use(
              bytes,
              turn.swapsAxes(),
              picture ->
                  new PreviewReading(
                      Preview.of(picture, maxSide, turn), FactsReader.read(picture))));
    } catch (JpegFault fault) {
      return fault.refusal();
    }
  }
}
