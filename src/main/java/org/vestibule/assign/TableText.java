package org.vestibule.assign;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;

/**
 * The text of a list, whatever program saved it: UTF-8 or UTF-16 with a byte order mark, UTF-8
 * without, else Windows-1252.
 *
 * @param text without byte order mark and without a spreadsheet's {@code sep=} line
 * @param charset it was saved in
 * @param byteOrderMark true if it began with one
 * @param separator between the fields: comma, semicolon or tab
 */
record TableText(String text, Charset charset, boolean byteOrderMark, char separator) {

  static final Charset WINDOWS = Charset.forName("windows-1252");

  private static final int LONGEST_BYTES = 32 * 1024 * 1024;

  static TableText of(byte[] bytes, String name) throws Refusal {
    if (bytes.length > LONGEST_BYTES) {
      throw new Refusal(
          name + " has " + bytes.length + " bytes, more than " + LONGEST_BYTES,
          "check that it is the list, or split it");
    }
    if (begins(bytes, 'P', 'K', 3, 4) || begins(bytes, 0xD0, 0xCF, 0x11, 0xE0)) {
      throw new Refusal(
          name + " is a spreadsheet's own file, not a text table",
          "in the spreadsheet, save it as CSV (UTF-8)");
    }
    if (begins(bytes, 0xEF, 0xBB, 0xBF)) {
      return of(decode(bytes, 3, StandardCharsets.UTF_8, name), StandardCharsets.UTF_8, true, name);
    }
    if (begins(bytes, 0xFF, 0xFE)) {
      return of(
          decode(bytes, 2, StandardCharsets.UTF_16LE, name), StandardCharsets.UTF_16LE, true, name);
    }
    if (begins(bytes, 0xFE, 0xFF)) {
      return of(
          decode(bytes, 2, StandardCharsets.UTF_16BE, name), StandardCharsets.UTF_16BE, true, name);
    }
    try {
      return of(strictly(bytes, 0, StandardCharsets.UTF_8), StandardCharsets.UTF_8, false, name);
    } catch (CharacterCodingException notUtf8) {
      return of(decode(bytes, 0, WINDOWS, name), WINDOWS, false, name);
    }
  }

  private static TableText of(String text, Charset charset, boolean mark, String name)
      throws Refusal {
    if (text.indexOf('\0') >= 0) {
      throw new Refusal(
          name + " holds zero bytes, so it is not a text table", "save it as CSV (UTF-8)");
    }
    String rest = text;
    if (text.regionMatches(true, 0, "sep=", 0, 4)) {
      int end = text.indexOf('\n');
      rest = end < 0 ? "" : text.substring(end + 1);
    }
    return new TableText(rest, charset, mark, separatorOf(rest));
  }

  /** The separator that occurs most often outside quotes in the first line that has any. */
  private static char separatorOf(String text) {
    int[] counts = new int[3];
    boolean quoted = false;
    for (int at = 0; at < text.length(); at++) {
      char c = text.charAt(at);
      if (c == '"') {
        quoted = !quoted;
      } else if (!quoted && (c == '\n' || c == '\r') && counts[0] + counts[1] + counts[2] > 0) {
        break;
      } else if (!quoted && ",;\t".indexOf(c) >= 0) {
        counts[",;\t".indexOf(c)]++;
      }
    }
    if (counts[2] > 0 && counts[2] >= counts[1] && counts[2] >= counts[0]) {
      return '\t';
    }
    return counts[1] > counts[0] ? ';' : ',';
  }

  private static String decode(byte[] bytes, int from, Charset charset, String name)
      throws Refusal {
    try {
      return strictly(bytes, from, charset);
    } catch (CharacterCodingException e) {
      throw new Refusal(
          name + " is not readable as " + charset.name() + " text", "save it as CSV (UTF-8)");
    }
  }

  private static String strictly(byte[] bytes, int from, Charset charset)
      throws CharacterCodingException {
    return charset
        .newDecoder()
        .onMalformedInput(CodingErrorAction.REPORT)
        .onUnmappableCharacter(CodingErrorAction.REPORT)
        .decode(ByteBuffer.wrap(bytes, from, bytes.length - from))
        .toString();
  }

  private static boolean begins(byte[] bytes, int... first) {
    if (bytes.length < first.length) {
      return false;
    }
    for (int at = 0; at < first.length; at++) {
      if ((bytes[at] & 0xFF) != first[at]) {
        return false;
      }
    }
    return true;
  }
}
