package org.vestibule.encode;

import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;
import org.vestibule.intake.CaptureFacts;

/**
 * What the camera tells, by the allow-list in {@code camera-facts.csv}: General Equipment (PS3.3
 * C.7.5.1), VL Photographic Equipment and Acquisition (C.8.12.10, C.8.12.11).
 */
final class CameraPart {

  private CameraPart() {}

  static void write(DataSet to, AllowedDataSet out, CaptureFacts facts) {
    to.putEmpty(Tags.Manufacturer);
    out.text(Tags.Manufacturer, facts.make());
    out.text(Tags.ManufacturerModelName, facts.model());
    out.text(Tags.LensModel, facts.lens());
    out.number(Tags.ExposureTimeInSeconds, facts.exposureSeconds());
    out.number(Tags.FNumber, facts.fNumber());
    out.whole(Tags.PhotographicSensitivity, facts.iso());
    out.number(Tags.FocalLength, facts.focalLengthMm());
    out.whole(Tags.FocalLengthIn35mmFilm, facts.focalLength35Mm());
    out.whole(Tags.WhiteBalance, facts.whiteBalance());
    out.number(Tags.DigitalZoomRatio, facts.digitalZoomRatio());
    FlashPart.write(out, facts.flash());
  }
}
