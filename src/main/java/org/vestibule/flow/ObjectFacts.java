package org.vestibule.flow;

import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.temporal.ChronoField;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.intake.CaptureFactsBuilder;

/** What an object says that the camera wrote; how the file lay is no longer in it. */
final class ObjectFacts {

  private static final DateTimeFormatter MOMENT =
      new DateTimeFormatterBuilder()
          .appendPattern("uuuuMMddHHmmss")
          .appendFraction(ChronoField.NANO_OF_SECOND, 0, 9, true)
          .toFormatter(Locale.ROOT);

  private ObjectFacts() {}

  /**
   * @throws DateTimeException if the object's time is none
   */
  static CaptureFacts of(DataSet object) {
    CaptureFactsBuilder facts =
        CaptureFacts.builder()
            .make(text(object, Tags.Manufacturer))
            .model(text(object, Tags.ManufacturerModelName))
            .lens(text(object, Tags.LensModel))
            .exposureSeconds(number(object, Tags.ExposureTimeInSeconds))
            .fNumber(number(object, Tags.FNumber))
            .iso(whole(object, Tags.PhotographicSensitivity))
            .focalLengthMm(number(object, Tags.FocalLength))
            .focalLength35Mm(whole(object, Tags.FocalLengthIn35mmFilm))
            .whiteBalance(whole(object, Tags.WhiteBalance))
            .digitalZoomRatio(number(object, Tags.DigitalZoomRatio))
            .flash(flash(object));
    taken(facts, object.string(Tags.AcquisitionDateTime).orElse(""));
    return facts.build();
  }

  private static void taken(CaptureFactsBuilder facts, String moment) {
    if (moment.isEmpty()) {
      return;
    }
    int sign = Math.max(moment.indexOf('+'), moment.indexOf('-'));
    String local = sign < 0 ? moment : moment.substring(0, sign);
    LocalDateTime taken = LocalDateTime.parse(local, MOMENT);
    facts.takenAt(taken);
    if (sign >= 0) {
      facts.offset(ZoneOffset.of(moment.substring(sign)));
    }
    int point = local.indexOf('.');
    if (point >= 0) {
      facts.subsecond(local.substring(point + 1));
    }
  }

  /** The five facts into which Exif's value is taken apart, put together (CIPA DC-008, 0x9209). */
  private static @Nullable Integer flash(DataSet object) {
    Integer fired = whole(object, Tags.FlashFiringStatus);
    Integer returned = whole(object, Tags.FlashReturnStatus);
    Integer mode = whole(object, Tags.FlashMode);
    Integer present = whole(object, Tags.FlashFunctionPresent);
    Integer redEye = whole(object, Tags.FlashRedEyeMode);
    return fired == null || returned == null || mode == null || present == null || redEye == null
        ? null
        : fired | returned << 1 | mode << 3 | present << 5 | redEye << 6;
  }

  private static @Nullable String text(DataSet object, int tag) {
    return object.string(tag).filter(text -> !text.isEmpty()).orElse(null);
  }

  private static @Nullable Double number(DataSet object, int tag) {
    return object.number(tag).isPresent() ? (Double) object.number(tag).getAsDouble() : null;
  }

  private static @Nullable Integer whole(DataSet object, int tag) {
    return object.integer(tag).isPresent() ? (Integer) (int) object.integer(tag).getAsLong() : null;
  }
}
