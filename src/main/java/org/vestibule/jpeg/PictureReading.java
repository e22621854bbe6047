package org.vestibule.jpeg;

import org.vestibule.base.Outcome;

/**
 * Everything that one pass over a photograph's bytes gives.
 *
 * @param picture the bare picture, turned and cropped without loss
 * @param preview the whole photograph small, turned as the picture is
 * @param facts what the whole photograph's coefficients say
 */
public record PictureReading(Transcoded picture, Raster preview, PictureFacts facts) {

  /**
   * Decodes a file's first picture once and makes all three.
   *
   * @param previewSide the preview's longer side has at most this many pixels, 1 to 4096
   */
  public static Outcome<PictureReading> of(byte[] source, TranscodePlan plan, int previewSide) {
    Preview.requireSide(previewSide);
    try {
      return Outcome.done(
          Decoding.use(
              source,
              plan.turn().swapsAxes(),
              picture -> {
                Transcoder.requireShown(picture.structure.colourModel());
                return new PictureReading(
                    Transcoder.transcode(source, picture, plan),
                    Preview.of(picture, previewSide, plan.turn()),
                    FactsReader.read(picture));
              }));
    } catch (JpegFault fault) {
      return fault.refusal();
    }
  }
}
