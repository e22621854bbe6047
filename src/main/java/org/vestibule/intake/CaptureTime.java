package org.vestibule.intake;

import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Reads the time of the capture: local, with a zone only if the file has one, and with the digits
 * of the second's fraction. The time a file was written or changed is never taken instead.
 */
final class CaptureTime {

  private static final Pattern TIME =
      Pattern.compile("(\\d{4})[:/.-](\\d\\d)[:/.-](\\d\\d)[ T](\\d\\d):(\\d\\d):(\\d\\d)");
  private static final Pattern OFFSET = Pattern.compile("([+-])(\\d\\d):?(\\d\\d)|Z");
  private static final int FIRST_YEAR = 1995;
  private static final int NANO_DIGITS = 9;

  private final ExifTags tags;
  private final List<String> warnings;

  private CaptureTime(ExifTags tags, List<String> warnings) {
    this.tags = tags;
    this.warnings = warnings;
  }

  static void read(ExifTags tags, CaptureFactsBuilder facts, List<String> warnings) {
    CaptureTime reader = new CaptureTime(tags, warnings);
    LocalDateTime original = reader.time(Tag.DATE_TIME_ORIGINAL);
    boolean digitized = original == null;
    LocalDateTime time = digitized ? reader.time(Tag.DATE_TIME_DIGITIZED) : original;
    if (time == null) {
      return;
    }
    if (digitized) {
      warnings.add("the time is when the picture was digitised; no time of capture is stated");
    }
    String digits = reader.subsecond(digitized ? Tag.SUB_SEC_DIGITIZED : Tag.SUB_SEC_ORIGINAL);
    facts
        .takenAt(digits == null ? time : time.withNano(nanos(digits)))
        .subsecond(digits)
        .offset(reader.offset(digitized ? Tag.OFFSET_TIME_DIGITIZED : Tag.OFFSET_TIME_ORIGINAL));
  }

  /** The time in a tag, or null where there is none; for ModifyDate too. */
  static @Nullable LocalDateTime parse(String text) {
    Matcher m = TIME.matcher(text.strip());
    if (!m.matches()) {
      return null;
    }
    try {
      return LocalDateTime.of(
          Integer.parseInt(m.group(1)),
          Integer.parseInt(m.group(2)),
          Integer.parseInt(m.group(3)),
          Integer.parseInt(m.group(4)),
          Integer.parseInt(m.group(5)),
          Integer.parseInt(m.group(6)));
    } catch (DateTimeException e) {
      return null;
    }
  }

  private @Nullable LocalDateTime time(int tag) {
    String text = tags.text(tag);
    if (text == null || text.replaceAll("[ :0]", "").isEmpty()) {
      return null;
    }
    LocalDateTime time = parse(text);
    if (time == null) {
      warnings.add("the time of capture is not written as YYYY:MM:DD HH:MM:SS and was left aside");
    } else if (time.getYear() < FIRST_YEAR) {
      warnings.add("the year of capture is " + time.getYear() + ": the camera's clock was not set");
    }
    return time;
  }

  private @Nullable String subsecond(int tag) {
    String digits = tags.text(tag);
    if (digits == null) {
      Integer number = tags.integer(tag);
      digits = number == null ? null : number.toString();
    }
    if (digits == null) {
      return null;
    }
    if (!digits.matches("\\d{1,18}")) {
      warnings.add("the fraction of the second is not made of digits and was left aside");
      return null;
    }
    return digits;
  }

  private static int nanos(String digits) {
    String padded = (digits + "0".repeat(NANO_DIGITS)).substring(0, NANO_DIGITS);
    return Integer.parseInt(padded);
  }

  private @Nullable ZoneOffset offset(int tag) {
    String text = tags.text(tag);
    if (text == null || text.replaceAll("[ :]", "").isEmpty()) {
      return null;
    }
    Matcher m = OFFSET.matcher(text);
    if (!m.matches()) {
      warnings.add("the time zone is not written as +HH:MM and was left aside");
      return null;
    }
    if (m.group(1) == null) {
      return ZoneOffset.UTC;
    }
    int sign = m.group(1).equals("-") ? -1 : 1;
    try {
      return ZoneOffset.ofHoursMinutes(
          sign * Integer.parseInt(m.group(2)), sign * Integer.parseInt(m.group(3)));
    } catch (DateTimeException e) {
      warnings.add("the time zone is out of range and was left aside");
      return null;
    }
  }
}
