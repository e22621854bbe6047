package org.vestibule.intake;

import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Turns Exif values into capture facts; what is impossible becomes a warning. */
final class FactsReader {

  /** Words by which makers name the lens that faces the user (common practice, no source). */
  private static final Pattern FRONT =
      Pattern.compile("\\b(front|frontal|selfie|user[- ]facing)\\b", Pattern.CASE_INSENSITIVE);

  private static final int ISO_OVERFLOW = 65535;
  private static final double LONGEST_EXPOSURE_SECONDS = 3600;

  private final ExifTags tags;
  private final List<String> warnings;

  private FactsReader(ExifTags tags, List<String> warnings) {
    this.tags = tags;
    this.warnings = warnings;
  }

  /** Facts without editing traces and profile; warnings are added to the list. */
  static CaptureFactsBuilder read(ExifTags tags, List<String> warnings) {
    FactsReader reader = new FactsReader(tags, warnings);
    CaptureFactsBuilder facts = CaptureFacts.builder();
    CaptureTime.read(tags, facts, warnings);
    reader.camera(facts);
    reader.exposure(facts);
    warnings.addAll(tags.warnings());
    return facts;
  }

  private void camera(CaptureFactsBuilder facts) {
    String lens = tags.text(Tag.LENS_MODEL);
    facts
        .make(tags.text(Tag.MAKE))
        .model(tags.text(Tag.MODEL))
        .lens(lens)
        .frontLens(lens != null && FRONT.matcher(lens).find())
        .orientation(orientation())
        .colourSpace(tags.integer(Tag.COLOUR_SPACE))
        .exifWidth(tags.integer(Tag.EXIF_WIDTH))
        .exifHeight(tags.integer(Tag.EXIF_HEIGHT));
  }

  private void exposure(CaptureFactsBuilder facts) {
    Integer focal35 = tags.integer(Tag.FOCAL_LENGTH_35);
    facts
        .exposureSeconds(exposureSeconds())
        .fNumber(fNumber())
        .iso(iso())
        .focalLengthMm(positive(Tag.FOCAL_LENGTH, "focal length"))
        .focalLength35Mm(focal35 == null || focal35 <= 0 ? null : focal35)
        .flash(tags.integer(Tag.FLASH))
        .whiteBalance(tags.integer(Tag.WHITE_BALANCE))
        .digitalZoomRatio(zoom());
  }

  private @Nullable Integer orientation() {
    Integer value = tags.integer(Tag.ORIENTATION);
    if (value == null || (value >= 1 && value <= 8)) {
      return value;
    }
    warnings.add(
        "Exif Orientation is " + value + ", 1 to 8 was expected: the picture is taken as it is");
    return null;
  }

  /** Exposure time, or 2 to the power of minus the APEX time value. */
  private @Nullable Double exposureSeconds() {
    Double seconds = positive(Tag.EXPOSURE_TIME, "exposure time");
    Double apex = tags.number(Tag.SHUTTER_SPEED_VALUE);
    if (seconds == null && apex != null) {
      seconds = Math.pow(2, -apex);
    }
    if (seconds != null && (seconds > LONGEST_EXPOSURE_SECONDS || seconds == 0)) {
      warnings.add("an impossible exposure time was left aside");
      return null;
    }
    return seconds;
  }

  /** F-number, or 2 to the power of half the APEX aperture value. */
  private @Nullable Double fNumber() {
    Double number = positive(Tag.F_NUMBER, "f-number");
    Double apex = tags.number(Tag.APERTURE_VALUE);
    if (number != null || apex == null) {
      return number;
    }
    double from = Math.pow(2, apex / 2);
    return Double.isFinite(from) ? from : null;
  }

  private @Nullable Integer iso() {
    Integer iso = tags.integer(Tag.ISO);
    if (iso != null && iso == ISO_OVERFLOW) {
      Integer index = tags.integer(Tag.RECOMMENDED_EXPOSURE_INDEX);
      Integer output = tags.integer(Tag.STANDARD_OUTPUT_SENSITIVITY);
      iso = index != null ? index : output != null ? output : iso;
    }
    return iso == null || iso <= 0 ? null : iso;
  }

  private @Nullable Double zoom() {
    if (!tags.has(Tag.DIGITAL_ZOOM)) {
      return null;
    }
    if (tags.numeratorIsZero(Tag.DIGITAL_ZOOM)) {
      return 1.0;
    }
    return positive(Tag.DIGITAL_ZOOM, "digital zoom");
  }

  private @Nullable Double positive(int tag, String name) {
    if (!tags.has(tag) || tags.numeratorIsZero(tag)) {
      return null;
    }
    Double value = tags.number(tag);
    if (value == null || value <= 0) {
      warnings.add(
          String.format(
              Locale.ROOT, "an impossible %s (Exif tag 0x%04X) was left aside", name, tag));
      return null;
    }
    return value;
  }
}
