package org.vestibule.check;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.regex.Pattern;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Element;
import org.vestibule.dicom.Tags;

/** What the image attributes say about each other (PS3.3 C.7.6.1, C.8.12.1, C.11.15). */
final class ImageRules {

  private static final Pattern OFFSET =
      Pattern.compile("(?:\\+(?:0\\d|1[0-4])|-(?:0\\d|1[0-2]))[0-5]\\d");
  private static final int GPS_GROUP = 0x0016;
  private static final int FIRST_GPS = 0x70;
  private static final int LAST_GPS = 0x8F;
  private static final int PROFILE_HEADER_BYTES = 128;
  private static final List<String> PROFILE_CLASSES = List.of("scnr", "mntr", "spac");

  private ImageRules() {}

  static void check(DataSet data, Findings findings) {
    components(data, findings);
    lossy(data, findings);
    derived(data, findings);
    profile(data, findings);
    offset(data, findings);
    position(data, findings);
  }

  private static void components(DataSet data, Findings findings) {
    OptionalLong samples = data.integer(Tags.SamplesPerPixel);
    Optional<String> meaning = data.string(Tags.PhotometricInterpretation);
    if (samples.isEmpty() || meaning.isEmpty()) {
      return;
    }
    boolean gray = meaning.get().equals("MONOCHROME2");
    if (gray != (samples.getAsLong() == 1)) {
      findings.error(
          Tags.PhotometricInterpretation,
          "doesn't fit SamplesPerPixel: 1 goes with MONOCHROME2, 3 with a colour model",
          "PS3.3 C.7.6.3.1.2");
    }
  }

  private static void lossy(DataSet data, Findings findings) {
    int ratios = data.strings(Tags.LossyImageCompressionRatio).size();
    int methods = data.strings(Tags.LossyImageCompressionMethod).size();
    if (ratios != methods && ratios > 0 && methods > 0) {
      findings.warning(
          Tags.LossyImageCompressionRatio,
          "doesn't pair with LossyImageCompressionMethod, value by value",
          "PS3.3 C.7.6.1.1.5");
    }
    boolean never = data.string(Tags.LossyImageCompression).filter("00"::equals).isPresent();
    if (never && ratios + methods > 0) {
      findings.error(
          Tags.LossyImageCompression,
          "says 00 although a lossy ratio or method is given",
          "PS3.3 C.7.6.1.1.5");
    }
  }

  private static void derived(DataSet data, Findings findings) {
    boolean derived = data.string(Tags.ImageType).filter("DERIVED"::equals).isPresent();
    boolean explained =
        data.contains(Tags.DerivationDescription) || data.contains(Tags.DerivationCodeSequence);
    if (derived && !explained) {
      findings.warning(
          Tags.ImageType, "says DERIVED but nothing tells how it was derived", "PS3.3 C.12.4");
    }
    if (derived && data.items(Tags.SourceImageSequence).isEmpty()) {
      findings.warning(Tags.ImageType, "says DERIVED but no source image is named", "PS3.3 C.12.4");
    }
  }

  /** ICC.1 7.2: size, class, colour space and signature of the profile header; from memory. */
  private static void profile(DataSet data, Findings findings) {
    byte[] profile = data.bytes(Tags.ICCProfile);
    if (profile.length == 0) {
      return;
    }
    String fault = profileFault(profile, data.integer(Tags.SamplesPerPixel).orElse(3) == 1);
    if (!fault.isEmpty()) {
      findings.error(Tags.ICCProfile, fault, "PS3.3 C.11.15");
    }
  }

  private static String profileFault(byte[] profile, boolean gray) {
    if (profile.length < PROFILE_HEADER_BYTES || !text(profile, 36).equals("acsp")) {
      return "is not an ICC profile";
    }
    long size =
        Integer.toUnsignedLong(ByteBuffer.wrap(profile).order(ByteOrder.BIG_ENDIAN).getInt(0));
    if (size > profile.length || size < profile.length - 1L) {
      return "is " + profile.length + " bytes long but says " + size;
    }
    if (!PROFILE_CLASSES.contains(text(profile, 12))) {
      return "is not a profile of an input, a display or a colour space";
    }
    return text(profile, 16).equals(gray ? "GRAY" : "RGB ")
        ? ""
        : "is for another colour space than the picture's";
  }

  private static String text(byte[] bytes, int at) {
    return new String(bytes, at, 4, StandardCharsets.US_ASCII);
  }

  private static void offset(DataSet data, Findings findings) {
    Optional<String> offset = data.string(Tags.TimezoneOffsetFromUTC);
    if (offset.isPresent() && !OFFSET.matcher(offset.get()).matches()) {
      findings.error(
          Tags.TimezoneOffsetFromUTC,
          "is not of the form +HHMM or -HHMM, from -1200 to +1400",
          "PS3.3 C.12.1");
    }
  }

  /** The IOD allows a position; a record of a mouth has no need of one. */
  private static void position(DataSet data, Findings findings) {
    for (Element element : data) {
      int number = Tags.element(element.tag());
      if (Tags.group(element.tag()) == GPS_GROUP && number >= FIRST_GPS && number <= LAST_GPS) {
        findings.warning(
            element.tag(), "tells where the photograph was taken; leave it out", "PS3.15 E.1");
      }
    }
  }
}
