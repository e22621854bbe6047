package org.vestibule.encode;

/**
 * Text cut to the length its value representation allows. Lengths are in characters (PS3.5 6.2), a
 * character outside the basic plane being one although a string holds it as two units.
 */
final class Fitting {

  /** Most characters of a Long String (LO, PS3.5 6.2). */
  static final int LO_CHARACTERS = 64;

  /** Most characters of a Short String (SH, PS3.5 6.2). */
  static final int SH_CHARACTERS = 16;

  /** Most characters of a Long Text (LT, PS3.5 6.2). */
  static final int LT_CHARACTERS = 10240;

  private Fitting() {}

  static boolean fits(String text, int characters) {
    return text.codePointCount(0, text.length()) <= characters;
  }

  /** The text, or as much of its beginning as fits. */
  static String cut(String text, int characters) {
    return fits(text, characters)
        ? text
        : text.substring(0, text.offsetByCodePoints(0, characters)).stripTrailing();
  }
}
