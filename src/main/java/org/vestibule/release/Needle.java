package org.vestibule.release;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** One value that must not be found, in the encodings in which it may stand. */
final class Needle {

  /** Shorter values occur by chance: they count only where they are the whole of a field. */
  static final int SHORTEST_PART = 6;

  private static final List<Charset> CHARSETS =
      List.of(
          StandardCharsets.UTF_8,
          StandardCharsets.ISO_8859_1,
          StandardCharsets.UTF_16LE,
          StandardCharsets.UTF_16BE);

  private final String folded;
  private final String kind;
  private final List<byte[]> encoded = new ArrayList<>();

  /**
   * @param kind what sort of value it is, in words
   */
  Needle(String value, String kind) {
    this.kind = kind;
    folded = fold(value);
    for (Charset charset : CHARSETS) {
      byte[] bytes = folded.getBytes(charset);
      boolean isFaithful = new String(bytes, charset).equals(folded);
      if (isFaithful && encoded.stream().noneMatch(other -> Arrays.equals(other, bytes))) {
        encoded.add(bytes);
      }
    }
  }

  private Needle(byte[] value, String kind) {
    this.kind = kind;
    folded = "";
    encoded.add(folded(value));
  }

  /** A value that no text holds: it is looked for among bytes alone. */
  static Needle ofBytes(byte[] value, String kind) {
    if (value.length < SHORTEST_PART) {
      throw new IllegalArgumentException(
          "a value of " + value.length + " bytes occurs by chance: give " + SHORTEST_PART);
    }
    return new Needle(value, kind);
  }

  private boolean isBytes() {
    return folded.isEmpty();
  }

  String kind() {
    return kind;
  }

  boolean isShort() {
    return !isBytes() && folded.length() < SHORTEST_PART;
  }

  /** True if the whole field is this value, whatever the case. */
  boolean is(String field) {
    return !isBytes() && fold(field.strip()).equals(folded);
  }

  /** True if the text holds this value, whatever the case. */
  boolean isIn(String text) {
    return !isBytes() && fold(text).contains(folded);
  }

  /**
   * True if the bytes hold this value in one of its encodings.
   *
   * @param bytes with ASCII letters in lower case
   */
  boolean isIn(byte[] bytes) {
    return encoded.stream().anyMatch(value -> contains(bytes, value));
  }

  private static boolean contains(byte[] bytes, byte[] value) {
    byte first = value[0];
    for (int at = 0; at <= bytes.length - value.length; at++) {
      if (bytes[at] == first
          && Arrays.equals(bytes, at, at + value.length, value, 0, value.length)) {
        return true;
      }
    }
    return false;
  }

  private static String fold(String text) {
    return text.toLowerCase(Locale.ROOT);
  }

  /** The bytes with ASCII letters in lower case. */
  static byte[] folded(byte[] bytes) {
    byte[] lower = bytes.clone();
    for (int i = 0; i < lower.length; i++) {
      if (lower[i] >= 'A' && lower[i] <= 'Z') {
        lower[i] = (byte) (lower[i] + 32);
      }
    }
    return lower;
  }
}
