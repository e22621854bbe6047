package org.vestibule.keys;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** The protocols and suites that are offered and accepted, from {@code tls-suites.csv}. */
final class TlsSuites {

  private static final List<String[]> ROWS = rows();

  private TlsSuites() {}

  static String[] names() {
    return ROWS.stream().map(row -> row[1]).toArray(String[]::new);
  }

  static String[] protocols() {
    return ROWS.stream().map(row -> row[0]).distinct().toArray(String[]::new);
  }

  private static List<String[]> rows() {
    try (InputStream bytes = TlsSuites.class.getResourceAsStream("tls-suites.csv")) {
      if (bytes == null) {
        throw new IllegalStateException("tls-suites.csv is missing from the program");
      }
      return new String(bytes.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .skip(2)
          .map(line -> line.split(",", -1))
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException("tls-suites.csv can't be read", e);
    }
  }
}
