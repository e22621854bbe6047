package org.vestibule.deid;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Map;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;
import org.vestibule.dicom.Vr;

/**
 * A mark for an attribute: a valid value of its representation that occurs nowhere else.
 *
 * @param tag the attribute; of a repeating group one of its members
 * @param vr as the table gives it
 * @param number distinguishes the marks
 */
record Marked(int tag, Vr vr, int number) {

  private static final LocalDate DAY = LocalDate.of(1871, 1, 1);

  private static final Map<String, String> REPEATING =
      Map.of("50XXXXXX", "50021001", "60XX3000", "60023000", "60XX4000", "60024000");

  private static final Map<String, Vr> REPEATING_VR =
      Map.of("50XXXXXX", Vr.LO, "60XX3000", Vr.OB, "60XX4000", Vr.LT);

  /** The mark for a row of the table. */
  static Marked of(String digits, String vr, int number) {
    String member = REPEATING.getOrDefault(digits, digits);
    Vr form = vr.isEmpty() ? REPEATING_VR.get(digits) : Vr.of(vr).orElseThrow();
    return new Marked(Integer.parseUnsignedInt(member, 16), form, number);
  }

  /** The mark as text; of numbers and bytes what the copy is searched for. */
  String text() {
    if (isReference()) {
      return "1.3.999." + (880_000 + number);
    }
    return switch (vr) {
      case DA -> day();
      case DT -> day() + "131313";
      case TM -> String.format(Locale.ROOT, "131313.%06d", 100_000 + number);
      case DS, IS -> Integer.toString(7_770_000 + number);
      case US -> Integer.toString(0x4D00 + number);
      case AS -> String.format(Locale.ROOT, "%03dY", 700 + number % 300);
      case UI -> "1.3.999." + (880_000 + number);
      case UR -> "http://mark.invalid/" + number;
      default -> String.format(Locale.ROOT, "MARK%04dZ", number);
    };
  }

  private String day() {
    return DateTimeFormatter.ofPattern("uuuuMMdd", Locale.ROOT).format(DAY.plusDays(number));
  }

  void put(DataSet to) {
    switch (vr) {
      case SQ -> putItem(to);
      case US -> to.put(tag, (long) (0x4D00 + number));
      case OB, UN -> to.put(tag, vr, text().getBytes(StandardCharsets.US_ASCII));
      default -> to.put(tag, vr, text());
    }
  }

  /** True for the two sequences that Table E.1-1 lets stay with other UIDs. */
  private boolean isReference() {
    return tag == Tags.ReferencedImageSequence || tag == Tags.SourceImageSequence;
  }

  /** A reference, or a code of a person or place, as such sequences hold it. */
  private void putItem(DataSet to) {
    if (isReference()) {
      to.put(
          tag,
          new DataSet()
              .put(Tags.ReferencedSOPClassUID, "1.2.840.10008.5.1.4.1.1.77.1.4")
              .put(Tags.ReferencedSOPInstanceUID, text()));
      return;
    }
    to.put(
        tag,
        new DataSet()
            .put(Tags.CodeValue, text())
            .put(Tags.CodingSchemeDesignator, "99MARK")
            .put(Tags.CodeMeaning, text()));
  }
}
