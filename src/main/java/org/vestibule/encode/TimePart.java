package org.vestibule.encode;

import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import org.vestibule.assign.Visit;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;
import org.vestibule.intake.CaptureFacts;

/**
 * When the photograph was taken (General Acquisition, PS3.3 C.7.10.1; SOP Common, C.12.1). An
 * offset is written only if the photograph has one.
 */
final class TimePart {

  private static final DateTimeFormatter OFFSET = DateTimeFormatter.ofPattern("xx", Locale.ROOT);

  private TimePart() {}

  static void write(DataSet to, AllowedDataSet out, CaptureFacts facts, Visit visit, ZoneId zone) {
    LocalDateTime taken = facts.takenAt();
    if (taken == null) {
      return;
    }
    DataSet allowed = out.require(Tags.AcquisitionDateTime);
    ZoneOffset offset = facts.offset();
    if (offset == null) {
      allowed.put(Tags.AcquisitionDateTime, taken);
    } else {
      allowed.put(Tags.AcquisitionDateTime, taken.atOffset(offset));
    }
    to.put(Tags.ContentDate, taken.toLocalDate()).put(Tags.ContentTime, taken.toLocalTime());
    boolean oneZone = offset != null && zone.getRules().getOffset(visit.start()).equals(offset);
    if (oneZone) {
      out.require(Tags.TimezoneOffsetFromUTC)
          .put(Tags.TimezoneOffsetFromUTC, OFFSET.format(offset));
    }
  }
}
