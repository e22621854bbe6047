package org.vestibule.intake;

import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Collects capture facts one by one. */
public final class CaptureFactsBuilder {

  private @Nullable LocalDateTime takenAt;
  private @Nullable ZoneOffset offset;
  private @Nullable String subsecond;
  private @Nullable String make;
  private @Nullable String model;
  private @Nullable String lens;
  private @Nullable Double exposureSeconds;
  private @Nullable Double fNumber;
  private @Nullable Integer iso;
  private @Nullable Double focalLengthMm;
  private @Nullable Integer focalLength35Mm;
  private @Nullable Integer flash;
  private @Nullable Integer whiteBalance;
  private @Nullable Double digitalZoomRatio;
  private @Nullable Integer orientation;
  private boolean frontLens;
  private List<String> editingTraces = List.of();
  private @Nullable String iccDescription;
  private @Nullable Integer colourSpace;
  private @Nullable Integer exifWidth;
  private @Nullable Integer exifHeight;

  CaptureFactsBuilder() {}

  public CaptureFactsBuilder takenAt(@Nullable LocalDateTime value) {
    takenAt = value;
    return this;
  }

  public CaptureFactsBuilder offset(@Nullable ZoneOffset value) {
    offset = value;
    return this;
  }

  public CaptureFactsBuilder subsecond(@Nullable String value) {
    subsecond = value;
    return this;
  }

  public CaptureFactsBuilder make(@Nullable String value) {
    make = value;
    return this;
  }

  public CaptureFactsBuilder model(@Nullable String value) {
    model = value;
    return this;
  }

  public CaptureFactsBuilder lens(@Nullable String value) {
    lens = value;
    return this;
  }

  public CaptureFactsBuilder exposureSeconds(@Nullable Double value) {
    exposureSeconds = value;
    return this;
  }

  public CaptureFactsBuilder fNumber(@Nullable Double value) {
    fNumber = value;
    return this;
  }

  public CaptureFactsBuilder iso(@Nullable Integer value) {
    iso = value;
    return this;
  }

  public CaptureFactsBuilder focalLengthMm(@Nullable Double value) {
    focalLengthMm = value;
    return this;
  }

  public CaptureFactsBuilder focalLength35Mm(@Nullable Integer value) {
    focalLength35Mm = value;
    return this;
  }

  public CaptureFactsBuilder flash(@Nullable Integer value) {
    flash = value;
    return this;
  }

  public CaptureFactsBuilder whiteBalance(@Nullable Integer value) {
    whiteBalance = value;
    return this;
  }

  public CaptureFactsBuilder digitalZoomRatio(@Nullable Double value) {
    digitalZoomRatio = value;
    return this;
  }

  public CaptureFactsBuilder orientation(@Nullable Integer value) {
    orientation = value;
    return this;
  }

  public CaptureFactsBuilder frontLens(boolean value) {
    frontLens = value;
    return this;
  }

  public CaptureFactsBuilder editingTraces(List<String> value) {
    editingTraces = value;
    return this;
  }

  public CaptureFactsBuilder iccDescription(@Nullable String value) {
    iccDescription = value;
    return this;
  }

  public CaptureFactsBuilder colourSpace(@Nullable Integer value) {
    colourSpace = value;
    return this;
  }

  public CaptureFactsBuilder exifWidth(@Nullable Integer value) {
    exifWidth = value;
    return this;
  }

  public CaptureFactsBuilder exifHeight(@Nullable Integer value) {
    exifHeight = value;
    return this;
  }

  /** The facts collected so far. */
  public CaptureFacts build() {
    return new CaptureFacts(
        takenAt,
        offset,
        subsecond,
        make,
        model,
        lens,
        exposureSeconds,
        fNumber,
        iso,
        focalLengthMm,
        focalLength35Mm,
        flash,
        whiteBalance,
        digitalZoomRatio,
        orientation,
        frontLens,
        editingTraces,
        iccDescription,
        colourSpace,
        exifWidth,
        exifHeight);
  }
}
