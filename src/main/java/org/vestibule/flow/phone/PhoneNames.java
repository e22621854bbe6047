package org.vestibule.flow.phone;

import java.util.regex.Pattern;

/** What files are called that come by phone. */
final class PhoneNames {

  private static final int LONGEST = 60;
  private static final Pattern OTHERS = Pattern.compile("[^A-Za-z0-9_-]+");

  private PhoneNames() {}

  /** Letters, digits, hyphens of the phone's name, and the ending of a JPEG file. */
  static String clean(String name) {
    String last = name.substring(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
    int dot = last.lastIndexOf('.');
    String stem = OTHERS.matcher(dot > 0 ? last.substring(0, dot) : last).replaceAll("-");
    String trimmed = stem.replaceAll("^-+|-+$", "");
    String fitting = trimmed.substring(0, Math.min(LONGEST, trimmed.length()));
    return (fitting.isEmpty() ? "photograph" : fitting) + ".jpg";
  }

  /** The same with a number before its ending. */
  static String numbered(String name, int number) {
    return number == 1 ? name : name.replaceFirst("\\.jpg$", "-" + number + ".jpg");
  }
}
