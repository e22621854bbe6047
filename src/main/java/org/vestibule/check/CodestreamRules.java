package org.vestibule.check;

import java.util.Set;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;
import org.vestibule.jpeg.CodingProcess;
import org.vestibule.jpeg.ColourModel;
import org.vestibule.jpeg.JpegFrame;
import org.vestibule.jpeg.JpegSegment;
import org.vestibule.jpeg.JpegStructure;

/**
 * Whether the JPEG codestream is the baseline picture that the attributes describe (PS3.5 8.2.1,
 * ITU-T T.81 annex B), and carries nothing else.
 */
final class CodestreamRules {

  private static final String SECTION = "PS3.5 8.2.1";
  private static final String PRIVACY = "PS3.15 E.1";
  private static final int SAMPLE_BITS = 8;

  /** SOF0, DHT, SOS, DQT, DRI: what a baseline picture is made of (T.81 Table B.1). */
  private static final Set<Integer> PICTURE_MARKERS = Set.of(0xC0, 0xC4, 0xDA, 0xDB, 0xDD);

  private CodestreamRules() {}

  static void check(DataSet data, byte[] stream, JpegStructure jpeg, Findings findings) {
    frame(data, jpeg.frame(), findings);
    colour(data, jpeg.colourModel(), findings);
    for (JpegSegment segment : jpeg.segments()) {
      segment(segment, findings);
    }
    if (jpeg.endMarkerMissing()) {
      findings.error(Tags.PixelData, "holds a picture without an end: it may be cut", SECTION);
    }
    trailing(stream, jpeg.pictureEndBytes(), findings);
  }

  private static void frame(DataSet data, JpegFrame frame, Findings findings) {
    if (frame.process() != CodingProcess.BASELINE || frame.precisionBits() != SAMPLE_BITS) {
      findings.error(
          Tags.PixelData,
          "is " + frame.process().words() + " JPEG; this transfer syntax holds 8-bit baseline",
          SECTION);
    }
    equal(data, Tags.Rows, frame.size().height(), "is the frame's height", findings);
    equal(data, Tags.Columns, frame.size().width(), "is the frame's width", findings);
    equal(
        data,
        Tags.SamplesPerPixel,
        frame.components().size(),
        "is the frame's number of components",
        findings);
  }

  private static void equal(DataSet data, int tag, int actual, String what, Findings findings) {
    if (data.integer(tag).isPresent() && data.integer(tag).getAsLong() != actual) {
      findings.error(tag, "differs from the picture: " + actual + " " + what, SECTION);
    }
  }

  private static void colour(DataSet data, ColourModel model, Findings findings) {
    String expected =
        switch (model) {
          case GRAY -> "MONOCHROME2";
          case YCBCR -> "YBR_FULL_422";
          case RGB -> "RGB";
          default -> "";
        };
    if (expected.isEmpty()) {
      findings.error(
          Tags.PixelData, "holds a picture whose colours no DICOM label describes", SECTION);
    } else if (data.string(Tags.PhotometricInterpretation)
        .filter(s -> !s.equals(expected))
        .isPresent()) {
      findings.error(
          Tags.PhotometricInterpretation,
          "doesn't fit the picture's components, which are " + expected,
          SECTION);
    }
  }

  private static void segment(JpegSegment segment, Findings findings) {
    int marker = segment.marker();
    boolean application = marker >= 0xE0 && marker <= 0xEF;
    if (application || marker == 0xFE) {
      findings.error(
          Tags.PixelData,
          "still carries "
              + segment.name()
              + " at byte "
              + segment.offsetBytes()
              + " of the picture: what the camera or an editor wrote may be in it",
          PRIVACY);
    } else if (!PICTURE_MARKERS.contains(marker) && !isFrame(marker)) {
      findings.error(
          Tags.PixelData,
          "holds " + segment.name() + ", which baseline JPEG has no use for",
          SECTION);
    }
  }

  /** Another frame header is reported as such by its process. */
  private static boolean isFrame(int marker) {
    return marker >= 0xC1 && marker <= 0xCF && marker != 0xC8 && marker != 0xCC;
  }

  private static void trailing(byte[] stream, long end, Findings findings) {
    long left = stream.length - end;
    boolean padding = left == 1 && stream[stream.length - 1] == 0;
    if (left > 0 && !padding) {
      findings.error(
          Tags.PixelData,
          "holds "
              + left
              + " bytes after the picture's end: a second picture or a film may hide there",
          PRIVACY);
    }
  }
}
