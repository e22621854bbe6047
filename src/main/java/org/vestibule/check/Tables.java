package org.vestibule.check;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * Reads this room's resource tables: line one names the source, line two the columns; no value
 * holds a comma.
 */
final class Tables {

  private Tables() {}

  static List<String[]> read(String resource) {
    try (InputStream in = Tables.class.getResourceAsStream(resource)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks its table " + resource);
      }
      return new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))
          .lines()
          .skip(2)
          .map(line -> line.split(",", -1))
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException("the program's table " + resource + " can't be read", e);
    }
  }
}
