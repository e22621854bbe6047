package org.vestibule.deid;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** Reads this room's resource tables: line one names the source, line two the columns. */
final class Tables {

  private Tables() {}

  /** The fields of each row; only the last may hold a comma. */
  static List<String[]> read(String resource, int columns) {
    try (InputStream in = Tables.class.getResourceAsStream(resource)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks its table " + resource);
      }
      return new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))
          .lines()
          .skip(2)
          .map(line -> line.split(",", columns))
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException("the program's table " + resource + " can't be read", e);
    }
  }
}
