package org.vestibule.assign;

import java.text.Normalizer;
import java.util.List;
import java.util.Locale;

/**
 * A column of a list.
 *
 * @param name ours, as messages give it
 * @param alsoCalled what practices also write at its head (common practice, no source)
 * @param required true if the list is of no use without it
 */
record Column(String name, List<String> alsoCalled, boolean required) {

  Column {
    alsoCalled = List.copyOf(alsoCalled);
  }

  static Column required(String name, String... alsoCalled) {
    return new Column(name, List.of(alsoCalled), true);
  }

  static Column optional(String name, String... alsoCalled) {
    return new Column(name, List.of(alsoCalled), false);
  }

  boolean isCalled(String header) {
    String plain = plain(header);
    return plain.equals(name) || alsoCalled.contains(plain);
  }

  /** A header in lower case, its underscores and hyphens as spaces. */
  static String plain(String header) {
    return Normalizer.normalize(header, Normalizer.Form.NFC)
        .toLowerCase(Locale.ROOT)
        .replaceAll("[\\s_.*:-]+", " ")
        .trim();
  }
}
