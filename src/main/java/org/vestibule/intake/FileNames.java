package org.vestibule.intake;

import java.text.Normalizer;
import java.util.Locale;

/** File names as people write them: shown without tricks, compared without accidents. */
public final class FileNames {

  private FileNames() {}

  /**
   * The name as it may be printed: line breaks, other control characters and characters that change
   * the direction of writing or aren't seen become {@code \}{@code uXXXX}.
   */
  public static String shown(String name) {
    StringBuilder out = new StringBuilder(name.length());
    name.codePoints().forEach(point -> append(out, point));
    return out.toString();
  }

  private static void append(StringBuilder out, int point) {
    switch (Character.getType(point)) {
      case Character.CONTROL,
          Character.FORMAT,
          Character.SURROGATE,
          Character.UNASSIGNED,
          Character.PRIVATE_USE,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR ->
          out.append(String.format(Locale.ROOT, "\\u%04X", point));
      default -> out.appendCodePoint(point);
    }
  }

  /**
   * A key under which two spellings of one name meet: composed (Unicode NFC), without regard to
   * capitals.
   */
  public static String key(String name) {
    return Normalizer.normalize(name, Normalizer.Form.NFC).toLowerCase(Locale.ROOT);
  }

  /** The last part of a name with forward slashes. */
  public static String last(String name) {
    return name.substring(name.lastIndexOf('/') + 1);
  }

  /** The folder part of a name with forward slashes, with the slash; empty at the top. */
  public static String folder(String name) {
    return name.substring(0, name.lastIndexOf('/') + 1);
  }

  /** The name without its extension; the folder stays. */
  public static String stem(String name) {
    int dot = name.lastIndexOf('.');
    return dot <= name.lastIndexOf('/') + 1 ? name : name.substring(0, dot);
  }

  /** The extension in lower case without its dot; empty if there is none. */
  public static String extension(String name) {
    int dot = name.lastIndexOf('.');
    return dot <= name.lastIndexOf('/') + 1 ? "" : name.substring(dot + 1).toLowerCase(Locale.ROOT);
  }
}
