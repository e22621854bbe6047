package org.vestibule.intake;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * What the camera wrote about a capture (CIPA DC-008 2.32, from memory). Null means that the file
 * doesn't say, or says something impossible; then a warning stands on the photograph.
 *
 * @param takenAt time on the camera's clock (DateTimeOriginal), with the fraction of a second
 * @param offset the clock's offset from UTC, only if the file states it (OffsetTimeOriginal)
 * @param subsecond digits after the decimal point of the second as written
 * @param make maker of the camera
 * @param model model of the camera
 * @param lens model of the lens
 * @param exposureSeconds exposure time in seconds
 * @param fNumber f-number
 * @param iso sensitivity
 * @param focalLengthMm focal length in millimetres
 * @param focalLength35Mm focal length in millimetres that gives the same view on 35 mm film
 * @param flash the Flash value, bit by bit as DC-008 has it; {@link FlashWords} reads it out
 * @param whiteBalance 0 automatic, 1 set by hand
 * @param digitalZoomRatio digital zoom; 1 means none (0 in the file, "unused", is read as 1)
 * @param orientation Orientation, 1 to 8
 * @param frontLens true if the lens names itself as the front one; false is no proof of the rear
 * @param editingTraces what hints that a program changed the picture after the capture
 * @param iccDescription description of the embedded colour profile
 * @param colourSpace ColorSpace: 1 sRGB, 65535 uncalibrated
 * @param exifWidth width in samples as Exif states it
 * @param exifHeight height in samples as Exif states it
 */
public record CaptureFacts(
    @Nullable LocalDateTime takenAt,
    @Nullable ZoneOffset offset,
    @Nullable String subsecond,
    @Nullable String make,
    @Nullable String model,
    @Nullable String lens,
    @Nullable Double exposureSeconds,
    @Nullable Double fNumber,
    @Nullable Integer iso,
    @Nullable Double focalLengthMm,
    @Nullable Integer focalLength35Mm,
    @Nullable Integer flash,
    @Nullable Integer whiteBalance,
    @Nullable Double digitalZoomRatio,
    @Nullable Integer orientation,
    boolean frontLens,
    List<String> editingTraces,
    @Nullable String iccDescription,
    @Nullable Integer colourSpace,
    @Nullable Integer exifWidth,
    @Nullable Integer exifHeight) {

  /** A file that says nothing. */
  public static final CaptureFacts NONE = builder().build();

  public CaptureFacts {
    editingTraces = List.copyOf(editingTraces);
    if (orientation != null && (orientation < 1 || orientation > 8)) {
      throw new IllegalArgumentException("Orientation must be 1 to 8 but was " + orientation);
    }
  }

  /** A builder of facts, at first none. */
  public static CaptureFactsBuilder builder() {
    return new CaptureFactsBuilder();
  }

  /** True if something hints that a program changed the picture after the capture. */
  public boolean edited() {
    return !editingTraces.isEmpty();
  }

  /** Maker and model in a few words, or null; a maker that the model repeats is left out. */
  public @Nullable String camera() {
    if (make == null || model == null) {
      return make == null ? model : make;
    }
    String first = make.split(" ", 2)[0];
    return model.regionMatches(true, 0, first, 0, first.length()) ? model : make + " " + model;
  }

  /** The moment of the capture if the file states it fully, or null. */
  public @Nullable Instant moment() {
    return takenAt == null || offset == null ? null : takenAt.toInstant(offset);
  }

  /**
   * What every version of one shot has in common: the time to the fraction and the camera. Empty if
   * there is no fraction, since bursts share a second.
   */
  public Optional<String> shot() {
    boolean fraction = subsecond != null && !subsecond.matches("0*");
    return takenAt == null || model == null || !fraction
        ? Optional.empty()
        : Optional.of("shot " + takenAt + " " + make + " " + model);
  }

  /** What the time means on the clock of a site in this zone. */
  public WallClock clockAt(ZoneId site) {
    if (takenAt == null) {
      return WallClock.NO_TIME;
    }
    List<ZoneOffset> valid = site.getRules().getValidOffsets(takenAt);
    if (offset != null) {
      return valid.contains(offset) ? WallClock.CLEAR : WallClock.OTHER_ZONE;
    }
    return switch (valid.size()) {
      case 0 -> WallClock.SKIPPED;
      case 1 -> WallClock.CLEAR;
      default -> WallClock.DOUBLED;
    };
  }
}
