package org.vestibule.check;

import java.io.ByteArrayOutputStream;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.vestibule.base.Outcome;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Element;
import org.vestibule.dicom.Tags;
import org.vestibule.dicom.TransferSyntax;
import org.vestibule.jpeg.JpegStructure;

/** Whether Pixel Data hold the one picture that the attributes describe (PS3.5 8.2, A.4). */
final class PictureRules {

  private static final String ENCAPSULATION = "PS3.5 A.4";

  private PictureRules() {}

  static void check(DataSet data, TransferSyntax syntax, Findings findings) {
    Optional<Element> pixels = data.element(Tags.PixelData);
    if (pixels.isEmpty() || pixels.get().isEmpty()) {
      return;
    }
    if (syntax.isEncapsulated() != pixels.get().isEncapsulated()) {
      findings.error(
          Tags.PixelData,
          syntax.isEncapsulated()
              ? "must be encapsulated under this transfer syntax"
              : "must not be encapsulated under this transfer syntax",
          ENCAPSULATION);
    } else if (!syntax.isEncapsulated()) {
      plain(data, pixels.get(), findings);
    } else if (syntax.equals(TransferSyntax.JPEG_BASELINE)) {
      baseline(data, pixels.get(), findings);
    } else {
      findings.warning(
          Tags.PixelData,
          "is compressed in a way that is not looked into here: only JPEG Baseline is",
          ENCAPSULATION);
    }
  }

  private static void plain(DataSet data, Element pixels, Findings findings) {
    OptionalLong rows = data.integer(Tags.Rows);
    OptionalLong columns = data.integer(Tags.Columns);
    OptionalLong samples = data.integer(Tags.SamplesPerPixel);
    if (rows.isEmpty() || columns.isEmpty() || samples.isEmpty()) {
      return;
    }
    long bytes =
        Math.multiplyExact(
            Math.multiplyExact(rows.getAsLong(), columns.getAsLong()), samples.getAsLong());
    long even = bytes + (bytes & 1);
    int length = pixels.toByteArray().length;
    if (length != even) {
      findings.error(
          Tags.PixelData, "is " + length + " bytes long instead of " + even, "PS3.5 8.1.1");
    }
  }

  private static void baseline(DataSet data, Element pixels, Findings findings) {
    if (pixels.fragments().size() != 1) {
      findings.warning(
          Tags.PixelData,
          "is cut into " + pixels.fragments().size() + " fragments; one per photograph is safest",
          ENCAPSULATION);
    }
    byte[] table = pixels.offsetTable();
    if (table.length != 0 && (table.length != 4 || !isZero(table))) {
      findings.error(
          Tags.PixelData,
          "has a Basic Offset Table that doesn't point to the one frame",
          ENCAPSULATION);
    }
    if (!data.string(Tags.LossyImageCompression).equals(Optional.of("01"))) {
      findings.error(
          Tags.LossyImageCompression,
          "must be 01, since the picture is JPEG Baseline",
          "PS3.3 C.7.6.1.1.5");
    }
    byte[] stream = joined(pixels.fragments());
    Outcome<JpegStructure> read = JpegStructure.read(stream);
    if (read instanceof Outcome.Refused<JpegStructure> refused) {
      findings.error(
          Tags.PixelData, "is not a readable JPEG (" + refused.reason() + ")", "PS3.5 8.2.1");
      return;
    }
    CodestreamRules.check(data, stream, read.orThrow(), findings);
  }

  private static byte[] joined(List<byte[]> fragments) {
    if (fragments.size() == 1) {
      return fragments.get(0);
    }
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    fragments.forEach(all::writeBytes);
    return all.toByteArray();
  }

  private static boolean isZero(byte[] bytes) {
    for (byte b : bytes) {
      if (b != 0) {
        return false;
      }
    }
    return true;
  }
}
