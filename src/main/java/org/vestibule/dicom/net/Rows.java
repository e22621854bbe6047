package org.vestibule.dicom.net;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/** The rows of one of this room's tables: fields between commas, quoted where they hold one. */
final class Rows {

  private Rows() {}

  static List<List<String>> of(String resource) {
    try (InputStream bytes = Rows.class.getResourceAsStream(resource)) {
      if (bytes == null) {
        throw new IllegalStateException(resource + " is missing from the program");
      }
      return new String(bytes.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .skip(2)
          .map(Rows::fields)
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(resource + " can't be read", e);
    }
  }

  private static List<String> fields(String line) {
    List<String> fields = new ArrayList<>();
    StringBuilder field = new StringBuilder();
    boolean quoted = false;
    for (int at = 0; at < line.length(); at++) {
      char c = line.charAt(at);
      if (c == '"') {
        quoted = !quoted;
      } else if (c == ',' && !quoted) {
        fields.add(field.toString());
        field.setLength(0);
      } else {
        field.append(c);
      }
    }
    fields.add(field.toString());
    return fields;
  }
}
