package org.vestibule.release;

import java.util.regex.Pattern;
import org.vestibule.assign.Crop;
import org.vestibule.base.Outcome;
import org.vestibule.base.Turn;
import org.vestibule.deid.UidMap;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;
import org.vestibule.encode.Codestream;
import org.vestibule.encode.ReleasePart;
import org.vestibule.jpeg.CropBox;
import org.vestibule.jpeg.JpegFrame;
import org.vestibule.jpeg.JpegStructure;
import org.vestibule.jpeg.TranscodePlan;
import org.vestibule.jpeg.Transcoded;
import org.vestibule.jpeg.Transcoder;

/**
 * Cuts away of a picture what must not leave, without re-encoding a sample. It keeps only blocks
 * that lie whole inside the part that a person named: a block of which a part was to go goes
 * altogether, and so does one that the picture's own edge cuts, since it holds more than is shown.
 */
final class PrivacyCrop {

  /** What the copy says of it; it doesn't say where the part lay. */
  static final Pattern SAID =
      Pattern.compile(
          "Privacy crop to whole blocks, nothing re-encoded: \\d+ x \\d+ samples of the source"
              + " image");

  /** Rounding of fractions such as 0.1 x 640 must not lose a block. */
  private static final double TOLERANCE = 1e-6;

  private PrivacyCrop() {}

  /**
   * The object with a part of its picture, about which a named person said that it shows no face.
   *
   * @param crop fractions of the object's own picture
   * @param name the photograph's, for a refusal
   */
  static Outcome<DataSet> of(DataSet data, Crop crop, UidMap uids, String name) {
    return Codestream.of(data)
        .then(
            jpeg ->
                JpegStructure.read(jpeg)
                    .then(structure -> inside(crop, structure.frame(), name))
                    .then(
                        box ->
                            Transcoder.transcode(jpeg, new TranscodePlan(Turn.NONE, box, false))))
        .map(picture -> written(data.copy(), picture, uids));
  }

  /** The whole blocks inside the part. */
  private static Outcome<CropBox> inside(Crop crop, JpegFrame frame, String name) {
    int left = first(crop.left() * frame.size().width(), frame.unitWidth());
    int top = first(crop.top() * frame.size().height(), frame.unitHeight());
    int width = end(crop.right() * frame.size().width(), frame.unitWidth()) - left;
    int height = end(crop.bottom() * frame.size().height(), frame.unitHeight()) - top;
    if (width < 1 || height < 1) {
      return Outcome.refused(
          "the crop of photograph " + name + " holds no whole block of the picture",
          "name a larger part: the picture's blocks are "
              + frame.unitWidth()
              + " x "
              + frame.unitHeight()
              + " samples");
    }
    return Outcome.done(new CropBox(left, top, width, height));
  }

  private static int first(double sample, int unit) {
    return (int) Math.ceil((sample - TOLERANCE) / unit) * unit;
  }

  private static int end(double sample, int unit) {
    return (int) Math.floor((sample + TOLERANCE) / unit) * unit;
  }

  private static DataSet written(DataSet data, Transcoded picture, UidMap uids) {
    String place = picture.width() + " x " + picture.height();
    CropBox box = picture.effectiveCrop();
    String uid = data.string(Tags.SOPInstanceUID).orElseThrow();
    byte[] bytes = picture.bytes();
    double samples =
        (double) picture.width()
            * picture.height()
            * data.integer(Tags.SamplesPerPixel).orElseThrow();
    data.put(
            Tags.SOPInstanceUID,
            uids.substitute(uid + " " + place + " at " + box.left() + ", " + box.top()))
        .put(Tags.ImageType, "DERIVED", "PRIMARY")
        .put(
            Tags.DerivationDescription,
            "Privacy crop to whole blocks, nothing re-encoded: "
                + place
                + " samples of the source image")
        .put(Tags.Columns, picture.width())
        .put(Tags.Rows, picture.height())
        .put(Tags.LossyImageCompressionRatio, Math.round(samples / bytes.length * 100) / 100.0)
        .put(Tags.RecognizableVisualFeatures, "NO")
        .putFragments(Tags.PixelData, bytes);
    data.string(Tags.ImageComments).ifPresent(text -> comment(data, text));
    return data;
  }

  /** What was said of the whole frame is not true of the part. */
  private static void comment(DataSet data, String text) {
    String rest = text.replace(ReleasePart.HOLD_BACK, "").strip();
    if (rest.isEmpty()) {
      data.remove(Tags.ImageComments);
    } else {
      data.put(Tags.ImageComments, rest);
    }
  }
}
