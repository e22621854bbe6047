package org.vestibule.assign;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.vestibule.intake.FileNames;

/**
 * The number that a camera counted into a file name, such as {@code IMG_2034.JPG}. Four digits run
 * from 0001 to 9999 and then begin again (CIPA DC-009, from memory); some phones go on with five.
 *
 * @param series the letters before it, in lower case
 * @param value the number
 * @param fourDigits true if it was written with four digits
 * @param copy true if the name is that of a copy: an E before the number, or something after it
 *     (common practice, no source)
 */
record FileNumber(String series, int value, boolean fourDigits, boolean copy) {

  private static final Pattern COUNTED =
      Pattern.compile("(\\D{0,8}?)((?<=_)e)?(\\d{4,6})(\\D.*)?", Pattern.DOTALL);
  private static final int LAST = 9999;
  private static final int NEAR = 1000;

  /** Some cameras count 9999, 0000, others 9999, 0001. */
  private static final int FIRST = 1;

  static Optional<FileNumber> of(String name) {
    if (NameClock.of(name).isPresent()) {
      return Optional.empty();
    }
    Matcher parts = COUNTED.matcher(FileNames.key(FileNames.last(FileNames.stem(name))));
    if (!parts.matches()) {
      return Optional.empty();
    }
    String digits = parts.group(3);
    return Optional.of(
        new FileNumber(
            parts.group(1),
            Integer.parseInt(digits),
            digits.length() == 4,
            parts.group(2) != null || parts.group(4) != null));
  }

  boolean sameSeries(FileNumber other) {
    return series.equals(other.series);
  }

  /** True if the counter ran round between this number and a later one. */
  boolean wrapsTo(FileNumber later) {
    return fourDigits && later.fourDigits && value > LAST - NEAR && later.value < NEAR;
  }

  /** True if a later photograph may have that number. */
  boolean mayComeBefore(FileNumber later) {
    return later.value > value || wrapsTo(later);
  }

  /** How many numbers lie between this one and a later one. */
  int between(FileNumber later) {
    return wrapsTo(later)
        ? LAST - value + Math.max(0, later.value - FIRST)
        : later.value - value - 1;
  }

  /** The number that lies so many steps after this one on the way to a later one. */
  int after(int steps, FileNumber later) {
    int plain = value + steps;
    return wrapsTo(later) && plain > LAST ? plain - LAST : plain;
  }
}
