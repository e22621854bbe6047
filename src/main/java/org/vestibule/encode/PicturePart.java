package org.vestibule.encode;

import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;
import org.vestibule.jpeg.Transcoded;

/**
 * The picture itself: Image Pixel (PS3.3 C.7.6.3), VL Image (C.8.12.1), ICC Profile (C.11.15) and
 * the encapsulated codestream (PS3.5 A.4.1) in one fragment.
 */
final class PicturePart {

  private PicturePart() {}

  static void write(DataSet to, Transcoded picture, boolean colour, byte[] profile) {
    byte[] codestream = picture.shared();
    int samples = colour ? 3 : 1;
    to.put(Tags.SamplesPerPixel, samples)
        .put(Tags.PhotometricInterpretation, colour ? "YBR_FULL_422" : "MONOCHROME2")
        .put(Tags.Rows, picture.height())
        .put(Tags.Columns, picture.width())
        .put(Tags.BitsAllocated, 8)
        .put(Tags.BitsStored, 8)
        .put(Tags.HighBit, 7)
        .put(Tags.PixelRepresentation, 0)
        .put(Tags.LossyImageCompression, "01")
        .put(Tags.LossyImageCompressionMethod, "ISO_10918_1")
        .put(Tags.LossyImageCompressionRatio, ratio(picture, samples, codestream.length));
    if (colour) {
      to.put(Tags.PlanarConfiguration, 0);
    }
    if (ProfileHeader.fits(profile, colour)) {
      to.put(Tags.ICCProfile, profile);
    }
    to.putFragmentAsIs(Tags.PixelData, codestream);
  }

  /** Uncompressed over compressed bytes, to two decimals (PS3.3 C.7.6.1.1.5). */
  private static double ratio(Transcoded picture, int samples, int compressedBytes) {
    double uncompressedBytes = (double) picture.width() * picture.height() * samples;
    return Math.round(uncompressedBytes / compressedBytes * 100) / 100.0;
  }
}
